import { describe, expect, it } from 'vitest';
import { densityKgPerL } from '../../src/lib/chemistry';
import {
	contentOf,
	gPerMlAfter,
	gramsPerL,
	mistakenFor,
	mlPerWeighedG,
	scaleOf,
	weighingUncertaintyG,
	type Measure,
	type Recipe,
	type Stage,
	type SubstanceId
} from '../../src/lib/judgement';
import { convertValue } from '../../src/lib/kits';

const pocketScale: Measure = { by: 'scale', scale: scaleOf(0.01) };
/** Weighs a kilogram with a standard uncertainty of one gram, 0.1 %. */
const waterScale: Measure = {
	by: 'scale',
	scale: scaleOf(1, { linearityG: 0, repeatabilityG: Math.sqrt(0.5 - 1 / 12) })
};
const jug: Measure = { by: 'line', toleranceShare: 0.02 };

function recipeOf(stages: Stage[], substance: SubstanceId = 'sodiumBicarbonate'): Recipe {
	return {
		route: 'direct',
		substance,
		purity: { share: 1, halfWidth: 0.005 },
		matrix: 'purified',
		waterHolds: { value: 0, standardUncertainty: 0 },
		unit: 'dKH',
		target: 8,
		temperatureC: 20,
		stages
	};
}
const dissolved = (grams: number, substance: SubstanceId, toMl = 1000) =>
	recipeOf(
		[
			{
				portion: { amount: grams, measure: pocketScale },
				total: { amount: toMl, measure: jug }
			}
		],
		substance
	);

describe('grams in a litre', () => {
	// Worked out by a separate program from the definition of the dKH and IUPAC molar masses
	// (NaHCO3 84.007, Na2CO3 105.988 g/mol).
	it.each([
		[4, 1.426599664, 71.39196896, 75.6012226, 119.844358],
		[5, 1.78324958, 89.2399612, 94.50152824, 149.8054475],
		[6, 2.139899496, 107.0879534, 113.4018339, 179.766537],
		[7, 2.496549412, 124.9359457, 132.3021395, 209.7276265],
		[8, 2.853199328, 142.7839379, 151.2024452, 239.688716],
		[9, 3.209849244, 160.6319302, 170.1027508, 269.6498054],
		[10, 3.56649916, 178.4799224, 189.0030565, 299.6108949],
		[11, 3.923149076, 196.3279146, 207.9033621, 329.5719844],
		[12, 4.279798992, 214.1759069, 226.8036678, 359.5330739]
	])('%d dKH', (dkh, meqPerL, ppm, carbonateMg, bicarbonateMg) => {
		expect(convertValue(dkh, 'dKH', 'meq/L')).toBeCloseTo(meqPerL, 8);
		expect(convertValue(dkh, 'dKH', 'ppm CaCO3')).toBeCloseTo(ppm, 6);
		expect(1000 * gramsPerL('driedSodiumCarbonate', dkh, 'dKH')).toBeCloseTo(carbonateMg, 5);
		expect(1000 * gramsPerL('sodiumBicarbonate', dkh, 'dKH')).toBeCloseTo(bicarbonateMg, 5);
		expect(gramsPerL('sodiumBicarbonate', meqPerL, 'meq/L')).toBeCloseTo(bicarbonateMg / 1000, 9);
	});

	it('a stock for a hundredfold dilution to 8 dKH: 15.120 g or 23.969 g, and what it dilutes to', () => {
		expect(gramsPerL('driedSodiumCarbonate', 800, 'dKH')).toBeCloseTo(15.12024452, 6);
		expect(gramsPerL('sodiumBicarbonate', 800, 'dKH')).toBeCloseTo(23.9688716, 6);
		const syringe: Measure = { by: 'syringe', capacityMl: 20 };
		for (const [portionMl, dkh] of [
			[10, 8],
			[12.5, 10],
			[7.5, 6]
		] as const) {
			const recipe = recipeOf([
				{
					portion: { amount: 23.9688716, measure: pocketScale },
					total: { amount: 1000, measure: jug }
				},
				{
					portion: { amount: portionMl, measure: syringe },
					total: { amount: 1000, measure: jug }
				}
			]);
			expect(contentOf(recipe).value).toBeCloseTo(dkh, 6);
		}
	});
});

describe('published standard solutions', () => {
	// Standard Methods for the Examination of Water and Wastewater, 2320 B: 2.5 ± 0.2 g of Na2CO3
	// in a litre, about 0.05 N. The normality follows from the mass that was weighed.
	it.each([
		[2.5, 0.04718],
		[2.3, 0.0434],
		[2.7, 0.05095],
		[2.6497, 0.05]
	])('%d g/L of Na2CO3: %d N', (grams, normality) => {
		const content = contentOf({ ...dissolved(grams, 'driedSodiumCarbonate'), unit: 'meq/L' });
		expect(Math.abs(content.value / 1000 - normality)).toBeLessThan(5e-6);
	});
	it('2.5 g/L are 132.27 dKH', () => {
		const { value } = contentOf(dissolved(2.5, 'driedSodiumCarbonate'));
		expect(value).toBeCloseTo(132.2729932, 6);
	});
	// USGS National Field Manual, chapter A6.6, after Fishman & Friedman 1989: 0.8686 g of Na2CO3 in
	// a litre is 0.01639 N, of which 1.00 mL is 1.00 mg of HCO3.
	it('0.8686 g/L of Na2CO3: 0.01639 N, 1.00 mg of HCO3 in a mL', () => {
		const { value } = contentOf({
			...dissolved(0.8686, 'driedSodiumCarbonate'),
			unit: 'meq/L'
		});
		expect(value / 1000).toBeCloseTo(0.016391, 6);
		expect(Math.abs((value * 61.0168) / 1000 - 1)).toBeLessThan(0.005);
		expect(convertValue(value, 'meq/L', 'dKH')).toBeCloseTo(45.95692875, 6);
	});
});

