import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	contentOf,
	measuredIn,
	recommendedRecipe,
	referenceRecipes,
	scaleOf,
	unmeasuredWater,
	waterByBlank,
	type Measure,
	type Recipe,
	type RecipeInput
} from '../../src/lib/judgement';
import { convertValue, unitsOf } from '../../src/lib/kits';
import { randomNormal, randomUniform } from '../metrology/seeded';

const kitchenScale: Measure = { by: 'scale', scale: scaleOf(1) };
const jug: Measure = { by: 'line', toleranceShare: 0.02 };
const ordinary: RecipeInput = {
	substance: 'sodiumBicarbonate',
	target: 8,
	unit: 'dKH',
	matrix: 'purified',
	volumeMl: 1000,
	scale: scaleOf(0.01),
	water: { by: 'scale', scale: scaleOf(1) },
	syringeCapacityMl: 10
};
const routeOf = (input: Partial<RecipeInput>, route: Recipe['route']) => {
	const found = referenceRecipes({ ...ordinary, ...input }).find(
		({ recipe }) => recipe.route === route
	);
	if (!found) throw new Error(`a way ${route} expected`);
	return found;
};

describe('what a solution holds after what was really weighed', () => {
	it('weighed all the way, by hand', () => {
		const { recipe } = routeOf(
			{ stockFactors: [50], waterHolds: { value: 0, standardUncertainty: 0 } },
			'stockWeighed'
		);
		const { value } = contentOf(recipe, [
			{ portion: 24, total: 1000 },
			{ portion: 20, total: 1000 }
		]);
		// 24 g · 20/1000 = 0.480 g of NaHCO3, 5.7138 meq; 1000 g of water weighed at 20 °C are 1.00285 L
		// (1.0025 L with what is dissolved in it, 0.35 g/L denser): 5.699 meq/L, 15.98 dKH.
		expect(value).toBeCloseTo(15.98, 2);
	});
	it('a tenth more stock makes a tenth more', () => {
		const { recipe } = routeOf({ water: jug, waterHolds: noWater }, 'stockSyringe');
		const portion = recipe.stages[1]?.portion.amount ?? 0;
		const more = contentOf(recipe, [{}, { portion: 1.1 * portion }]).value;
		expect(more / contentOf(recipe).value).toBeCloseTo(1.1, 12);
	});
	it('what the water itself holds comes on top, with its uncertainty', () => {
		const { recipe } = routeOf({ waterHolds: noWater }, 'direct');
		const before = contentOf(recipe);
		const after = contentOf({ ...recipe, waterHolds: { value: 0.3, standardUncertainty: 0.2 } });
		expect(after.value - before.value).toBeCloseTo(0.3, 12);
		expect(after.standardUncertainty).toBeCloseTo(Math.hypot(before.standardUncertainty, 0.2), 12);
	});
	it('two fillings of one jug are off alike: their errors add', () => {
		const { recipe } = routeOf({ water: jug, stockFactors: [50] }, 'stockWeighed');
		const { parts, value, standardUncertainty } = contentOf(recipe);
		const lines = parts.filter(({ kind }) => kind === 'line').map((p) => p.standardUncertainty);
		expect(lines).toHaveLength(2);
		expect(lines[0]! / value).toBeCloseTo(0.02 / Math.sqrt(3), 4);
		const others = parts.filter(({ kind }) => kind !== 'line').map((p) => p.standardUncertainty);
		expect(standardUncertainty).toBeCloseTo(Math.hypot(lines[0]! + lines[1]!, ...others), 12);
	});
	it('salt water is denser: weighed to the same mass there is less of it, and it holds more', () => {
		const { recipe } = routeOf({ waterHolds: noWater }, 'direct');
		const salted = contentOf({ ...recipe, matrix: 'sodiumChloride' }).value;
		// 1.0224 over 0.9982 g/mL.
		expect(salted / contentOf(recipe).value).toBeCloseTo(1.0242, 3);
	});
	it.each([
		[[{ portion: 0 }], 'portion of stage 1 must be between 0.0001 and 100000; found 0'],
		[[{}, { total: Number.NaN }], 'total of stage 2 must be between 0.0001 and 100000; found NaN']
	])('a wrong amount is named (%#)', (found, message) => {
		const { recipe } = routeOf({}, 'stockWeighed');
		expect(() => contentOf(recipe, found)).toThrow(new RangeError(message));
	});
});

const noWater = { value: 0, standardUncertainty: 0 };
const anyGrams = fc.double({ min: 0.05, max: 40, noNaN: true });
const anyInput = fc.record({
	substance: fc.constantFrom('sodiumBicarbonate', 'driedSodiumCarbonate'),
	target: fc.double({ min: 2, max: 15, noNaN: true }),
	unit: fc.constant('dKH'),
	matrix: fc.constantFrom('purified', 'sodiumChloride'),
	volumeMl: fc.integer({ min: 200, max: 5000 }),
	scale: fc.constantFrom(0.1, 0.01, 0.001).map((division) => scaleOf(division)),
	water: fc.constantFrom(jug, { by: 'scale', scale: scaleOf(1, { capacityG: 10_000 }) }),
	syringeCapacityMl: fc.constantFrom(1, 5, 10, 20)
}) as fc.Arbitrary<RecipeInput>;

