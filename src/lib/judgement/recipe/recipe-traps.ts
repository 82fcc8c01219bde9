import type { Content, Recipe } from './recipe';
import { weighingUncertaintyG } from './recipe-measure';
import { mistakenFor } from './recipe-substance';

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

const percent = (share: number) => `${Math.round(100 * Math.abs(share))} %`;

function powderTraps({ substance }: Recipe): RecipeTrap[] {
	if (substance === 'sodiumBicarbonate') {
		const { partlyCarbonated } = mistakenFor.sodiumBicarbonate;
		return [
			{
				id: 'bakingPowder',
				when: 'powder',
				words:
					'Baking powder is not baking soda: it holds acid and starch as well. The packet must name sodium bicarbonate (sodium hydrogen carbonate) and nothing else.',
				share: null
			},
			{
				id: 'partlyCarbonated',
				when: 'powder',
				words: `Soda that was heated, or stood open for long, has turned partly into carbonate and makes the solution stronger, by up to ${percent(partlyCarbonated.high)}. Take a fresh packet.`,
				share: partlyCarbonated
			}
		];
	}
	const { monohydrate, decahydrate, stillBicarbonate } = mistakenFor.driedSodiumCarbonate;
	return [
		{
			id: 'decahydrate',
			when: 'powder',
			words: `Washing soda in crystals is mostly water: the solution would hold ${percent(decahydrate.low)} less. It must be dried first.`,
			share: decahydrate
		},
		{
			id: 'monohydrate',
			when: 'powder',
			words: `Washing soda in powder has often taken up water: up to ${percent(monohydrate.low)} less. Dry it for two hours at 150 °C or hotter, and let it cool under a lid.`,
			share: monohydrate
		},
		{
			id: 'stillBicarbonate',
			when: 'powder',
			words: `Carbonate made from baking soda in the oven: soda that has not turned yet makes the solution weaker, by up to ${percent(stillBicarbonate.low)}. Heat it at 200 °C until the weight stays the same.`,
			share: stillBicarbonate
		}
	];
}

function waterTraps({ matrix, waterHolds, target }: Recipe): RecipeTrap[] {
	const most = waterHolds.value + 2 * waterHolds.standardUncertainty;
	const impure: RecipeTrap = {
		id: 'impureWater',
		when: 'water',
		words:
			'Water that is not pure brings alkalinity of its own. Test the water alone with your kit as well: that is your blank.',
		share: { low: 0, high: most / target }
	};
	const calcium: RecipeTrap = {
		id: 'calciumWater',
		when: 'water',
		words:
			'Never make it in tap water, mineral water or water from the tank: what they hold counts as well, and with much calcium it falls out as chalk.',
		share: null
	};
	const salt: RecipeTrap = {
		id: 'notPlainSalt',
		when: 'water',
		words:
			'Salt without additives only, no sea salt and no salt for the tank. Iodine and powders against clumping can bring alkalinity. Test the salt water alone as well.',
		share: null
	};
	return matrix === 'sodiumChloride' ? [impure, salt, calcium] : [impure, calcium];
}

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
		...powderTraps(recipe),
		...waterTraps(recipe),
		...weighingTraps(recipe),
		{
			id: 'undissolved',
			when: 'dissolving',
			words: `Rinse the weighing cup into the bottle, and go on when nothing lies on the bottom any more.${recipe.substance === 'sodiumBicarbonate' ? ' Do not heat it: hot bicarbonate loses carbon dioxide and the end of the test moves.' : ''}`,
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
