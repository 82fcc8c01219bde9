import { describe, expect, it } from 'vitest';
import { cusumChart, ewmaChart, individualsChart } from '../../src/lib/metrology';
import published from './data/control-charts.json';

// Source: NIST/SEMATECH e-Handbook, 6.3.2.2, flow rates: x̄ 50.81, MR̄ 1.8778, limits 55.8041 and
// 45.8159, each compared to half of the last digit.
describe("individuals chart of the handbook's flow rates", () => {
	const flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
	const chart = individualsChart(flow);
	it('centre and limits', () => {
		expect(Math.abs(chart.target - 50.81)).toBeLessThan(0.005);
		expect(Math.abs(chart.upper - 55.8041)).toBeLessThan(0.00005);
		expect(Math.abs(chart.lower - 45.8159)).toBeLessThan(0.00005);
	});
	it('moving ranges and their limit, 3.267 MR̄', () => {
		expect(Math.abs(chart.sigma * 1.128 - 1.8778)).toBeLessThan(0.00005);
		// By hand: 3.267 · 16.9/9.
		expect(chart.movingRangeLimit).toBeCloseTo((3.267 * 16.9) / 9, 9);
		expect(chart.points[0]?.movingRange).toBeNull();
		expect(chart.points[1]?.movingRange).toBeCloseTo(2, 12);
	});
	it('nothing is out of control; ten values are few', () => {
		expect(chart.points.some(({ isRangeBeyond, isWarning }) => isRangeBeyond || isWarning)).toBe(
			false
		);
		expect(chart.isProvisional).toBe(true);
	});
});

// Source: Montgomery, Introduction to Statistical Quality Control, thirty observations (chapter 9): table
// of C+ and C−, signal at period 29, shift between 22 and 23, new mean 11.25. Sums to two decimals.
describe("tabular CUSUM of Montgomery's thirty observations", () => {
	const chart = cusumChart(published.observations, { target: 10, sigma: 1, k: 0.5, h: 5 });
	it('each sum and each count', () => {
		const rows = chart.points.map(({ high, highCount, low, lowCount }) => [
			Number(high.toFixed(2)),
			highCount,
			Number(low.toFixed(2)),
			lowCount
		]);
		expect(rows).toEqual(published.cusum);
	});
	it('signal, onset and new mean', () => {
		// Periods count from 1.
		expect(chart.firstSignal).toMatchObject({ index: 28, direction: 'up', onsetIndex: 22 });
		expect(chart.firstSignal?.newMean.toFixed(2)).toBe('11.25');
	});
	it('limits that were given are not provisional', () => {
		expect(chart).toMatchObject({ baseline: 0, isProvisional: false, limit: 5, slack: 0.5 });
	});
});

// Source: Montgomery, the same data, λ = 0.1, L = 2.7: first average 9.945, first limits 9.73 and 10.27,
// steady ones 9.38 and 10.62 (from memory). The whole table: computed with another program to five
// decimals. First point outside: 29; some prints say 28, where 10.573 is inside.
describe("EWMA of Montgomery's thirty observations", () => {
	const options = { target: 10, sigma: 1, lambda: 0.1, width: 2.7 };
	const chart = ewmaChart(published.observations, options);
	it('each average with its limits', () => {
		expect(chart.points).toHaveLength(published.ewma.length);
		published.ewma.forEach(([average = 0, lower = 0, upper = 0], i) => {
			const point = chart.points[i];
			expect(Math.abs((point?.average ?? 0) - average)).toBeLessThan(0.000006);
			expect(Math.abs((point?.lower ?? 0) - lower)).toBeLessThan(0.000006);
			expect(Math.abs((point?.upper ?? 0) - upper)).toBeLessThan(0.000006);
		});
	});
	it('the signal comes with the twenty-ninth', () => {
		expect(chart.firstSignal).toEqual({ index: 28, direction: 'up' });
	});
	it('steady limits are 9.38 and 10.62 from the start', () => {
		const first = ewmaChart(published.observations, { ...options, limits: 'steady' }).points[0];
		expect(first?.lower.toFixed(2)).toBe('9.38');
		expect(first?.upper.toFixed(2)).toBe('10.62');
	});
});

// Constructed series for the rules of Westgard et al. 1981; by hand.
describe('run rules, first broken', () => {
	it.each([
		{ z: [0.4, -1.2, 2.1, 2.3], index: 3, rule: '2 of 2 beyond 2s' },
		{ z: [0.5, -0.3, 2.2, -2.1, 0], index: 3, rule: '2 of 2 beyond 2s, opposite sides' },
		{ z: [1.2, 1.1, 1.5, 1.3, 0.2], index: 3, rule: '4 of 4 beyond 1s' },
		{ z: [0.1, 0.4, 0.9, 0.2, 1.3, 0.6, 0.3, 0.8, 1.1, 0.5], index: 9, rule: '10 on one side' },
		{ z: [0.2, 2.4, 0.1, 2.2, 3.1], index: 4, rule: '1 beyond 3s' },
		{ z: [-1.1, -1.4, -2.2, -0.9, -1.2, -1.3, -1.1, -1.6], index: 7, rule: '4 of 4 beyond 1s' }
	])('$rule', ({ z, index, rule }) => {
		expect(individualsChart(z, { target: 0, sigma: 1 }).firstSignal).toEqual({ index, rule });
	});
	it('none in an ordinary series, nor by values on a limit', () => {
		const ordinary = [0.3, -0.2, 1.9, -1.9, 0.1, 0.6, -0.4, 0.8, -0.1, 0.2];
		expect(individualsChart(ordinary, { target: 0, sigma: 1 }).firstSignal).toBeNull();
		const onLimits = [3, 2, 2, -2, 1, 1, 1, 1, 0];
		expect(individualsChart(onLimits, { target: 0, sigma: 1 }).firstSignal).toBeNull();
	});
});
