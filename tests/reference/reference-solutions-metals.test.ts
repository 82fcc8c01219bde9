import { describe, expect, it } from 'vitest';
import {
	contentOf,
	gramsPerL,
	mistakenFor,
	scaleOf,
	type Recipe,
	type SubstanceId
} from '../../src/lib/judgement';
import { convertValue } from '../../src/lib/kits';

/**
 * Grams of formula weight, by hand of IUPAC's standard atomic weights (2021, abridged): Ca 40.078, Mg 24.305,
 * S 32.06, Cl 35.45, O 15.999, H 1.008.
 */
const WATER = 2 * 1.008 + 15.999; // 18.015
const CACL2 = 40.078 + 2 * 35.45; // 110.978
const MGSO4 = 24.305 + 32.06 + 4 * 15.999; // 120.361
const MGCL2 = 24.305 + 2 * 35.45; // 95.205

describe('grams in a litre, metals', () => {
	it('415 mg/L of calcium: 10.3548 mmol, 1.5222 g of the dihydrate', () => {
		// 415/40.078 = 10.35481 mmol; times 147.008 mg (147.014 with Cl 35.453: 1.5223 g).
		expect(convertValue(415, 'mg/L', 'mmol/L', 'calcium')).toBeCloseTo(10.35481, 5);
		expect(gramsPerL('calciumChlorideDihydrate', 415, 'mg/L')).toBeCloseTo(1.52224, 5);
		expect(Math.abs(gramsPerL('calciumChlorideDihydrate', 415, 'mg/L') - 1.5223)).toBeLessThan(
			1e-4
		);
	});
	it('64 mmol/L of magnesium: 15.774 g of Epsom salt, or 13.011 g of the chloride', () => {
		// 64 times 246.466 and 203.295 mg.
		expect(gramsPerL('magnesiumSulfateHeptahydrate', 64, 'mmol/L')).toBeCloseTo(15.77382, 5);
		expect(gramsPerL('magnesiumChlorideHexahydrate', 64, 'mmol/L')).toBeCloseTo(13.01088, 5);
		// As calcium carbonate, 100.0869 g/mol, and as if all of it were magnesium.
		expect(gramsPerL('magnesiumSulfateHeptahydrate', 64 * 100.0869, 'ppm CaCO3')).toBeCloseTo(
			15.77382,
			4
		);
		expect(gramsPerL('magnesiumSulfateHeptahydrate', 64 * 24.305, 'mg/L')).toBeCloseTo(15.77382, 4);
	});
});

describe('what is made of a powder of its usual strength', () => {
	const of = (
		substance: SubstanceId,
		grams: number,
		purity: Recipe['purity'],
		unit: Recipe['unit']
	) =>
		contentOf({
			route: 'direct',
			substance,
			purity,
			matrix: 'purified',
			waterHolds: { value: 0, standardUncertainty: 0 },
			unit,
			target: 1,
			temperatureC: 20,
			stages: [
				{
					portion: { amount: grams, measure: { by: 'scale', scale: scaleOf(0.001) } },
					total: { amount: 1000, measure: { by: 'line', toleranceShare: 0.001 } }
				}
			]
		});
	it('its assay carries through: from 98 to 104 % any alike is ± 3.4 % (k = 2)', () => {
		const content = of(
			'calciumChlorideDihydrate',
			1.50717,
			{ share: 1.01, halfWidth: 0.03 },
			'mg/L'
		);
		// 1.50717 · 1.01 = 1.52224 g.
		expect(content.value).toBeCloseTo(415, 2);
		// 0.03/1.01/√3 = 1.715 %; 0.0022 g of 1.507 are 0.146 %, the line 0.058 %: 1.722 %.
		expect(content.relativeStandardUncertainty).toBeCloseTo(0.01722, 4);
		const purity = content.parts.find(({ of: part }) => part === 'purity')!;
		expect((2 * purity.standardUncertainty) / content.value).toBeCloseTo(0.0343, 4);
	});
	it('Epsom salt, 98 to 102 %: ± 2.3 %', () => {
		const content = of(
			'magnesiumSulfateHeptahydrate',
			15.774,
			{ share: 1, halfWidth: 0.02 },
			'mmol/L'
		);
		expect(content.value).toBeCloseTo(64, 2);
		// 0.02/√3, with 0.01 % of the scale and 0.06 % of the line.
		expect(2 * content.relativeStandardUncertainty).toBeCloseTo(0.0231, 4);
	});
});

describe('water in the crystals that was not reckoned with, by formula weights', () => {
	it.each([
		[mistakenFor.calciumChlorideDihydrate.anhydrousCalcium.high, CACL2 + 2 * WATER, CACL2],
		[
			mistakenFor.calciumChlorideDihydrate.hexahydrateCalcium.low,
			CACL2 + 2 * WATER,
			CACL2 + 6 * WATER
		],
		[mistakenFor.calciumChlorideDihydrate.drewWater.low, CACL2 + 2 * WATER, CACL2 + 6 * WATER],
		[mistakenFor.magnesiumSulfateHeptahydrate.driedEpsom.high, MGSO4 + 7 * WATER, MGSO4 + WATER],
		[mistakenFor.magnesiumSulfateHeptahydrate.lostWater.high, MGSO4 + 7 * WATER, MGSO4 + 6 * WATER],
		[mistakenFor.magnesiumChlorideHexahydrate.anhydrousMagnesium.high, MGCL2 + 6 * WATER, MGCL2]
	])('%d', (share, taken, really) => {
		expect(share).toBeCloseTo(taken / really - 1, 6);
	});
});