describe('for any recipe', () => {
	it('content grows with the mass of powder in proportion', () => {
		fc.assert(
			fc.property(anyGrams, fc.double({ min: 0.2, max: 5, noNaN: true }), (grams, factor) => {
				const { recipe } = routeOf({ water: jug, waterHolds: noWater }, 'direct');
				const one = contentOf(recipe, [{ portion: grams }]).value;
				const other = contentOf(recipe, [{ portion: factor * grams }]).value;
				expect(other / one).toBeCloseTo(factor, 9);
			})
		);
	});
	it('the unit does not matter: same amounts, same relative uncertainty', () => {
		fc.assert(
			fc.property(anyInput, fc.constantFrom(...unitsOf('alkalinity')), (input, unit) => {
				const there = referenceRecipes({
					...input,
					unit,
					target: convertValue(input.target, 'dKH', unit)
				});
				const here = referenceRecipes(input);
				expect(there.map(({ recipe }) => recipe.stages)).toEqual(
					here.map(({ recipe }) => recipe.stages)
				);
				here.forEach(({ content }, i) => {
					const other = there[i]!.content;
					expect(convertValue(other.value, unit, 'dKH')).toBeCloseTo(content.value, 9);
					expect(other.relativeStandardUncertainty).toBeCloseTo(
						content.relativeStandardUncertainty,
						12
					);
				});
			}),
			{ numRuns: 40 }
		);
	});
	it('ways are ranked by uncertainty, each way once, and each holds the target to a division', () => {
		fc.assert(
			fc.property(anyInput, (input) => {
				const ranked = referenceRecipes(input);
				const relative = ranked.map(({ content }) => content.relativeStandardUncertainty);
				expect(relative).toEqual([...relative].sort((a, b) => a - b));
				expect(new Set(ranked.map(({ recipe }) => recipe.route)).size).toBe(ranked.length);
				for (const { recipe, content } of ranked) {
					const grams = recipe.stages[0]!.portion.amount;
					const perDivision = (content.value / grams) * input.scale.divisionG;
					expect(Math.abs(content.value - input.target)).toBeLessThan(0.51 * perDivision);
				}
			}),
			{ numRuns: 60 }
		);
	});
	it('a finer scale never makes it less certain', () => {
		fc.assert(
			fc.property(anyInput, (input) => {
				const { capacityG } = scaleOf(0.1);
				const with_ = (divisionG: number) =>
					referenceRecipes({ ...input, scale: scaleOf(divisionG, { capacityG }) });
				const [coarse, middle, fine] = [0.1, 0.01, 0.001].map(with_);
				for (const [worse, better] of [
					[coarse, middle],
					[middle, fine]
				] as const)
					for (const { recipe, content } of worse!) {
						const same = contentOf({
							...recipe,
							stages: recipe.stages.map((stage) => ({
								...stage,
								portion:
									measuredIn(stage.portion.measure) === 'g'
										? { ...stage.portion, measure: better![0]!.recipe.stages[0]!.portion.measure }
										: stage.portion
							}))
						});
						expect(same.standardUncertainty).toBeLessThan(content.standardUncertainty);
					}
				expect(middle![0]!.content.relativeStandardUncertainty).toBeLessThan(
					coarse![0]!.content.relativeStandardUncertainty
				);
			}),
			{ numRuns: 40 }
		);
	});
});

describe('drawn ten thousand times, the content scatters as claimed', () => {
	it.each(['direct', 'stockWeighed', 'stockSyringe', 'twoDilutions'] as const)('%s', (route) => {
		const { recipe, content } = routeOf({ water: jug, scale: scaleOf(0.1) }, route);
		if (route === 'direct') {
			// 0.2 g on a scale of 0.1 g: far from linear, and no solution to be made.
			expect(content.relativeStandardUncertainty).toBeGreaterThan(0.5);
			return;
		}
		const uniform = randomUniform(20);
		const normal = randomNormal(uniform);
		const even = (halfWidth: number) => (2 * uniform() - 1) * halfWidth;
		const weigh = (amount: number, division: number) => {
			const reading = () => even(division / 2) + even(2 * division) + division * normal();
			return amount + reading() - reading();
		};
		const values = Array.from({ length: 10_000 }, () => {
			const ofJug = 1 + even(0.02);
			let share = 1 + even(0.005);
			recipe.stages.forEach(({ portion, total }) => {
				share *=
					portion.measure.by === 'scale'
						? weigh(portion.amount, 0.1) / portion.amount
						: // Triangular over 4 %, ISO 7886-1 for 10 mL at half and more.
							1 + (even(0.02) + even(0.02));
				share /= ofJug;
				expect(total.measure).toEqual(jug);
			});
			return share;
		});
		const mean = values.reduce((sum, each) => sum + each, 0) / values.length;
		const sd = Math.sqrt(
			values.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (values.length - 1)
		);
		// Of ten thousand draws a standard deviation is known to 0.7 %, and the law is linear where
		// these errors of up to 4 % are not quite.
		expect(Math.abs(sd / content.relativeStandardUncertainty - 1)).toBeLessThan(0.03);
	});
});

