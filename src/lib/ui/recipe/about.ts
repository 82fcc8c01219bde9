import type { MadeAnalyte } from '$lib/judgement';

/** What differs on the page with what a solution is made of. */
export type About = {
	/** For a choice: 'calcium'. */
	name: string;
	/** What it takes, for the opening of the page. */
	takes: string;
	/** In the customary unit: what an empty target is taken for, and between which values blanks lie. */
	usualTarget: number;
	target: Range;
	waterAlone: Range;
	waterAlonePlusMinus: Range;
	/** What salt in the water changes. */
	salt: string;
	/** Why a kit does not read what the solution holds, in purified water and with salt. */
	turns: { late: string; early: string };
	/** For which kits that is true where the chemistry is not worked out for the very kit; null where it is. */
	holdsFor: string | null;
	/** What may look otherwise than with water from the tank; null where nothing does. */
	looks: string | null;
	/** Why nothing is added to water from the tank; null where that says something. */
	noAddition: string | null;
};
type Range = readonly [low: number, high: number];

const SALT_HELPS =
	'With salt the colour turns as in water from the tank. Without, a little early; that is reckoned with.';
const TURNS = { late: 'the colour turns a little late', early: 'the colour turns a little early' };
const ORDINARY_EDTA =
	'Worked out for an ordinary kit with EDTA of its kind. How kits differ in that is in the ±.';

/** In dKH, in mg/L, and in mmol/L. Calcium and both metals: as the sea at salinity 35 holds, rounded. */
export const abouts: Record<MadeAnalyte, About> = {
	alkalinity: {
		name: 'alkalinity',
		takes: 'baking soda and pure water',
		usualTarget: 8,
		target: [1, 30],
		waterAlone: [0, 5],
		waterAlonePlusMinus: [0.05, 3],
		salt: SALT_HELPS,
		turns: TURNS,
		holdsFor: null,
		looks: null,
		noAddition: null
	},
	calcium: {
		name: 'calcium',
		takes: 'calcium chloride dihydrate and pure water',
		usualTarget: 415,
		target: [50, 1500],
		waterAlone: [0, 200],
		waterAlonePlusMinus: [1, 100],
		salt: 'For calcium salt makes hardly a difference.',
		turns: {
			late: 'no magnesium falls out that would take a little calcium along',
			early: TURNS.early
		},
		holdsFor: ORDINARY_EDTA,
		looks:
			'It holds no magnesium: after the base it stays clear, where water from the tank turns cloudy, and the last colours may look a little otherwise.',
		noAddition:
			'This way is for alkalinity. A calcium kit’s scale ends soon above what a tank holds: there is no room for a rise that would stand out from the scatter of two tests and the ± of this powder.'
	},
	hardness: {
		name: 'calcium and magnesium together',
		takes: 'Epsom salt and pure water',
		usualTarget: 64,
		target: [5, 200],
		waterAlone: [0, 20],
		waterAlonePlusMinus: [0.1, 15],
		salt: SALT_HELPS,
		turns: TURNS,
		holdsFor: ORDINARY_EDTA,
		looks:
			'It holds magnesium alone, of which the kit reads as much as of both together. Without salt it may cloud after the buffer, which clears as you titrate; give each drop its time near the end.',
		noAddition:
			'This way is for alkalinity. A rise that stands out from what a tank holds takes two fillings of the syringe and more, with what each of them brings: the solution above says as much with less.'
	}
};

/** Names for a choice. */
export const aboutNames = Object.fromEntries(
	Object.entries(abouts).map(([analyte, { name }]) => [analyte, name])
) as Record<MadeAnalyte, string>;
