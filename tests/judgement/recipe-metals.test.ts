import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chelationEndVolumeMl, type EdtaTitration } from '../../src/lib/chemistry';
import {
	contentOf,
	expectedReadingOf,
	mistakenContents,
	recommendedRecipe,
	referencePart,
	referenceRecipes,
	scaleOf,
	substanceOf,
	substances,
	substancesFor,
	trapsOf,
	unmeasuredWater,
	waterEffectOf,
	type MadeAnalyte,
	type Measure,
	type RecipeInput,
	type SubstanceId
} from '../../src/lib/judgement';
import { convertValue, houseHardnessKit, unitsOf } from '../../src/lib/kits';
import { EvidenceSchema } from '../../src/lib/observation';

const kitchenScale = { by: 'scale', scale: scaleOf(1, { capacityG: 10_000 }) } as const;
const jug: Measure = { by: 'line', toleranceShare: 0.02 };
const ordinary: RecipeInput = {
	substance: 'calciumChlorideDihydrate',
	target: 415,
	unit: 'mg/L',
	matrix: 'purified',
	volumeMl: 1000,
	scale: scaleOf(0.01),
	water: kitchenScale
};
const both: Partial<RecipeInput> = {
	substance: 'magnesiumSulfateHeptahydrate',
	target: 64,
	unit: 'mmol/L'
};
const best = (over: Partial<RecipeInput> = {}) =>
	recommendedRecipe(referenceRecipes({ ...ordinary, ...over }));

const ofMetals = (Object.keys(substances) as SubstanceId[]).filter(
	(id) => substanceOf(id).dissolvesAs === null
);
/** Targets about those of the sea, in the customary unit of what the powder is for. */
const anyInput = fc
	.record({
		substance: fc.constantFrom(...ofMetals),
		share: fc.double({ min: 0.3, max: 1.5, noNaN: true }),
		matrix: fc.constantFrom('purified', 'sodiumChloride'),
		// More than two litres ask for more powder than a scale of 0.001 g takes.
		volumeMl: fc.integer({ min: 200, max: 2000 }),
		scale: fc.constantFrom(0.1, 0.01, 0.001).map((division) => scaleOf(division)),
		water: fc.constantFrom(jug, kitchenScale),
		syringeCapacityMl: fc.constantFrom(1, 5, 10, 20)
	})
	.map(({ share, ...input }) => {
		const { analyte } = substanceOf(input.substance);
		const [unit] = unitsOf(analyte);
		return { ...input, unit, target: share * (analyte === 'calcium' ? 415 : 64) };
	}) as fc.Arbitrary<RecipeInput>;

