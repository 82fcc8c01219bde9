import type { Content, Recipe } from './recipe';
import { weighingUncertaintyG } from './recipe-measure';
import { mistakenFor, substanceOf } from './recipe-substance';
import { percent, powderTraps, waterTraps } from './recipe-traps-of';

/** When in the work a trap lies in wait. */
export type TrapMoment = 'powder' | 'water' | 'weighing' | 'dissolving' | 'keeping';

/** Something that makes a known solution unknown. */
export type RecipeTrap = {
	id: string;
	when: TrapMoment;
	/** For the person, one or two sentences. */
	words: string;
	/** By which share the solution then holds more or less, from and to; null where nobody can say. */
	share: { low: number; high: number } | null;
};

/** Half of the uncertainty from the powder alone, or more than a twentieth: the scale is too coarse for it. */
function weighingTraps(recipe: Recipe): RecipeTrap[] {
	const powder = recipe.stages[0]?.portion;
	if (powder?.measure.by !== 'scale') return [];
	const share = (2 * weighingUncertaintyG(powder.measure.scale)) / powder.amount;
	if (share <= 0.05) return [];
	return [
		{
			id: 'coarseScale',
			when: 'weighing',
			words: `Your scale cannot weigh so little: what it shows may be off by ${percent(share)} of this.`,
			share: { low: -share, high: share }
		}
	];
}

/** What can go wrong with a recipe, in the order of the work. */
export function trapsOf(recipe: Recipe): RecipeTrap[] {
	return [
		...powderTraps[recipe.substance],
		...waterTraps(recipe),
		...weighingTraps(recipe),
		{
			id: 'undissolved',
			when: 'dissolving',
			words: `Rinse the weighing cup into the bottle, and go on when nothing lies on the bottom any more.${substanceOf(recipe.substance).dissolvesAs === 'bicarbonate' ? ' Do not heat it: hot bicarbonate loses carbon dioxide and the end of the test moves.' : ''}`,
			share: null
		},
		{
			id: 'evaporation',
			when: 'keeping',
			words:
				'Water that evaporates makes it stronger. Keep it full and closed, write its weight on the label: grams that are missing later are water. The air does not change what it holds.',
			share: null
		}
	];
}

/** Days for which a solution keeps in a full, closed bottle, cool and dark (judgement). */
export const KEEPS_DAYS = { solution: 30, stock: 180 };

/** What the solution would hold, were the powder not what it is taken for, in the content's unit. */
export type MistakenContent = { id: string; low: number; high: number };

/** From which readings a wrong powder can be told. */
export function mistakenContents(recipe: Recipe, content: Content): MistakenContent[] {
	const own = recipe.waterHolds.value;
	return Object.entries(mistakenFor[recipe.substance]).map(([id, { low, high }]) => ({
		id,
		low: own + (content.value - own) * (1 + low),
		high: own + (content.value - own) * (1 + high)
	}));
}
