import { requireWithin } from '../../chemistry';
import { unitOf } from '../../kits';
import type { Content, Recipe, RecipeRoute } from './recipe';
import { candidates, type RecipeInput } from './recipe-candidates';
import { contentOf } from './recipe-content';
import { canBeMade, withPowder } from './recipe-powder';
import { substanceOf } from './recipe-substance';
import { unmeasuredWater } from './recipe-water';

export type { RecipeInput } from './recipe-candidates';

export type RankedRecipe = { recipe: Recipe; content: Content; fitness: RecipeFitness };
export type RecipeFitness = 'fine' | 'coarse' | 'unfit';

/**
 * What a solution is good for, by its expanded uncertainty: 'fine' up to 2.5 % (half of what a single
 * drop test claims of itself), 'coarse' up to 5 % (shows gross faults only), beyond it 'unfit'
 * (judgement).
 */
export function fitnessOf({ relativeStandardUncertainty }: Content): RecipeFitness {
	const share = 2 * relativeStandardUncertainty;
	if (share <= 0.025) return 'fine';
	return share <= 0.05 ? 'coarse' : 'unfit';
}

/**
 * Ways of making a solution, the least uncertain first: the powder weighed straight into it, or
 * through a stock of which a portion is weighed or taken by syringe, or diluted twice. Of each way
 * the best strength of the stock. A way that needs more powder than dissolves, or less than a
 * division of the scale, or more than a scale takes, is left out; none may be left.
 *
 * @throws RangeError naming the field, its range and what was found
 */
export function referenceRecipes(input: RecipeInput): RankedRecipe[] {
	const { analyte } = substanceOf(input.substance);
	unitOf(input.unit, analyte);
	requireWithin('volumeMl', input.volumeMl, 50, 20_000);
	requireWithin('stockVolumeMl', input.stockVolumeMl ?? 1000, 50, 20_000);
	const holds = input.waterHolds ?? unmeasuredWater('deionised', input.matrix, input.unit, analyte);
	if (!(input.target > holds.value && Number.isFinite(input.target)))
		throw new RangeError(
			`target must be above what the water itself holds, ${holds.value}; found ${input.target}`
		);
	const best = new Map<RecipeRoute, RankedRecipe>();
	for (const { route, stages } of candidates(input)) {
		const recipe = withPowder({
			route,
			stages,
			substance: input.substance,
			purity: input.purity ?? substanceOf(input.substance).purity,
			matrix: input.matrix,
			waterHolds: holds,
			unit: input.unit,
			target: input.target,
			temperatureC: input.temperatureC ?? 20
		});
		if (!recipe || !canBeMade(recipe)) continue;
		const content = contentOf(recipe);
		const known = best.get(route);
		if (!known || isFiner(content, known.content))
			best.set(route, { recipe, content, fitness: fitnessOf(content) });
	}
	return [...best.values()].sort(
		(a, b) => a.content.relativeStandardUncertainty - b.content.relativeStandardUncertainty
	);
}

/** By more than rounding: a stock of one mass and a portion of another may be the same the other way round. */
function isFiner(a: Content, b: Content): boolean {
	return a.relativeStandardUncertainty < b.relativeStandardUncertainty * (1 - 1e-9);
}

/**
 * The recipe to propose: among those that are at most a quarter more uncertain than the best, the
 * one with the fewest weighings (judgement); null when there is none.
 */
export function recommendedRecipe(ranked: readonly RankedRecipe[]): RankedRecipe | null {
	const [best] = ranked;
	if (!best) return null;
	const limit = 1.25 * best.content.relativeStandardUncertainty;
	const near = ranked.filter(({ content }) => content.relativeStandardUncertainty <= limit);
	const fewest = Math.min(...near.map(({ recipe }) => recipe.stages.length));
	return near.find(({ recipe }) => recipe.stages.length === fewest) ?? best;
}