describe('a known solution of metals', () => {
	it('every powder is for what a kit reads, and the usual one comes first', () => {
		expect(substancesFor('calcium')).toEqual(['calciumChlorideDihydrate']);
		expect(substancesFor('hardness')[0]).toBe('magnesiumSulfateHeptahydrate');
		expect(substancesFor('alkalinity')[0]).toBe('sodiumBicarbonate');
		expect(substancesFor('magnesium')).toEqual([]);
	});
	it('is never known better than its powder: ± 3.4 % of calcium, ± 2.3 % of Epsom salt', () => {
		const calcium = best()!;
		expect(2 * calcium.content.relativeStandardUncertainty).toBeGreaterThan(0.0343);
		expect(2 * calcium.content.relativeStandardUncertainty).toBeLessThan(0.037);
		expect(calcium.fitness).toBe('coarse');
		expect(calcium.content.analyte).toBe('calcium');
		const epsom = best(both)!;
		expect(2 * epsom.content.relativeStandardUncertainty).toBeGreaterThan(0.0231);
		expect(2 * epsom.content.relativeStandardUncertainty).toBeLessThan(0.025);
	});
	it('by hand: a stock weighed from 30.12 g in a kilogram, of which 50 g make a kilogram', () => {
		const { recipe } = referenceRecipes({
			...ordinary,
			stockFactors: [20],
			waterHolds: { value: 0, standardUncertainty: 0 }
		}).find(({ recipe: { route } }) => route === 'stockWeighed')!;
		const { value } = contentOf(recipe, [
			{ portion: 30.12, total: 1000 },
			{ portion: 50, total: 1000 }
		]);
		// 30.12 · 1.01 · 50/1000 = 1.52106 g of CaCl2·2H2O of 147.008 g/mol: 10.3468 mmol, 414.68 mg; in
		// 1000 g at 20 °C, 1.0019 L (water 1.00285 L/kg as weighed in air, 0.09 % less with 1.5 g in it): 413.9 mg/L.
		expect(Math.abs(value - 413.9)).toBeLessThan(0.1);
	});
	it.each([0.1, 0.01, 0.001])('a scale of %d g makes one that can be used', (divisionG) => {
		expect(best({ scale: scaleOf(divisionG) })?.fitness).not.toBe('unfit');
		expect(best({ ...both, scale: scaleOf(divisionG) })?.fitness).not.toBe('unfit');
	});
	it('the unit does not matter: same amounts, same relative uncertainty', () => {
		fc.assert(
			fc.property(anyInput, fc.nat(), (input, pick) => {
				const { analyte } = substanceOf(input.substance);
				const units = unitsOf(analyte);
				const unit = units[pick % units.length]!;
				const target = convertValue(input.target, input.unit, unit, analyte);
				const there = referenceRecipes({ ...input, unit, target });
				const here = referenceRecipes(input);
				expect(here.length).toBeGreaterThan(0);
				expect(there.map(({ recipe }) => recipe.stages)).toEqual(
					here.map(({ recipe }) => recipe.stages)
				);
				here.forEach(({ content }, i) => {
					const other = there[i]!.content;
					expect(convertValue(other.value, unit, input.unit, analyte)).toBeCloseTo(
						content.value,
						9
					);
					expect(other.relativeStandardUncertainty).toBeCloseTo(
						content.relativeStandardUncertainty,
						12
					);
				});
			}),
			{ numRuns: 60 }
		);
	});
	it('each way holds its target to a division, and none asks for more than dissolves', () => {
		fc.assert(
			fc.property(anyInput, (input) => {
				for (const { recipe, content } of referenceRecipes(input)) {
					const grams = recipe.stages[0]!.portion.amount;
					// Of a strong stock that is drawn by volume, a division brings more than its share of the powder.
					const more = contentOf(recipe, [{ portion: grams + input.scale.divisionG }]);
					const perDivision = more.value - content.value;
					expect(Math.abs(content.value - input.target)).toBeLessThan(0.51 * perDivision);
					const mostG = substanceOf(input.substance).mostGPerL * Math.max(1, input.volumeMl / 1000);
					expect(grams).toBeLessThan(1.2 * mostG);
				}
			}),
			{ numRuns: 60 }
		);
	});
	it('a finer scale never makes the best way less certain', () => {
		fc.assert(
			fc.property(anyInput, (input) => {
				const { capacityG } = scaleOf(0.1);
				const certainty = [0.1, 0.01, 0.001].map((divisionG) => {
					const [first] = referenceRecipes({ ...input, scale: scaleOf(divisionG, { capacityG }) });
					return first!.content.relativeStandardUncertainty;
				});
				// A way's mass is rounded to a division, which moves its share of the uncertainty by a little.
				expect(certainty[1]!).toBeLessThan(certainty[0]! * 1.001);
				expect(certainty[2]!).toBeLessThan(certainty[1]! * 1.001);
			}),
			{ numRuns: 40 }
		);
	});
	it('water of nobody’s measuring brings less than a hundredth, the same in any unit', () => {
		for (const analyte of ['calcium', 'hardness'] as const)
			for (const matrix of ['purified', 'sodiumChloride'] as const) {
				const here = unmeasuredWater('unsure', matrix, 'mmol/L', analyte);
				const there = unmeasuredWater('unsure', matrix, 'mg/L', analyte);
				expect(convertValue(there.value, 'mg/L', 'mmol/L', analyte)).toBeCloseTo(here.value, 12);
				// Up to 5 % of hard water of 4 mmol/L; 100 ppm of calcium in 35 g of salt are 3.5 mg.
				const most = 0.2 + (matrix === 'sodiumChloride' ? 3.5 / 40.078 : 0);
				expect(here.value).toBeCloseTo(most / 2, 3);
			}
	});
});

