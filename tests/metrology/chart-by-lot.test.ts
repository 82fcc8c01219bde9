import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartByLot, mean, type ReferenceCheck } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

const day = 86_400_000;
const checksOf = (lot: string, from: number, values: readonly number[]): ReferenceCheck[] =>
	values.map((value, i) => ({ value, expected: 8, lot, atEpochMs: (from + i) * day }));

const old = checksOf('A', 0, [8.0, 8.1, 7.9, 8.0, 8.1]);
const weak = checksOf('B', 10, [8.7, 8.6, 8.8]);
const alike = checksOf('C', 20, [8.1, 7.9]);

describe('checks of a known solution by lot', () => {
	const found = chartByLot([...weak, ...alike, ...old]);
	it('the lot used first is the baseline, whatever the order of the list', () => {
		expect(found.baselineLot).toBe('A');
		expect(found.lots.map(({ lot, isBaseline, n }) => [lot, isBaseline, n])).toEqual([
			['A', true, 5],
			['B', false, 3],
			['C', false, 2]
		]);
	});
	it('scatter is pooled within lots, by hand', () => {
		// Squares about each mean, in units of 0.1²/8²: 2.8 + 2 + 2 = 6.8, over 10 − 3.
		expect(found.sd).toBeCloseTo((Math.sqrt(6.8 / 7) * 0.1) / 8, 12);
		expect(found.degreesOfFreedom).toBe(7);
	});
	it('a lot that reads higher stands apart, one alike does not', () => {
		expect(found.lots.map(({ standsApart }) => standsApart)).toEqual([false, true, false]);
		// 8.7/8 − 8.02/8.
		expect(found.lots[1]?.difference).toBeCloseTo(0.085, 12);
		expect(found.lots[0]).toMatchObject({ difference: null, interval: null });
	});
	it('the chart signals with the odd lot and lies about the baseline', () => {
		expect(found.chart.target).toBeCloseTo(8.02 / 8, 12);
		expect(found.chart.firstSignal?.index).toBe(5);
		expect(found.checks[5]?.lot).toBe('B');
		expect(found).toMatchObject({ isProvisional: true, isOneLevel: true });
		expect(found.chart.isProvisional).toBe(true);
	});
	it('another baseline turns the difference round', () => {
		const turned = chartByLot([...old, ...weak], { baselineLot: 'B' });
		expect(turned.lots[0]?.difference).toBeCloseTo(-0.085, 12);
	});
	it('a known scatter lets single checks be compared', () => {
		const single = [old[0], weak[0], alike[0]].filter((each) => each !== undefined);
		expect(() => chartByLot(single)).toThrow(
			'chartByLot requires a lot checked more than once, or an sd; found neither'
		);
		const known = chartByLot(single, { sd: 0.0125 });
		expect(known.lots.map(({ standsApart }) => standsApart)).toEqual([false, true, false]);
	});
	it('two levels are told from one', () => {
		const second = { value: 4.1, expected: 4, lot: 'A', atEpochMs: 5 * day };
		expect(chartByLot([...old, second]).isOneLevel).toBe(false);
	});
	it('lots checked with unlike solutions are marked', () => {
		const named = (checks: ReferenceCheck[], solution: string) =>
			checks.map((check) => ({ ...check, solution }));
		const lots = chartByLot([
			...named(old, 'spring'),
			...named(weak, 'autumn'),
			...named(alike, 'spring')
		]).lots;
		expect(lots.map(({ sharesSolution }) => sharesSolution)).toEqual([null, false, true]);
		expect(found.lots[1]?.sharesSolution).toBeNull();
	});
	it('does not know the unit of the values', () => {
		fc.assert(
			fc.property(fc.double({ min: 0.1, max: 50, noNaN: true }), (by) => {
				const other = chartByLot(
					[...old, ...weak, ...alike].map((check) => ({
						...check,
						value: by * check.value,
						expected: by * check.expected
					}))
				);
				expect(other.sd).toBeCloseTo(found.sd, 10);
				expect(other.lots.map(({ standsApart }) => standsApart)).toEqual([false, true, false]);
			})
		);
	});
	it('equal counts are no certainty: the resolution sets a floor', () => {
		const equal = checksOf('A', 0, [8, 8, 8]);
		expect(() => chartByLot(equal)).toThrow('requires recoveries that differ within a lot');
		// What scatters more than the floor is left as it is.
		expect(chartByLot(old, { resolution: 0.01 }).sd).toBe(chartByLot(old).sd);
		// 0.3/√12/8.
		expect(chartByLot(equal, { resolution: 0.3 }).sd).toBeCloseTo(0.3 / Math.sqrt(12) / 8, 12);
	});
});

it('no lot of four stands apart by chance more than one time in twenty', () => {
	const { normal } = chanceOf(41);
	const alarms = Array.from({ length: 3000 }, () => {
		const checks = ['A', 'B', 'C', 'D'].flatMap((lot, i) =>
			checksOf(
				lot,
				10 * i,
				Array.from({ length: 4 }, () => 8 + 0.1 * normal())
			)
		);
		return chartByLot(checks).lots.some(({ standsApart }) => standsApart) ? 1 : 0;
	});
	// Bonferroni keeps below 0.05, and not far: the three share the baseline. Standard error 0.004.
	expect(mean(alarms)).toBeLessThan(0.05 + 0.012);
	expect(mean(alarms)).toBeGreaterThan(0.02);
});

it.each([
	[() => chartByLot(old.slice(0, 2)), 'chartByLot requires at least 3 checks; found 2'],
	[() => chartByLot(old, { baselineLot: 'Z' }), 'baselineLot must be the lot of a check; found Z'],
	[() => chartByLot(old, { sd: 0 }), 'sd must be above 0; found 0'],
	[() => chartByLot(old, { confidence: 2 }), 'confidence must lie between 0 and 1; found 2'],
	[
		() => chartByLot(old.map((check) => ({ ...check, expected: 0 }))),
		'checks[0].expected must be above 0; found 0'
	],
	[
		() => chartByLot(old.map((check) => ({ ...check, value: Number.NaN }))),
		'checks[0].value must be a number; found NaN'
	]
])('what cannot be charted by lot is named (%#)', (call, message) => {
	expect(call).toThrow(new RangeError(message));
});
