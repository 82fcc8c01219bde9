import { describe, expect, it } from 'vitest';
import { isMadeHere } from '../../src/routes/check/made-here';
import { wayOf } from '../../src/routes/check/ways';

describe('what helps with a check of the kit', () => {
	it('a recipe, a curve of acid and an addition, for alkalinity', () => {
		expect(isMadeHere('alkalinity')).toBe(true);
		const ways = wayOf('c1', 'alkalinity');
		expect(ways.reference).toEqual(ways.referenceBySecondMethod);
		expect(ways.reference?.words).toBe('How to make a known solution');
		expect(ways.standardAddition?.href).toContain('#check=c1');
		expect(ways.probeTitration?.href).toContain('#check=c1');
	});
	it.each(['calcium', 'hardness'] as const)(
		'a recipe for %s, but no curve of acid and no addition',
		(analyte) => {
			expect(isMadeHere(analyte)).toBe(true);
			const ways = wayOf('c1', analyte);
			expect(Object.keys(ways).sort()).toEqual(['reference', 'referenceBySecondMethod']);
			expect(ways.reference?.words).toBe('How to make a known solution');
		}
	);
	it('no recipe for magnesium as a difference', () => {
		expect(isMadeHere('magnesium')).toBe(false);
		const ways = wayOf('c1', 'magnesium');
		expect(Object.keys(ways).sort()).toEqual(['reference', 'referenceBySecondMethod']);
		expect(ways.reference?.words).not.toMatch(/make/i);
	});
});