describe('what a kit with EDTA should read on it', () => {
	const reads = (
		substance: SubstanceId,
		matrix: RecipeInput['matrix'],
		value: number,
		unit: RecipeInput['unit']
	) => waterEffectOf({ matrix, substance, temperatureC: 20 }, { value, unit });
	it('calcium without magnesium: more than it holds, by the same amount in either unit', () => {
		const inMg = reads('calciumChlorideDihydrate', 'purified', 415, 'mg/L');
		expect(inMg.value).toBeGreaterThan(4);
		expect(inMg.value).toBeLessThan(6);
		const inMmol = reads('calciumChlorideDihydrate', 'purified', 415 / 40.078, 'mmol/L');
		expect(inMmol.value * 40.078).toBeCloseTo(inMg.value, 9);
		expect(inMmol.standardUncertainty * 40.078).toBeCloseTo(inMg.standardUncertainty, 9);
	});

	/** mmol/L by the house kit for both metals, by the chemistry of the end: see matrix-effect-metals.test.ts. */
	const bothRead = (water: Partial<EdtaTitration>) =>
		40 *
		(chelationEndVolumeMl({
			salinity: 35,
			temperatureC: 25,
			volumeMl: 2.5,
			edtaMolPerL: houseHardnessKit.contents?.titrant.molPerL ?? Number.NaN,
			ammoniaBuffer: { volumeMl: 0.45, ammoniaMolPerL: 5, ammoniumMolPerL: 1 },
			indicator: { dyeId: 'eriochromeBlackT', mol: 1.2e-7 },
			...water
		}) ?? Number.NaN);
	// Densities at 25 °C, kg/L: textbook.
	const [SEA, PURE] = [1.0233, 0.997];
	it.each([
		['purified', 55.7],
		['purified', 64],
		['purified', 72.2],
		['sodiumChloride', 55.7],
		['sodiumChloride', 64],
		['sodiumChloride', 72.2]
	] as const)('magnesium alone in %s, %d mmol/L: by chemistry within its ±', (matrix, mmolPerL) => {
		const calcium = 420 / 40.078;
		const sea = bothRead({
			calciumMolPerKg: calcium / 1000 / SEA,
			magnesiumMolPerKg: (mmolPerL - calcium) / 1000 / SEA
		});
		const alone = bothRead({
			calciumMolPerKg: 0,
			strontiumMolPerKg: 0,
			magnesiumMolPerKg: mmolPerL / 1000 / (matrix === 'purified' ? PURE : SEA),
			...(matrix === 'purified' ? { salinity: 0 } : { matrix, salinity: 34.2 })
		});
		const taken = reads('magnesiumSulfateHeptahydrate', matrix, mmolPerL, 'mmol/L');
		expect(Math.abs(alone - sea - taken.value)).toBeLessThan(2 * taken.standardUncertainty);
		expect(Math.abs(alone - sea - taken.value)).toBeLessThan(0.5);
	});
	it('its ± holds that of the powder and that of kits', () => {
		const { recipe, content } = best()!;
		const effect = waterEffectOf(recipe, content);
		const { standardUncertainty } = expectedReadingOf(content, effect);
		expect(standardUncertainty).toBeCloseTo(
			Math.hypot(content.standardUncertainty, effect.standardUncertainty),
			12
		);
	});
});

describe('as evidence', () => {
	it.each([
		['calciumChlorideDihydrate', 415, 'mg/L', 'mmol/L', 40.078],
		['magnesiumSulfateHeptahydrate', 64, 'mmol/L', 'mg/L', 1 / 24.305]
	] as const)('%s in the unit of the reading', (substance, target, own, unit, size) => {
		const { content } = best({ substance, target, unit: own })!;
		const part = referencePart(content, { substance, matrix: 'purified', unit });
		expect(part.nominal).toBeCloseTo(content.value / size, 6);
		expect(part.nominalExpandedUncertainty).toBeCloseTo(content.expandedUncertainty / size, 6);
		const reading = { id: 'r', label: 'Known', value: 1, expandedUncertainty: 0.5, unit };
		expect(EvidenceSchema.safeParse({ ...part, reading }).success).toBe(true);
	});
});

describe('traps', () => {
	const trapsFor = (over: Partial<RecipeInput>) => trapsOf(best(over)!.recipe);
	it('are those of the hydrates, of damp and dry powder, and of two powders in one stock', () => {
		const calcium = trapsFor({ matrix: 'sodiumChloride' });
		const ids = calcium.map(({ id }) => id);
		expect(ids).toEqual([
			'anhydrousCalcium',
			'hexahydrateCalcium',
			'drewWater',
			'onePowder',
			'impureWater',
			'notPlainSalt',
			'calciumWater',
			'undissolved',
			'evaporation'
		]);
		const words = calcium.map((trap) => trap.words).join(' ');
		// CaCl2·2H2O over CaCl2, and over CaCl2·6H2O: 147.01 over 110.98 and over 219.07.
		expect(words).toContain('32 % stronger');
		expect(words).toContain('33 % weaker');
		expect(words).not.toMatch(/alkalinity|chalk|bicarbonate/);
		expect(trapsFor(both).map(({ id }) => id)).toContain('lostWater');
	});
	it('a wrong powder shows itself by what the solution holds then', () => {
		const { recipe, content } = best({ waterHolds: { value: 0, standardUncertainty: 0 } })!;
		const found = Object.fromEntries(
			mistakenContents(recipe, content).map(({ id, low }) => [id, low / content.value])
		);
		expect(found['anhydrousCalcium']).toBeCloseTo(147.008 / 110.978, 6);
		expect(found['hexahydrateCalcium']).toBeCloseTo(147.008 / 219.068, 6);
	});
	it('there are words for every powder and water', () => {
		const analytes: MadeAnalyte[] = ['alkalinity', 'calcium', 'hardness'];
		for (const analyte of analytes)
			for (const substance of substancesFor(analyte)) {
				const target = { alkalinity: 8, calcium: 415, hardness: 64 }[analyte];
				const traps = trapsFor({ substance, target, unit: unitsOf(analyte)[0]! });
				expect(traps.filter(({ when }) => when === 'powder').length).toBeGreaterThan(0);
				for (const { words } of traps) expect(words).not.toMatch(/undefined|NaN/);
			}
	});
});
