import { decimalsFor, numberText, type Unit } from '$lib/kits';
import type { UsedPart } from '../recipe/used-part';
import { putSaid, saidAt } from './forms/draft-store';
import type { Blanks } from './forms/form';
import type { FormId } from './forms/forms';

/** A value and its ± go into blanks no finer than they are shown: to the digits that the ± allows. */
function written(value: number, expandedUncertainty: number, unit: Unit): [string, string] {
	const decimals = decimalsFor(unit, expandedUncertainty);
	const text = (each: number) => numberText(Number(each.toFixed(decimals)));
	return [text(value), text(expandedUncertainty)];
}

/** What was made on the page of known solutions, as a sentence that lacks the kit's reading. */
export function sentenceOf({ part, unit, reading }: UsedPart): { form: FormId; blanks: Blanks } {
	if (part.kind === 'reference') {
		const [nominal, nominalU] = written(part.nominal, part.nominalExpandedUncertainty, unit);
		const { matrix, solution } = part;
		return {
			form: 'reference',
			blanks: { unit, nominal, nominalU, matrix, ...(solution ? { solution } : {}) }
		};
	}
	if (part.kind === 'addition') {
		const [added, addedU] = written(part.added, part.addedExpandedUncertainty, unit);
		return { form: 'addition', blanks: { unit, added, addedU } };
	}
	const { matrix } = part;
	if (!reading) return { form: 'blank', blanks: { unit, matrix } };
	const [value, u] = written(reading.value, reading.expandedUncertainty, unit);
	return { form: 'blank', blanks: { unit, matrix, value, u } };
}

/** Opens a sentence in a check before anybody is there: it stands filled in when the check is opened. */
export function tellLater(checkId: string, used: UsedPart): void {
	const { form, blanks } = sentenceOf(used);
	putSaid(checkId, {
		open: `known ${form}`,
		blanks: { ...saidAt(checkId).blanks, [form]: { ...blanks } }
	});
}
