import { numberText } from '$lib/kits';
import type { UsedPart } from '../recipe/used-part';
import { putSaid, saidAt } from './forms/draft-store';
import type { Blanks } from './forms/form';
import type { FormId } from './forms/forms';

/** So many digits of a value go into a blank: more than any ± of a solution allows. */
const written = (value: number) => numberText(Number(value.toPrecision(4)));

/** What was made on the page of known solutions, as a sentence that lacks the kit's reading. */
export function sentenceOf({ part, unit, reading }: UsedPart): { form: FormId; blanks: Blanks } {
	if (part.kind === 'reference')
		return {
			form: 'reference',
			blanks: {
				unit,
				nominal: written(part.nominal),
				nominalU: written(part.nominalExpandedUncertainty),
				matrix: part.matrix,
				...(part.solution ? { solution: part.solution } : {})
			}
		};
	if (part.kind === 'addition')
		return {
			form: 'addition',
			blanks: {
				unit,
				added: written(part.added),
				addedU: written(part.addedExpandedUncertainty)
			}
		};
	return {
		form: 'blank',
		blanks: {
			unit,
			matrix: part.matrix,
			...(reading ? { value: written(reading.value), u: written(reading.expandedUncertainty) } : {})
		}
	};
}

/** Opens a sentence in a check before anybody is there: it stands filled in when the check is opened. */
export function tellLater(checkId: string, used: UsedPart): void {
	const { form, blanks } = sentenceOf(used);
	putSaid(checkId, {
		open: `known ${form}`,
		blanks: { ...saidAt(checkId).blanks, [form]: { ...blanks } }
	});
}
