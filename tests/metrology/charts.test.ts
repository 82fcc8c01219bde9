import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cusumChart, ewmaChart, individualsChart, mean } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

const series = fc
	.array(
		fc.integer({ min: -60, max: 60 }).map((n) => n / 20),
		{ minLength: 3, maxLength: 40 }
	)
	.filter((values) => new Set(values).size > 1);
const charts = { individualsChart, ewmaChart, cusumChart };
const names = Object.keys(charts) as (keyof typeof charts)[];

describe.each(names)('%s', (name) => {
	const chart = charts[name];
	it('never signals on values that stay on the target', () => {
		fc.assert(
			fc.property(
				fc.integer({ min: 1, max: 200 }),
				fc.integer({ min: -9, max: 9 }),
				(n, target) => {
					const values = Array.from({ length: n }, () => target);
					expect(chart(values, { target, sigma: 0.3 }).firstSignal).toBeNull();
				}
			)
		);
	});
	it('signals at the same place in any unit, from any zero', () => {
		fc.assert(
			fc.property(
				series,
				fc.constantFrom(0.5, 2, 4),
				fc.constantFrom(-8, 0, 16),
				(values, by, zero) => {
					const found = chart(values, { target: 0, sigma: 0.6 });
					const other = chart(
						values.map((value) => by * value + zero),
						{ target: zero, sigma: 0.6 * by }
					);
					expect(other.firstSignal?.index).toBe(found.firstSignal?.index);
				}
			)
		);
	});
	it('turned upside down signals at the same place', () => {
		fc.assert(
			fc.property(series, (values) => {
				const found = chart(values, { target: 0, sigma: 0.6 });
				const other = chart(
					values.map((value) => -value),
					{ target: 0, sigma: 0.6 }
				);
				expect(other.firstSignal?.index).toBe(found.firstSignal?.index);
			})
		);
	});
	it('does not know the future: a first signal stays where it is when values follow', () => {
		fc.assert(
			fc.property(series, series, (before, after) => {
				const options = { target: 0, sigma: 0.6 };
				const { firstSignal } = chart(before, options);
				fc.pre(firstSignal !== null);
				expect(chart([...before, ...after], options).firstSignal).toEqual(firstSignal);
			})
		);
	});
	it('sees a lasting shift of two sigmas within a dozen values nearly always', () => {
		const { normal } = chanceOf(77);
		const late = Array.from({ length: 500 }, () => {
			const values = Array.from({ length: 12 }, () => 2 + normal());
			return chart(values, { target: 0, sigma: 1 }).firstSignal === null ? 1 : 0;
		});
		expect(mean(late)).toBeLessThan(0.02);
	});
	it('works out target and sigma from a baseline, and says when that is short', () => {
		const usual = [8.1, 8.3, 8.2, 8.0, 8.2, 8.1];
		const found = chart([...usual, 9.9, 9.9, 9.9, 9.9], { baseline: 6 });
		expect(found.target).toBeCloseTo(8.15, 12);
		// Moving ranges 0.2, 0.1, 0.2, 0.2, 0.1: mean 0.16, over 1.128.
		expect(found.sigma).toBeCloseTo(0.16 / 1.128, 12);
		expect(found).toMatchObject({ baseline: 6, isProvisional: true });
		expect(found.firstSignal).not.toBeNull();
		const long = Array.from({ length: 24 }, (_, i) => 8 + (i % 2) / 10);
		expect(chart(long).isProvisional).toBe(false);
		expect(chart(long, { baseline: 19 }).isProvisional).toBe(true);
		expect(chart(long, { target: 8 }).isProvisional).toBe(false);
	});
	it('takes a sigma for no less than the resolution allows', () => {
		const { sigma, firstSignal } = chart([8, 8, 8, 8], { resolution: 0.3 });
		expect(sigma).toBeCloseTo(0.3 / Math.sqrt(12), 12);
		expect(firstSignal).toBeNull();
	});
	it.each([
		[() => chart([8, 8.1]), `${name} requires at least 3 values; found 2`],
		[() => chart([], { target: 8, sigma: 1 }), `${name} requires at least 1 value; found 0`],
		[() => chart([8, Number.NaN, 8]), `${name} requires finite values; found 8, NaN, 8`],
		[
			() => chart([8, 8, 8]),
			`${name} requires values that differ, or a sigma or resolution; found 8 only`
		],
		[() => chart([8, 8.1, 8], { sigma: 0 }), 'sigma must be above 0; found 0'],
		[() => chart([8, 8.1, 8], { target: Number.NaN }), 'target must be a number; found NaN'],
		[() => chart([8, 8.1, 8], { resolution: -1 }), 'resolution must be above 0; found -1'],
		[
			() => chart([8, 8.1, 8], { baseline: 4 }),
			'baseline must be a whole number from 3 to 3; found 4'
		]
	])('names what it cannot work with (%#)', (call, message) => {
		expect(call).toThrow(new RangeError(message));
	});
});

