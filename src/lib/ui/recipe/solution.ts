import {
	contentOf,
	expectedReadingOf,
	fitnessOf,
	measuredIn,
	recommendedRecipe,
	referenceRecipes,
	unmeasuredWater,
	waterByBlank,
	waterEffectOf,
	type Content,
	type ExpectedReading,
	type FoundAmounts,
	type RankedRecipe,
	type Recipe,
	type RecipeFitness,
	type RecipeInput
} from '$lib/judgement';
import { convertValue, unitOf, type TypedRange, type Unit } from '$lib/kits';
import { plain } from '../charts/numbers';
import { BlanksRead, chosenOf, type Blanks } from './blanks';
import { amountText } from './numbers';
import {
	matrices,
	powders,
	ownScale,
	scales,
	syringeCapacityMl,
	syringes,
	waterMeasureOf,
	waters,
	waterWays,
	type ScaleName,
	type WaterWay
} from './owned';

/** A known solution, as far as the page tells it. */
export type Solution = {
	unit: Unit;
	/** All ways there are with what is at hand, the least uncertain first. */
	ranked: readonly RankedRecipe[];
	/** The way taken: the one proposed unless another was chosen. */
	recipe: Recipe | null;
	proposed: Recipe | null;
	/** What it holds by what was really measured; null while a blank makes no sense. */
	content: Content | null;
	fitness: RecipeFitness | null;
	expected: ExpectedReading | null;
	/** What the kit read on the water alone; null where nobody tested it. */
	blank: { value: number; expandedUncertainty: number } | null;
	/** Amounts that were typed, of those there are. */
	weighed: number;
	found: FoundAmounts;
	problems: Readonly<Record<string, string>>;
};

/** What an empty target is taken for: 8 dKH, in the unit at hand. */
export const usualTarget = (unit: Unit) => {
	const { decimals } = unitOf(unit);
	return plain(convertValue(8, 'dKH', unit), decimals);
};
export const USUAL_LITRES = '1';

/** The name of a blank for what was really measured. */
export function foundName(recipe: Recipe, stage: number, part: 'portion' | 'total'): string {
	const measured = recipe.stages[stage]?.[part];
	const unit = measured ? measuredIn(measured.measure) : '';
	return `found.${recipe.route}.${stage}.${part}.${unit}`;
}

/** The unit of everything typed: that of the first letter, else what is preferred. */
export function unitOfBlanks(blanks: Blanks, preferred: Unit): Unit {
	const kept = blanks['unit'];
	return (
		(['dKH', 'meq/L', 'ppm CaCO3', 'mmol/L'] as const).find((unit) => unit === kept) ?? preferred
	);
}

/** Another scale or way to measure water, to see what it would give. */
export type Instead = { scale?: ScaleName; water?: WaterWay };

/** A range given in dKH, in another unit of alkalinity. */
export function rangeIn(unit: Unit, lowDkh: number, highDkh: number): TypedRange {
	const { decimals, name } = unitOf(unit);
	const [low, high] = [lowDkh, highDkh].map((dkh) => convertValue(dkh, 'dKH', unit)) as [
		number,
		number
	];
	return {
		low,
		high,
		why: `In ${name} from ${plain(low, Math.max(1, decimals))} to ${plain(high, decimals)}`
	};
}

/** What the kit read on the water alone, if that was done; null after a problem too. */
function blankIn(read: BlanksRead, unit: Unit): Solution['blank'] {
	if (read.choice('water', waters) !== 'blank') return null;
	const value = read.number('blankReading', 'what the water alone read', rangeIn(unit, 0, 5));
	const expandedUncertainty = read.number('blankPlusMinus', 'its ±', rangeIn(unit, 0.05, 3));
	return value === null || expandedUncertainty === null ? null : { value, expandedUncertainty };
}

