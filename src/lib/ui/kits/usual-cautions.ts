import { houseSyringeKit, type Analyte } from '$lib/kits';

const stains = 'The indicator stains skin and cloth.';
const apart =
	'Keep all of it from children and animals. Never pour a tested sample back into the tank.';
const base =
	'The base is strong alkali: wear eye protection, keep it off skin. Rinse an eye at once with running water for 15 minutes and get help.';
const buffer =
	'The buffer gives off ammonia: work where air moves, do not breathe over the bottle, keep it off eyes and skin.';
const adult = 'The base is for adults, or with an adult beside.';

/** Cautions that hold for most kits of an analyte, offered so that nobody has to type them. */
export const usualCautions: Readonly<Record<Analyte, readonly string[]>> = {
	alkalinity: houseSyringeKit.hazards,
	calcium: [base, adult, stains, apart],
	hardness: [buffer, stains, apart],
	magnesium: [base, adult, buffer, stains, apart]
};

/** All of them, to tell them from an owner's own words. */
export const allUsualCautions: ReadonlySet<string> = new Set(Object.values(usualCautions).flat());
