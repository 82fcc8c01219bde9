import {
	impliedTitrantStrength,
	suggestionsFor,
	unitName,
	unitOf,
	worthOf,
	type Kit,
	type KitDraft
} from '$lib/kits';
import { kitSoFar } from './kit-so-far';
import { worthText } from './kit-words';

/** Something that follows from the blanks, said in the margin. */
export type Implied = { tone: 'say' | 'warn'; words: string };
/** The part of the leaflet beside which it is said. */
export type ImpliedPlace = 'sample' | 'delivery' | 'conversion';

const say = (words: string): Implied => ({ tone: 'say', words });

/** What a drop, a line of the scale and a filling are worth. */
function worthWords(kit: Kit): Implied[] {
	const unit = unitName(kit.unit, kit.analyte);
	const [normal, ...finer] = worthOf(kit);
	if (!normal) return [];
	const words = [say(`A drop is worth about ${worthText(normal.dropValue)} ${unit}.`)];
	if (normal.graduationValue !== null)
		words.push(
			say(`A line of the scale is worth about ${worthText(normal.graduationValue)} ${unit}.`)
		);
	if (normal.fillingValue !== null) {
		const { decimals } = unitOf(kit.unit, kit.analyte);
		words.push(say(`One filling shows up to ${normal.fillingValue.toFixed(decimals)} ${unit}.`));
	}
	for (const fine of finer)
		words.push(say(`${fine.name}: a drop is worth about ${worthText(fine.dropValue)} ${unit}.`));
	return words;
}

/** What an empty blank of the titrant is taken for, and why. */
function takenWords(draft: KitDraft): Implied[] {
	const drop = draft.dropMl.trim() === '' ? suggestionsFor(draft).dropMl : undefined;
	return drop ? [say(`A drop is taken for ${drop.text} mL. ${drop.why}`)] : [];
}

/** What follows from the blanks so far, by the part beside which it is said. */
export function impliedBy(draft: KitDraft): Partial<Record<ImpliedPlace, Implied[]>> {
	const kit = kitSoFar(draft);
	const delivery = takenWords(draft);
	if (!kit) return { delivery };
	const source = kit.conversion.kind === 'rows' ? 'The table' : 'It';
	const strength = worthText(impliedTitrantStrength(kit));
	return {
		delivery,
		conversion: [...worthWords(kit), say(`${source} implies an acid of about ${strength} mol/L.`)]
	};
}
