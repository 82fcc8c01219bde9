import {
	recommendedRecipe,
	referenceRecipes,
	type Content,
	type MadeAnalyte,
	type RecipeFitness
} from '$lib/judgement';
import type { Unit } from '$lib/kits';
import { BlanksRead, chosenOf, type Blanks } from './blanks';
import { scales, waterWays } from './owned';
import { inputOf, unitOfBlanks, type Instead } from './solution-input';

const coarseness: Record<RecipeFitness, number> = { fine: 0, coarse: 1, unfit: 2 };

/**
 * What would make the solution known well enough for a check, or better than it is: the least change
 * of what is at hand. Null where nothing is needed, or would help.
 */
export function betterWith(
	blanks: Blanks,
	preferred: Unit,
	analyte: MadeAnalyte = 'alkalinity'
): { words: string; content: Content } | null {
	const unit = unitOfBlanks(blanks, preferred, analyte);
	const bestWith = (instead: Instead) => {
		const input = inputOf(new BlanksRead(blanks), unit, analyte, instead);
		return input && recommendedRecipe(referenceRecipes(input));
	};
	const now = coarseness[bestWith({})?.fitness ?? 'unfit'];
	const helps = changesOf(blanks).flatMap(({ words, instead }) => {
		const best = bestWith(instead);
		return best && coarseness[best.fitness] < now ? [{ words, best }] : [];
	});
	const chosen = helps.find(({ best }) => best.fitness === 'fine') ?? helps[0];
	return chosen ? { words: chosen.words, content: chosen.best.content } : null;
}

/** Changes of what is at hand, the least first. */
function changesOf(blanks: Blanks): { instead: Instead; words: string }[] {
	const isWeighed = chosenOf(blanks, 'waterWay', waterWays) === 'kitchen';
	const isFine = ['hundredth', 'thousandth'].includes(chosenOf(blanks, 'scale', scales));
	const water: Instead = { water: 'kitchen' };
	const scale: Instead = { scale: 'hundredth' };
	return [
		...(isWeighed ? [] : [{ instead: water, words: 'Weigh the water on a kitchen scale:' }]),
		...(isFine ? [] : [{ instead: scale, words: 'With a pocket scale to 0.01 g' }]),
		...(isWeighed || isFine
			? []
			: [
					{
						instead: { ...water, ...scale },
						words: 'With a pocket scale to 0.01 g, and the water weighed on a kitchen scale,'
					}
				])
	];
}
