import { describe, expect, it } from 'vitest';
import {
	acidVial,
	addAcid,
	chelationVial,
	colourOf,
	fillChelationVessel,
	fillVessel,
	loseCarbonDioxide,
	type Reagent,
	type VialChemistry
} from '../../src/lib/chemistry';

const water = { salinity: 35, temperatureC: 25, volumeMl: 5 };
const acidSample = fillVessel({
	matrix: 'seawater',
	...water,
	alkalinityMolPerKg: 0.0024,
	dicMolPerKg: 0.0021
});
const base: Reagent = {
	kind: 'base',
	volumeMl: 0.6,
	hydroxideMolPerL: 2,
	carbonateMolPerL: 0
};

/** One and the same hands for either kind: from the sample to twice what it can take. */
function hueBeforeAndAfter<Contents>(
	chemistry: VialChemistry<Contents>,
	sample: Contents,
	reagents: readonly Reagent[],
	dye: { dyeId: string; molPerL: number },
	molPerL: number
) {
	let contents = reagents.reduce((all, each) => chemistry.addReagent(all, each), sample);
	expect(chemistry.hasDye(contents)).toBe(false);
	contents = chemistry.addIndicator(contents, {
		volumeMl: 0.05,
		dyes: [{ ...dye, addedAs: 'salt' }]
	});
	expect(chemistry.hasDye(contents)).toBe(true);
	contents = chemistry.settle(contents, { seconds: 60, carbonDioxideShare: 0 });
	const before = chemistry.colourOf(contents, 2, 'white').lab.hueDegrees;
	const hazeMolPerL = chemistry.hazeMolPerL(contents);
	const volumeMl = (2000 * chemistry.mostTitrantMol(contents)) / molPerL;
	const levelMl = chemistry.volumeMlOf(contents);
	contents = chemistry.addTitrant(contents, { volumeMl, molPerL });
	expect(chemistry.volumeMlOf(contents) - levelMl).toBeCloseTo(volumeMl, 1);
	return { before, after: chemistry.colourOf(contents, 2, 'white').lab.hueDegrees, hazeMolPerL };
}

describe('a titration without knowing its kind', () => {
	it('of alkalinity goes from blue-green to yellow', () => {
		const dye = { dyeId: 'bromocresolGreen', molPerL: 1.433e-3 };
		const seen = hueBeforeAndAfter(acidVial, acidSample, [], dye, 0.1);
		expect(seen.before).toBeGreaterThan(180);
		expect(seen.after).toBeLessThan(130);
		expect(seen.hazeMolPerL).toBe(0);
	});
	it('of calcium goes from red to blue, in a haze', () => {
		const dye = { dyeId: 'hydroxynaphtholBlue', molPerL: 2e-3 };
		const seen = hueBeforeAndAfter(chelationVial, fillChelationVessel(water), [base], dye, 0.05);
		expect(seen.before).toBeGreaterThan(320);
		expect(seen.after).toBeGreaterThan(200);
		expect(seen.after).toBeLessThan(260);
		expect(seen.hazeMolPerL).toBeGreaterThan(0.04);
	});
});

describe('the vial of acid', () => {
	it('is the acid vessel to the last bit', () => {
		const titrant = { volumeMl: 0.05, molPerL: 0.1 };
		const added = acidVial.addTitrant(acidSample, titrant);
		expect(added).toEqual(addAcid(acidSample, titrant));
		expect(acidVial.settle(added, { seconds: 9, carbonDioxideShare: 0.3 })).toEqual(
			loseCarbonDioxide(added, 0.3)
		);
		expect(acidVial.colourOf(added, 2, 'white', 0.001)).toEqual(
			colourOf(added, 2, 'white', { extraAcidMolPerKg: 0.001 })
		);
	});
	it('has no use for an ammonia buffer', () => {
		expect(() =>
			acidVial.addReagent(acidSample, {
				kind: 'ammoniaBuffer',
				volumeMl: 1,
				ammoniaMolPerL: 1,
				ammoniumMolPerL: 1
			})
		).toThrow('kind must be base');
	});
});
