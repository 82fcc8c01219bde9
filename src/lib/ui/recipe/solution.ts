import {
	contentOf,
	expectedReadingOf,
	fitnessOf,
	measuredIn,
	recommendedRecipe,
	referenceRecipes,
	substanceOf,
	waterEffectOf,
	type Content,
	type ExpectedReading,
	type FoundAmounts,
	type MadeAnalyte,
	type RankedRecipe,
	type Recipe,
	type RecipeFitness
} from '$lib/judgement';
import type { DropTest } from '$lib/chemistry';
import { convertValue, type Kit, type Unit } from '$lib/kits';
import { BlanksRead, type Blanks } from './blanks';
import { kitAtEnd } from './kit-at-end';
import { amountText } from './numbers';
import { blankIn, inputOf, unitOfBlanks, type BlankRead } from './solution-input';

/** A known solution, as far as the page tells it. */
export type Solution = {
	/** What it is a solution of. */
	analyte: MadeAnalyte;
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
	blank: BlankRead | null;
	/** Amounts that were typed, of those there are. */
	weighed: number;
	found: FoundAmounts;
	problems: Readonly<Record<string, string>>;
};

/** The name of a blank for what was really measured. */
export function foundName(recipe: Recipe, stage: number, part: 'portion' | 'total'): string {
	const measured = recipe.stages[stage]?.[part];
	const unit = measured ? measuredIn(measured.measure) : '';
	return `found.${recipe.route}.${stage}.${part}.${unit}`;
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
function effectOf(recipe: Recipe, content: Content, kit: Kit | null) {
	const { dissolvesAs } = substanceOf(recipe.substance);
	// Of metals it is looked up, for an ordinary kit.
	if (dissolvesAs === null) return waterEffectOf(recipe, content);
	const test: DropTest = kit ? kitAtEnd(kit).test : {};
	const { value, unit } = content;
	const half = convertValue(0.5, 'dKH', unit);
	const near = half * Math.max(1, Math.round(value / half));
	const key = [
		...[recipe.matrix, recipe.substance, recipe.temperatureC, near, unit],
		JSON.stringify(test)
	].join(' ');
	const known = effects.get(key) ?? waterEffectOf(recipe, { value: near, unit }, test);
	effects.set(key, known);
	return known;
}

/**
 * Everything about the solution that follows from what is typed and chosen.
 *
 * @param kit that will read it; an ordinary one where nobody says
 */
export function solutionOf(
	blanks: Blanks,
	preferred: Unit,
	kit: Kit | null = null,
	analyte: MadeAnalyte = 'alkalinity'
): Solution {
	const unit = unitOfBlanks(blanks, preferred, analyte);
	const read = new BlanksRead(blanks);
	const input = inputOf(read, unit, analyte);
	const ranked = input ? referenceRecipes(input) : [];
	const proposed = recommendedRecipe(ranked)?.recipe ?? null;
	const recipe = ranked.find((each) => each.recipe.route === blanks['route'])?.recipe ?? proposed;
	const found = recipe && foundIn(read, recipe);
	const content = recipe && found && contentOf(recipe, found);
	return {
		analyte,
		unit,
		ranked,
		recipe,
		proposed,
		content,
		fitness: content && fitnessOf(content),
		expected: recipe && content && expectedReadingOf(content, effectOf(recipe, content, kit)),
		blank: blankIn(new BlanksRead(blanks), unit, analyte),
		weighed: (found ?? []).reduce((sum, stage) => sum + Object.keys(stage).length, 0),
		found: found ?? [],
		problems: read.problems
	};
}