describe('what a scale of 0.01 g can weigh', () => {
	// The model and its figures, by a separate program: two readings, empty and full, each with an
	// even distribution over half a division and over ±0.02 g, and 0.01 g of repeatability (estimates
	// for a pocket scale).
	it('standard uncertainty of a weighing', () => {
		expect(weighingUncertaintyG(scaleOf(0.01))).toBeCloseTo(0.02198484326, 10);
		const ideal = scaleOf(0.01, { linearityG: 0, repeatabilityG: 0 });
		expect(weighingUncertaintyG(ideal)).toBeCloseTo(0.004082482905, 10);
	});
	it.each([
		[0.15, 14.657, 2.722],
		[0.24, 9.16, 1.701],
		[0.5, 4.397, 0.816],
		[1, 2.198, 0.408],
		[2, 1.099, 0.204],
		[5, 0.44, 0.082],
		[10, 0.22, 0.041],
		[15, 0.147, 0.027],
		[24, 0.092, 0.017]
	])('%d g: %d %%, by its division alone %d %%', (grams, percent, byDivision) => {
		const parts = contentOf(dissolved(grams, 'sodiumBicarbonate')).parts.filter(
			({ of }) => of === 'powder'
		);
		const { value } = contentOf(dissolved(grams, 'sodiumBicarbonate'));
		const share = (kinds: readonly string[]) =>
			(100 *
				Math.hypot(
					...parts
						.filter(({ kind }) => kinds.includes(kind))
						.map(({ standardUncertainty }) => standardUncertainty)
				)) /
			value;
		expect(Math.abs(share(['division', 'linearity', 'repeatability']) - percent)).toBeLessThan(
			0.00051
		);
		expect(Math.abs(share(['division']) - byDivision)).toBeLessThan(0.00051);
	});
});

describe('8 dKH of bicarbonate by three ways', () => {
	// Relative standard uncertainties worked out by a separate program with the same inputs.
	const stock = {
		portion: { amount: 23.9688716, measure: pocketScale },
		total: { amount: 1000, measure: waterScale }
	};
	const diluted = (portion: Measure): Recipe =>
		recipeOf([
			stock,
			{
				portion: { amount: 10, measure: portion },
				total: { amount: 1000, measure: waterScale }
			}
		]);
	it.each([
		[
			'0.240 g straight into a litre of a jug, ±2 %',
			dissolved(0.239688716, 'sodiumBicarbonate'),
			0.09249151235
		],
		['through a stock, of which 10.0 g are weighed', diluted(pocketScale), 0.004000995874],
		[
			'through a stock, of which 10 mL are taken by syringe, ±4 %',
			diluted({ by: 'syringe', capacityMl: 10 }),
			0.01666857226
		]
	])('%s', (_, recipe, relative) => {
		expect(contentOf(recipe).relativeStandardUncertainty).toBeCloseTo(relative, 10);
	});
});

describe('powders taken for another', () => {
	// From molar masses: Na2CO3·10H2O 286.14, Na2CO3·H2O 124.00 g/mol (CRC Handbook).
	it('washing soda holds 63 % and 14.5 % less; carbonated bicarbonate up to 58.5 % more', () => {
		const { monohydrate, decahydrate } = mistakenFor.driedSodiumCarbonate;
		expect(decahydrate.low).toBeCloseTo(105.988 / 286.14 - 1, 5);
		expect(monohydrate.low).toBeCloseTo(105.988 / 124.0 - 1, 4);
		expect(Math.round(100 * decahydrate.low)).toBe(-63);
		expect(Math.round(1000 * monohydrate.low)).toBe(-145);
		expect(Math.round(1000 * mistakenFor.sodiumBicarbonate.partlyCarbonated.high)).toBe(585);
	});
});

describe('weighed water and solutions as volumes', () => {
	// ISO 8655-6, table of Z at 101.3 kPa: 1.0029 at 20 °C, 1.0040 at 25 °C.
	it.each([
		[20, 1.0029],
		[25, 1.004]
	])('%d °C: %d mL per gram', (temperatureC, z) => {
		expect(Math.abs(mlPerWeighedG(densityKgPerL(0, temperatureC)) - z)).toBeLessThan(5.1e-5);
	});
	// Densities at 20 °C by share of mass: CRC Handbook, concentrative properties, from memory.
	it.each([
		['sodiumBicarbonate', 1, 1.0054],
		['sodiumBicarbonate', 2, 1.0127],
		['driedSodiumCarbonate', 1, 1.0086],
		['driedSodiumCarbonate', 2, 1.019]
	] as const)('%s, %d %%: %d g/mL', (substance, percent, density) => {
		const recipe = recipeOf(
			[
				{
					portion: { amount: 10 * percent, measure: pocketScale },
					total: { amount: 1000, measure: waterScale }
				}
			],
			substance
		);
		expect(Math.abs(gPerMlAfter(recipe, 0) - density)).toBeLessThan(0.001);
	});
	it('35 g/L of NaCl: 1.0227 g/mL', () => {
		const recipe: Recipe = {
			...dissolved(0.24, 'sodiumBicarbonate'),
			matrix: 'sodiumChloride'
		};
		expect(Math.abs(gPerMlAfter(recipe, 0) - 1.0227)).toBeLessThan(0.001);
	});
});