describe('single values', () => {
	it('mark a leap from one value to the next that both limits would let pass', () => {
		const { points, movingRangeLimit } = individualsChart([1.9, -1.9, 1.7], {
			target: 0,
			sigma: 1
		});
		// 3.267 · 1.128 = 3.685; the leaps are 3.8 and 3.6.
		expect(movingRangeLimit).toBeCloseTo(3.685, 3);
		expect(points.map(({ isRangeBeyond }) => isRangeBeyond)).toEqual([false, true, false]);
		expect(points.map(({ broken }) => broken)).toEqual([[], [], []]);
	});
});

describe('CUSUM', () => {
	it('finds onset and size of a clean shift', () => {
		const values = [
			...Array.from({ length: 10 }, () => 8),
			...Array.from({ length: 10 }, () => 8.6)
		];
		const up = cusumChart(values, { target: 8, sigma: 0.3 });
		expect(up.firstSignal).toMatchObject({ direction: 'up', onsetIndex: 10 });
		expect(up.firstSignal?.newMean).toBeCloseTo(8.6, 12);
		const down = cusumChart(
			values.map((value) => 16 - value),
			{ target: 8, sigma: 0.3 }
		);
		expect(down.firstSignal).toMatchObject({ direction: 'down', onsetIndex: 10 });
		expect(down.firstSignal?.newMean).toBeCloseTo(7.4, 12);
	});
	it('names a slack or limit out of range', () => {
		expect(() => cusumChart([8], { k: -1 })).toThrow('k must be 0 or above; found -1');
		expect(() => cusumChart([8], { h: 0 })).toThrow('h must be above 0; found 0');
	});
});

describe('EWMA', () => {
	it('of weight 1 with 3 sigmas is the chart of single values', () => {
		fc.assert(
			fc.property(series, (values) => {
				const options = { target: 0, sigma: 0.6 };
				const ewma = ewmaChart(values, { ...options, lambda: 1, width: 3 });
				const single = individualsChart(values, { ...options, rules: ['1 beyond 3s'] });
				expect(ewma.firstSignal?.index).toBe(single.firstSignal?.index);
			})
		);
	});
	it('limits widen to the steady ones', () => {
		const values = Array.from({ length: 60 }, () => 8);
		const { points } = ewmaChart(values, { target: 8, sigma: 1 });
		const steady = ewmaChart(values, { target: 8, sigma: 1, limits: 'steady' }).points[0];
		points.slice(1).forEach((point, i) => {
			expect(point.upper).toBeGreaterThanOrEqual(points[i]?.upper ?? Number.NaN);
		});
		expect(points.at(-1)?.upper).toBeCloseTo(steady?.upper ?? 0, 9);
	});
	it('names a weight or width out of range', () => {
		expect(() => ewmaChart([8], { lambda: 0 })).toThrow(
			'lambda must be above 0 and at most 1; found 0'
		);
		expect(() => ewmaChart([8], { width: 0 })).toThrow('width must be above 0; found 0');
	});
});