function inputOf(read: BlanksRead, unit: Unit, instead: Instead): RecipeInput | null {
	const between = (low: number, high: number) => rangeIn(unit, low, high);
	const target = read.number('target', 'what it shall hold', between(1, 30), usualTarget(unit));
	const litres = read.number(
		'litres',
		'how much you want',
		{ low: 0.2, high: 4, why: 'From 0.2 to 4 L' },
		USUAL_LITRES
	);
	const water = read.choice('water', waters);
	const matrix = read.choice('matrix', matrices);
	const blank = blankIn(read, unit);
	const holds =
		water === 'blank'
			? blank && waterByBlank(blank.value, blank.expandedUncertainty)
			: unmeasuredWater(water, matrix, unit);
	if (target === null || litres === null || holds === null) return null;
	if (target <= 2 * holds.value) {
		read.problems['target'] = 'The water alone holds half of that or more: take purer water.';
		return null;
	}
	const syringe = syringeCapacityMl(read.choice('syringe', syringes));
	return {
		substance: read.choice('powder', powders),
		target,
		unit,
		matrix,
		volumeMl: 1000 * litres,
		scale: ownScale(instead.scale ?? read.choice('scale', scales)),
		water: waterMeasureOf(instead.water ?? read.choice('waterWay', waterWays)),
		waterHolds: holds,
		...(syringe === null ? {} : { syringeCapacityMl: syringe })
	};
}

function foundIn(read: BlanksRead, recipe: Recipe): FoundAmounts | null {
	let isSound = true;
	const found = recipe.stages.map((stage, i) => {
		const taken: { portion?: number; total?: number } = {};
		for (const part of ['portion', 'total'] as const) {
			const planned = stage[part];
			const value = read.optional(foundName(recipe, i, part), 'what it really was', {
				low: planned.amount / 3,
				high: planned.amount * 3,
				why: `Planned were ${amountText(planned)}; take a third to three times that`
			});
			if (value === null) isSound = false;
			else if (value !== undefined) taken[part] = value;
		}
		return taken;
	});
	return isSound ? found : null;
}

const effects = new Map<string, ReturnType<typeof waterEffectOf>>();

/**
 * The effect of the water, worked out once for every half dKH: it takes a phone as long as a letter
 * takes to type, and changes by a hundredth from one dKH to the next.
 */
function effectOf(recipe: Recipe, { value, unit }: Content) {
	const half = convertValue(0.5, 'dKH', unit);
	const near = half * Math.max(1, Math.round(value / half));
	const key = [recipe.matrix, recipe.substance, recipe.temperatureC, near, unit].join(' ');
	const known = effects.get(key) ?? waterEffectOf(recipe, { value: near, unit });
	effects.set(key, known);
	return known;
}

/** Everything about the solution that follows from what is typed and chosen. */
export function solutionOf(blanks: Blanks, preferred: Unit): Solution {
	const unit = unitOfBlanks(blanks, preferred);
	const read = new BlanksRead(blanks);
	const input = inputOf(read, unit, {});
	const ranked = input ? referenceRecipes(input) : [];
	const proposed = recommendedRecipe(ranked)?.recipe ?? null;
	const recipe = ranked.find((each) => each.recipe.route === blanks['route'])?.recipe ?? proposed;
	const found = recipe && foundIn(read, recipe);
	const content = recipe && found && contentOf(recipe, found);
	return {
		unit,
		ranked,
		recipe,
		proposed,
		content,
		fitness: content && fitnessOf(content),
		expected: recipe && content && expectedReadingOf(content, effectOf(recipe, content)),
		blank: blankIn(new BlanksRead(blanks), unit),
		weighed: (found ?? []).reduce((sum, stage) => sum + Object.keys(stage).length, 0),
		found: found ?? [],
		problems: read.problems
	};
}

/** What would make the solution fit for a check: the least change of what is at hand; null if nothing is needed. */
export function betterWith(
	blanks: Blanks,
	preferred: Unit
): { words: string; content: Content } | null {
	const unit = unitOfBlanks(blanks, preferred);
	const isWeighed = chosenOf(blanks, 'waterWay', waterWays) === 'kitchen';
	const isFine = ['hundredth', 'thousandth'].includes(chosenOf(blanks, 'scale', scales));
	const ways: { instead: Instead; words: string }[] = [
		...(isWeighed
			? []
			: [{ instead: { water: 'kitchen' } as const, words: 'Weigh the water on a kitchen scale' }]),
		...(isFine
			? []
			: [{ instead: { scale: 'hundredth' } as const, words: 'With a pocket scale to 0.01 g' }]),
		{
			instead: { water: 'kitchen', scale: 'hundredth' },
			words: 'With a pocket scale to 0.01 g for the powder and the water weighed on a kitchen scale'
		}
	];
	for (const { instead, words } of ways) {
		const input = inputOf(new BlanksRead(blanks), unit, instead);
		const best = input && recommendedRecipe(referenceRecipes(input));
		if (best?.fitness === 'fine') return { words, content: best.content };
	}
	return null;
}
