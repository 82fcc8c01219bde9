import { describe, expect, it } from 'vitest';
import { valueFromMark } from '../../src/lib/kits';
import { readingBudget, standardDeviation } from '../../src/lib/metrology';
import { buretteKit, dropperKit, syringeKit, truthOf, worked } from '../bench/house';

/**
 * Bench and budget know nothing of each other; here they are held side by side. The bench's hands
 * judge colour, sample and mark without error, so they may scatter less than the budget allows, not
 * more; the last drop is theirs too.
 */
describe.each([
	{ kit: syringeKit, middle: { markMl: 0.5 } },
	{ kit: dropperKit, middle: { drops: 14 } },
	{ kit: buretteKit, middle: { markMl: 3.6 } }
])('$kit.name', ({ kit, middle }) => {
	const tests = 80;
	// Alkalinities that fall anywhere between two drops, as a tank's does.
	const errors = Array.from({ length: tests }, (_, i) => {
		const alkalinityDkh = 7 + (2 * i) / tests;
		const { value } = worked(kit, {}, truthOf({ water: { alkalinityDkh } }), i + 1);
		return value - alkalinityDkh;
	});
	const budget = readingBudget(kit, valueFromMark(kit, middle));
	const scatter = standardDeviation(errors);

	const wholeDrops = budget.lines.find(({ id }) => id === 'wholeDrops')?.contribution ?? Number.NaN;

	it(`clean hands scatter by no more than the budget's repeatability, and by the last drop at least`, () => {
		// 80 tests tell a standard deviation to 8 %: two of those on top.
		expect(scatter).toBeLessThan(budget.repeatabilitySd * 1.16);
		expect(scatter).toBeGreaterThan(wholeDrops * 0.84);
	});

	it('and with ware and bottles as the leaflet has them stay within the expanded uncertainty', () => {
		const outside = errors.filter((error) => Math.abs(error) > budget.expandedUncertainty);
		expect(outside).toEqual([]);
	});
});
