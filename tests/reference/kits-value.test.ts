import { describe, expect, it } from 'vitest';
import { ppmCaCO3FromDkh } from '../../src/lib/chemistry';
import { impliedTitrantStrength, valueFromMark } from '../../src/lib/kits';
import { plainKit } from '../kits/house';

/** A kit reckoned for an acid: value per mL of titrant by the definition of the degree. */
const kitOfAcid = (molPerL: number, sampleMl: number) => {
	// Definition of the German degree: 10 mg CaO per litre; CaO, 56.0774 g/mol, takes two acids.
	const dkhPerMeqPerL = 56.0774 / 2 / 10;
	return plainKit(sampleMl, (molPerL * 1000 * dkhPerMeqPerL) / sampleMl);
};

// Source: Standard Methods for the Examination of Water and Wastewater, 2320 B, equation 1:
// alkalinity, mg CaCO3 per litre = A · N · 50 000 / mL of sample. Its 50 000 is CaCO3 over two
// rounded from 50 043, so compared to one in a thousand.
describe('a mark turned into mg CaCO3 per litre is what Standard Methods 2320 B gives', () => {
	it.each([
		{ acidMolPerL: 0.02, sampleMl: 5, usedMl: 0.62 },
		{ acidMolPerL: 0.1, sampleMl: 25, usedMl: 0.75 },
		{ acidMolPerL: 0.03404, sampleMl: 6, usedMl: 0.5 }
	])('$acidMolPerL mol/L, $sampleMl mL, $usedMl mL used', ({ acidMolPerL, sampleMl, usedMl }) => {
		const { value } = valueFromMark(kitOfAcid(acidMolPerL, sampleMl), { markMl: 1 - usedMl });
		const standard = (usedMl * acidMolPerL * 50_000) / sampleMl;
		expect(Math.abs(ppmCaCO3FromDkh(value) / standard - 1)).toBeLessThan(0.001);
	});
});

// Source: USGS National Field Manual, 6.6.2 (after Fishman and Friedman 1989): 0.8686 g of sodium
// carbonate in a litre is 0.01639 N; a titration of it must use that much acid.
it('the sodium carbonate standard of the USGS manual reads 45.96 dKH', () => {
	const meqPerL = ((0.8686 * 2) / 105.988) * 1000;
	expect(meqPerL).toBeCloseTo(16.39, 2);
	const usedMl = (meqPerL * 5) / 100;
	const kit = kitOfAcid(0.1, 5);
	expect(valueFromMark(kit, { markMl: 1 - usedMl }).value).toBeCloseTo(45.96, 2);
});

it('the strength implied by a conversion is the strength it was reckoned for', () => {
	for (const molPerL of [0.005, 0.02, 0.1])
		expect(impliedTitrantStrength(kitOfAcid(molPerL, 5)) / molPerL).toBeCloseTo(1, 9);
});
