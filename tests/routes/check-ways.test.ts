import { describe, expect, it } from 'vitest';
import { isMadeHere } from '../../src/routes/check/made-here';
import { wayOf } from '../../src/routes/check/ways';

describe('what helps with a check of the kit', () => {
	it('a recipe, where there is one', () => {
		expect(isMadeHere('alkalinity')).toBe(true);
		const ways = wayOf('c1', true);
		expect(ways.reference).toEqual(ways.referenceBySecondMethod);
		expect(ways.reference?.words).toBe('How to make a known solution');
		expect(ways.standardAddition?.href).toContain('#check=c1');
	});
	it('no recipe of alkalinity for a check of metals, nor a curve of acid', () => {
		for (const analyte of ['calcium', 'magnesium', 'hardness'] as const)
			expect(isMadeHere(analyte)).toBe(false);
		const ways = wayOf('c1', false);
		expect(Object.keys(ways).sort()).toEqual(['reference', 'referenceBySecondMethod']);
		expect(ways.reference?.words).not.toMatch(/make/i);
	});
});
