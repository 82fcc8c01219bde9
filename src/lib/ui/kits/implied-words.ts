import {
	checkLeaflet,
	plausibleRange,
	suggestionsFor,
	unitName,
	unitOf,
	unitsLikely,
	type Kit,
	type KitDraft,
	type LeafletCheck,
	type LeafletRemark
} from '$lib/kits';
import { kitSoFar } from './kit-so-far';
import { worthText } from './kit-words';

/** Something that follows from the blanks, said in the margin. */
export type Implied = { tone: 'say' | 'warn'; words: string };
/** The part of the leaflet beside which it is said. */
export type ImpliedPlace = LeafletRemark['about'];

const say = (words: string): Implied => ({ tone: 'say', words });

/** What a drop, a line of the scale and a filling are worth. */
function worthWords(kit: Kit, { worth }: LeafletCheck): Implied[] {
	const { name, decimals } = unitOf(kit.unit, kit.analyte);
	const [normal, ...finer] = worth;
	if (!normal) return [];
	const words = [say(`A drop is worth about ${worthText(normal.dropValue)} ${name}.`)];
	if (normal.graduationValue !== null)
		words.push(
			say(`A line of the scale is worth about ${worthText(normal.graduationValue)} ${name}.`)
		);
	// Of one that reaches less far the remarks speak.
	const { high } = plausibleRange(kit.unit, kit.analyte);
	if (normal.fillingValue !== null && normal.fillingValue >= high)
		words.push(say(`One filling shows up to ${normal.fillingValue.toFixed(decimals)} ${name}.`));
	for (const fine of finer)
		words.push(say(`${fine.name}: a drop is worth about ${worthText(fine.dropValue)} ${name}.`));
	return words;
}

/** The titrant that the conversion implies; where it is odd, the remarks say so. */
function strengthWords(kit: Kit, { strengthMolPerL, remarks }: LeafletCheck): Implied[] {
	if (remarks.some(({ id }) => id === 'strength')) return [];
	const source = kit.conversion.kind === 'rows' ? 'The table' : 'It';
	return [say(`${source} implies an acid of about ${worthText(strengthMolPerL)} mol/L.`)];
}

/** Where the strength is odd, perhaps the leaflet's values are in another unit. */
function otherUnit(kit: Kit, { worth: [normal], remarks }: LeafletCheck): Implied[] {
	if (!normal || !remarks.some(({ id }) => id === 'strength')) return [];
	const isFilling = normal.fillingValue !== null;
	const middle = normal.fillingValue === null ? 12 * normal.dropValue : normal.fillingValue / 2;
	const [likely] = unitsLikely(Number(middle.toPrecision(3)), kit.unit, kit.analyte);
	if (!likely) return [];
	const name = unitName(kit.unit, kit.analyte);
	return [
		{
			tone: 'warn',
			words: `${isFilling ? 'Half a filling' : 'A dozen drops'} would be ${worthText(middle)} ${name}. ${likely.sentence}`
		}
	];
}

/** What an empty blank of the titrant is taken for, and why. */
function takenWords(draft: KitDraft): Implied[] {
	const drop = draft.dropMl.trim() === '' ? suggestionsFor(draft).dropMl : undefined;
	return drop ? [say(`A drop is taken for ${drop.text} mL. ${drop.why}`)] : [];
}

/** What follows from the blanks so far, by the part beside which it is said. */
export function impliedBy(draft: KitDraft): Record<ImpliedPlace, Implied[]> {
	const implied = { delivery: takenWords(draft), conversion: [], accuracy: [] } as Record<
		ImpliedPlace,
		Implied[]
	>;
	const kit = kitSoFar(draft);
	if (!kit) return implied;
	const check = checkLeaflet(kit);
	implied.conversion.push(...worthWords(kit, check), ...strengthWords(kit, check));
	for (const { about, tone, text } of check.remarks) implied[about].push({ tone, words: text });
	implied.conversion.push(...otherUnit(kit, check));
	return implied;
}