describe('which way is proposed', () => {
	it('0.24 g on a scale of 0.01 g is hopeless; through a stock it is known to a hundredth', () => {
		const ranked = referenceRecipes(ordinary);
		expect(ranked.at(-1)?.recipe.route).toBe('direct');
		expect(ranked.at(-1)?.fitness).toBe('unfit');
		const proposed = recommendedRecipe(ranked);
		expect(proposed?.recipe.route).toBe('stockWeighed');
		expect(proposed?.fitness).toBe('fine');
		expect(2 * (proposed?.content.relativeStandardUncertainty ?? 1)).toBeLessThan(0.011);
	});
	it('a scale of 1 g makes nothing of use, one of 0.1 g does by two dilutions', () => {
		const kitchen = referenceRecipes({ ...ordinary, scale: scaleOf(1) });
		expect(kitchen.length).toBeGreaterThan(0);
		expect(kitchen.every(({ fitness }) => fitness === 'unfit')).toBe(true);
		const tenth = recommendedRecipe(referenceRecipes({ ...ordinary, scale: scaleOf(0.1) }));
		expect(tenth?.recipe.route).toBe('twoDilutions');
		expect(tenth?.fitness).toBe('fine');
	});
	it('with a jug for the water a scale of 0.001 g had better weigh the powder at once', () => {
		const proposed = recommendedRecipe(
			referenceRecipes({ ...ordinary, water: jug, scale: scaleOf(0.001) })
		);
		expect(proposed?.recipe.route).toBe('direct');
		expect(proposed?.fitness).toBe('coarse');
	});
	it('a way of more steps has to be clearly better', () => {
		const ranked = referenceRecipes({ ...ordinary, scale: scaleOf(0.001), water: kitchenScale });
		const few = ranked.find(({ recipe }) => recipe.stages.length === 1)!;
		const many = ranked.find(({ recipe }) => recipe.stages.length === 2)!;
		const relative = (by: number) => ({
			...many,
			content: {
				...many.content,
				relativeStandardUncertainty: few.content.relativeStandardUncertainty / by
			}
		});
		expect(recommendedRecipe([relative(1.24), few])).toBe(few);
		expect(recommendedRecipe([relative(1.26), few])?.recipe.stages).toHaveLength(2);
		expect(recommendedRecipe([])).toBeNull();
	});
	it.each([
		[{ target: 0 }, /target must be above what the water itself holds/],
		[{ volumeMl: 10 }, /volumeMl must be between 50 and 20000; found 10/],
		[{ stockFactors: [1] }, /stockFactors must be between 2 and 1000; found 1/],
		[{ scale: scaleOf(0.01), substance: 'salt' as never }, /substance must be one of/]
	])('bad input is named (%#)', (wrong, message) => {
		expect(() => referenceRecipes({ ...ordinary, ...wrong })).toThrow(message);
		expect(() => referenceRecipes({ ...ordinary, ...wrong })).toThrow(RangeError);
	});
	it('a scale of no sense is named', () => {
		expect(() => scaleOf(0)).toThrow(
			new RangeError('divisionG must be between 0.0001 and 10; found 0')
		);
		expect(() => scaleOf(0.01, { repeatabilityG: -1 })).toThrow(/repeatabilityG/);
	});
	it('more powder than dissolves in cold water is asked of nobody', () => {
		const strong = referenceRecipes({ ...ordinary, target: 40 });
		expect(strong.length).toBeGreaterThan(1);
		for (const { recipe } of strong)
			expect(recipe.stages[0]!.portion.amount).toBeLessThanOrEqual(60);
		expect(referenceRecipes({ ...ordinary, target: 1e5 })).toEqual([]);
	});
});

describe('what the water itself holds', () => {
	it('distilled: at most 0.04 dKH; a membrane alone: anything up to 0.6; salt: up to 0.12 either way', () => {
		expect(unmeasuredWater('deionised', 'purified', 'dKH').value).toBeCloseTo(0.02, 12);
		expect(unmeasuredWater('unsure', 'purified', 'dKH')).toEqual({
			value: 0.3,
			standardUncertainty: 0.6 / Math.sqrt(12)
		});
		const salted = unmeasuredWater('deionised', 'sodiumChloride', 'meq/L');
		expect(convertValue(salted.standardUncertainty, 'meq/L', 'dKH')).toBeCloseTo(
			Math.hypot(0.04, 0.24) / Math.sqrt(12),
			12
		);
	});
	it('by a blank: between nothing and the reading with its ±', () => {
		expect(waterByBlank(0.1, 0.3)).toEqual({
			value: 0.2,
			standardUncertainty: 0.4 / Math.sqrt(12)
		});
		expect(() => waterByBlank(-1, 0.3)).toThrow('reading must be 0 or above; found -1');
		expect(() => waterByBlank(0, 0)).toThrow('expandedUncertainty must be above 0; found 0');
	});
});
