import { mistakenFor, substanceOf, type MadeAnalyte, type SubstanceId } from './recipe-substance';
import type { Recipe } from './recipe';
import type { RecipeTrap } from './recipe-traps';

export const percent = (share: number) => `${Math.round(100 * Math.abs(share))} %`;

const { partlyCarbonated } = mistakenFor.sodiumBicarbonate;
const { monohydrate, decahydrate, stillBicarbonate } = mistakenFor.driedSodiumCarbonate;
const { anhydrousCalcium, hexahydrateCalcium, drewWater } = mistakenFor.calciumChlorideDihydrate;
const { driedEpsom, lostWater } = mistakenFor.magnesiumSulfateHeptahydrate;
const { anhydrousMagnesium } = mistakenFor.magnesiumChlorideHexahydrate;

const powder = (id: string, words: string, share: RecipeTrap['share'] = null): RecipeTrap => ({
	id,
	when: 'powder',
	words,
	share
});

/** Calcium and sulfate at the strength of a stock are far beyond the solubility of gypsum, about 15 mmol/L (textbook). */
const onePowder = powder(
	'onePowder',
	'One powder in a bottle: calcium chloride and Epsom salt in one stock make gypsum, which falls out.'
);

/** What can be wrong with a powder, by what it is to be. */
export const powderTraps: Record<SubstanceId, readonly RecipeTrap[]> = {
	sodiumBicarbonate: [
		powder(
			'bakingPowder',
			'Baking powder is not baking soda: it holds acid and starch as well. The packet must name sodium bicarbonate (sodium hydrogen carbonate) and nothing else.'
		),
		powder(
			'partlyCarbonated',
			`Soda that was heated, or stood open for long, has turned partly into carbonate and makes the solution stronger, by up to ${percent(partlyCarbonated.high)}. Take a fresh packet.`,
			partlyCarbonated
		)
	],
	driedSodiumCarbonate: [
		powder(
			'decahydrate',
			`Washing soda in crystals is mostly water: the solution would hold ${percent(decahydrate.low)} less. It must be dried first.`,
			decahydrate
		),
		powder(
			'monohydrate',
			`Washing soda in powder has often taken up water: up to ${percent(monohydrate.low)} less. Dry it for two hours at 150 °C or hotter, and let it cool under a lid.`,
			monohydrate
		),
		powder(
			'stillBicarbonate',
			`Carbonate made from baking soda in the oven: soda that has not turned yet makes the solution weaker, by up to ${percent(stillBicarbonate.low)}. Heat it at 200 °C until the weight stays the same.`,
			stillBicarbonate
		)
	],
	calciumChlorideDihydrate: [
		powder(
			'anhydrousCalcium',
			`The label must say dihydrate, or CaCl₂·2H₂O. Calcium chloride without water (anhydrous) would make it ${percent(anhydrousCalcium.high)} stronger.`,
			anhydrousCalcium
		),
		powder(
			'hexahydrateCalcium',
			`Crystals with six waters (hexahydrate) would make it ${percent(hexahydrateCalcium.low)} weaker.`,
			hexahydrateCalcium
		),
		powder(
			'drewWater',
			`It draws water from the air. What clumps, is damp or has run is weaker, by up to ${percent(drewWater.low)}: take a fresh, dry jar, weigh quickly, and close it at once.`,
			drewWater
		),
		onePowder
	],
	magnesiumSulfateHeptahydrate: [
		powder(
			'driedEpsom',
			`The label must say heptahydrate, or MgSO₄·7H₂O, with no scent and no colour. Dried Epsom salt, with one water left, would make it ${percent(driedEpsom.high)} stronger.`,
			driedEpsom
		),
		powder(
			'lostWater',
			`Clear crystals only: a white crust has lost water and makes the solution stronger, by up to ${percent(lostWater.high)}. What clumps is damp, and weaker.`,
			lostWater
		),
		onePowder
	],
	magnesiumChlorideHexahydrate: [
		powder(
			'anhydrousMagnesium',
			`The label must say hexahydrate, or MgCl₂·6H₂O. Without water it would make the solution ${percent(anhydrousMagnesium.high)} stronger, and grow hot.`,
			anhydrousMagnesium
		),
		powder(
			'wetMagnesium',
			'It draws water from the air. What clumps, is damp or has run is weaker: take a fresh, dry jar, weigh quickly, and close it at once.'
		)
	]
};

/** What water and salt may bring of what is to be known. */
type OfWater = { impure: string; tap: string; salt: string };
const ofMetals: OfWater = {
	impure: 'calcium and magnesium',
	tap: 'hard water holds calcium and magnesium, and they count as well.',
	salt: 'What is put in against clumping is often a salt of calcium or magnesium.'
};
const ofWater: Record<MadeAnalyte, OfWater> = {
	alkalinity: {
		impure: 'alkalinity',
		tap: 'what they hold counts as well, and with much calcium it falls out as chalk.',
		salt: 'Iodine and powders against clumping can bring alkalinity.'
	},
	calcium: ofMetals,
	hardness: ofMetals
};

/** What can be wrong with the water, and with the salt in it. */
export function waterTraps({ substance, matrix, waterHolds, target }: Recipe): RecipeTrap[] {
	const { impure, tap, salt } = ofWater[substanceOf(substance).analyte];
	const most = waterHolds.value + 2 * waterHolds.standardUncertainty;
	const water = (id: string, words: string, share: RecipeTrap['share'] = null): RecipeTrap => ({
		id,
		when: 'water',
		words,
		share
	});
	return [
		water(
			'impureWater',
			`Water that is not pure brings ${impure} of its own. Test the water alone with your kit as well: that is your blank.`,
			{ low: 0, high: most / target }
		),
		...(matrix === 'sodiumChloride'
			? [
					water(
						'notPlainSalt',
						`Salt without additives only, no sea salt and no salt for the tank. ${salt} Test the salt water alone as well.`
					)
				]
			: []),
		water(
			'calciumWater',
			`Never make it in tap water, mineral water or water from the tank: ${tap}`
		)
	];
}
