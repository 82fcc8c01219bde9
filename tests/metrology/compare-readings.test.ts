import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { houseKitOf } from '../../src/lib/kits';
import { compareMarks, compareReadings, readingBudget } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

const of = (value: number, more: object = {}) => ({
	value,
	standardUncertainty: 0.3,
	repeatabilitySd: 0.18,
	...more
});

describe('change since last time', () => {
	it('what both share is taken out, by hand', () => {
		// Shared √(0.09 − 0.0324) = 0.24 each, nine tenths of it the same: 0.24 √(2 · 0.1) = 0.1073.
		const change = compareReadings(of(8), of(7.2));
		expect(change.standardUncertainty).toBeCloseTo(
			Math.hypot(0.18, 0.18, 0.24 * Math.sqrt(0.2)),
			9
		);
		expect(change.expandedUncertainty).toBeCloseTo(1.96 * change.standardUncertainty, 3);
		expect(change).toMatchObject({ verdict: 'likelyReal', sharedShare: 0.9 });
		expect(change.difference).toBeCloseTo(0.8, 12);
	});
	it('a change below what two scatters make is too small to tell', () => {
		expect(compareReadings(of(8), of(7.7)).verdict).toBe('tooSmallToTell');
		expect(compareReadings(of(7.7), of(8)).verdict).toBe('tooSmallToTell');
	});
	it('two kits share nothing; another lot or other hands share less', () => {
		const u = (now: object, last: object) =>
			compareReadings(of(8, now), of(7, last)).standardUncertainty;
		const same = u({ kitId: 'a', lot: '1', tester: 'x' }, { kitId: 'a', lot: '1', tester: 'x' });
		const lot = u({ kitId: 'a', lot: '1' }, { kitId: 'a', lot: '2' });
		const both = u({ lot: '1', tester: 'x' }, { lot: '2', tester: 'y' });
		const kits = u({ kitId: 'a' }, { kitId: 'b' });
		expect([same, lot, both, kits]).toEqual([same, lot, both, kits].sort((a, b) => a - b));
		expect(new Set([same, lot, both, kits]).size).toBe(4);
		expect(kits).toBeCloseTo(0.3 * Math.SQRT2, 12);
	});
	it('what was not said is taken for the same', () => {
		expect(compareReadings(of(8, { lot: '1' }), of(7)).sharedShare).toBe(0.9);
		expect(compareReadings(of(8, { lot: '1' }), of(7, { lot: '2' })).because).toContain(
			'another lot'
		);
	});
	it('more titrations behind a value, less scatter in it', () => {
		const one = compareReadings(of(8), of(7)).standardUncertainty;
		const two = compareReadings(
			of(8, { standardUncertainty: 0.27, values: [7.9, 8.1] }),
			of(7)
		).standardUncertainty;
		expect(two).toBeLessThan(one);
	});
	it('whose scatter nobody knows is compared by its whole uncertainty', () => {
		const change = compareReadings(
			{ value: 8, standardUncertainty: 0.3 },
			{ value: 7, standardUncertainty: 0.4 }
		);
		expect(change.standardUncertainty).toBeCloseTo(0.5, 12);
	});
	it('lines: the parts add up in squares to what stands below them', () => {
		const u = fc.double({ min: 0.05, max: 1, noNaN: true });
		fc.assert(
			fc.property(u, u, u, u, (a, b, sa, sb) => {
				const change = compareReadings(
					{ value: 8, standardUncertainty: a, repeatabilitySd: sa },
					{ value: 7, standardUncertainty: b, repeatabilitySd: sb }
				);
				const amount = (id: string) =>
					change.lines.find((line) => line.id === id)?.amount ?? Number.NaN;
				expect(
					Math.hypot(amount('scatterNow'), amount('scatterLast'), amount('sharedLeft'))
				).toBeCloseTo(change.standardUncertainty, 9);
				expect(amount('now') - amount('last')).toBeCloseTo(change.difference, 12);
				expect(amount('expanded')).toBe(change.expandedUncertainty);
			})
		);
	});
	it.each([
		[of(Number.NaN), of(8), 'now.value must be a number; found NaN'],
		[
			of(8),
			of(8, { standardUncertainty: -1 }),
			'last.standardUncertainty must be 0 or above; found -1'
		],
		[
			of(8, { unit: 'dKH' }),
			of(2.8, { unit: 'meq/L' }),
			'unit must be the same for both; found dKH and meq/L'
		]
	])('what cannot be compared is named (%#)', (now, last, message) => {
		expect(() => compareReadings(now, last)).toThrow(new RangeError(message));
	});
});

// Source: JCGM 101:2008, by drawing. One household tests the same water twice; what it shares is drawn
// once but for the tenth that changes. About one in twenty differences must look real, not more.
it('of the same water twice, a change looks real about once in twenty times', () => {
	const chance = chanceOf(20261125);
	const kit = houseKitOf('house-syringe');
	const budget = readingBudget(kit, { value: 9, valuePerMl: 16 });
	const shared = Math.sqrt(budget.standardUncertainty ** 2 - budget.repeatabilitySd ** 2);
	const tests = 20_000;
	let real = 0;
	for (let i = 0; i < tests; i++) {
		const same = Math.sqrt(0.9) * shared * chance.normal();
		const value = () =>
			9 +
			same +
			Math.sqrt(0.1) * shared * chance.normal() +
			budget.repeatabilitySd * chance.normal();
		if (
			compareReadings({ ...budget, value: value() }, { ...budget, value: value() }).verdict ===
			'likelyReal'
		)
			real++;
	}
	// t for the degrees of freedom of the budget makes it a little rarer than 5 %.
	expect(real / tests).toBeGreaterThan(0.035);
	expect(real / tests).toBeLessThan(0.052);
});

describe('one mark read by two people', () => {
	it('half a division apart is how finely eyes read; a whole one is not', () => {
		expect(compareMarks(0.52, 0.53, 0.02)).toMatchObject({ agrees: true });
		expect(compareMarks(0.52, 0.54, 0.02)).toMatchObject({ agrees: false });
		expect(compareMarks(0.54, 0.52, 0.02).divisions).toBeCloseTo(-1, 12);
		expect(compareMarks(0.52, 0.53, 0.02).mean).toBeCloseTo(0.525, 12);
	});
	it('what is no mark is named', () => {
		expect(() => compareMarks(Number.NaN, 0.5, 0.02)).toThrow('a must be a number; found NaN');
		expect(() => compareMarks(0.5, Number.NaN, 0.02)).toThrow('b must be a number; found NaN');
		expect(() => compareMarks(0.5, 0.5, 0)).toThrow('graduationMl must be above 0; found 0');
	});
});
