import {
	checkLeaflet,
	plausibleRange,
	suggestionsFor,
	titrantOf,
	typedNumber,
	unitName,
	unitOf,
	unitsLikely,
	unitsOfLeaflet,
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
	const { withArticle } = titrantOf[kit.analyte];
	return [say(`${source} implies ${withArticle} of about ${worthText(strengthMolPerL)} mol/L.`)];
}

/** The highest value of the table as far as it can be read, whatever else is empty or wrong. */
function highestRow({ kind, rows }: KitDraft): number | null {
	if (kind !== 'rows') return null;
	const values = rows.flatMap(({ value }) => {
		const typed = typedNumber(value, 'it', { low: 0, high: 1e6, why: '' });
		return 'value' in typed ? [typed.value] : [];
	});
	return values.length < 2 ? null : Math.max(...values);
}

/** A leaflet that goes far beyond tanks, or not as far as they do, may have its values in another unit. */
function otherUnit(draft: KitDraft, kit: Kit | null, check: LeafletCheck | null): Implied[] {
	const { unit, analyte } = draft;
	const { decimals, name } = unitOf(unit, analyte);
	const row = highestRow(draft);
	const filling = kit?.delivery.by === 'syringe' ? check?.worth[0]?.fillingValue : null;
	const isHigh = row !== null && row > plausibleRange(unit, analyte).high;
	const highest = isHigh ? row : (filling ?? null);
	if (highest === null) return [];
	const [likely, other] = unitsOfLeaflet(highest, unit, analyte);
	if (!likely) return [];
	const also = other ? `, in ${other.name} ${other.value.toFixed(decimals)}` : '';
	return [
		{
			tone: 'warn',
			words: `${isHigh ? 'The table goes' : 'One filling would go'} up to ${worthText(highest)} ${name}. In ${likely.name} that would be ${likely.value.toFixed(decimals)} ${name}${also}. Look which unit the leaflet names.`
		}
	];
}

/** Without a table or a scale: a dozen drops of an odd strength. */
function otherUnitOfDrops(kit: Kit, { worth: [normal], remarks }: LeafletCheck): Implied[] {
	if (!normal || normal.fillingValue !== null) return [];
	if (!remarks.some(({ id }) => id === 'strength')) return [];
	const dozen = 12 * normal.dropValue;
	const [likely] = unitsLikely(Number(dozen.toPrecision(3)), kit.unit, kit.analyte);
	if (!likely) return [];
	const name = unitName(kit.unit, kit.analyte);
	return [
		{
			tone: 'warn',
			words: `A dozen drops would be ${worthText(dozen)} ${name}. ${likely.sentence}`
		}
	];
}

/** A claim so coarse that it was hardly made in this unit. */
function accuracyUnit({ statedAccuracy, unit, analyte }: Kit): Implied[] {
	const { low } = plausibleRange(unit, analyte);
	if (statedAccuracy === undefined || statedAccuracy <= low / 2) return [];
	// A leaflet claims between a fortieth and a quarter of the lowest value; this project's choice.
	const usual = { low: low / 40, high: low / 4 };
	const [likely] = unitsLikely(statedAccuracy, unit, analyte, usual);
	return likely ? [{ tone: 'warn', words: `That is coarse for a kit. ${likely.sentence}` }] : [];
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
	const check = kit && checkLeaflet(kit);
	if (kit && check) {
		implied.conversion.push(...worthWords(kit, check), ...strengthWords(kit, check));
		for (const { about, tone, text } of check.remarks) implied[about].push({ tone, words: text });
		implied.accuracy.push(...accuracyUnit(kit));
	}
	const inTable = otherUnit(draft, kit, check);
	implied.conversion.push(...inTable);
	if (kit && check && inTable.length === 0)
		implied.conversion.push(...otherUnitOfDrops(kit, check));
	return implied;
}
