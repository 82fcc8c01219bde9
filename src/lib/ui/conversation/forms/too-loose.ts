import { BlankReader } from './blank-reader';
import type { Blanks, FormContext } from './form';

/**
 * From such a share of an amount on, its ± leaves it as good as unknown: a quarter of it is one standard
 * deviation then, and a bottle or a syringe that is off is off by a tenth. Judgement.
 */
export const SAYS_NOTHING_FROM = 0.5;

/** The blanks of a known amount and of its ±, and what it is the amount of. */
type AmountBlanks = { amount: string; plusMinus: string; it: string };

/** Whether an amount is typed in with a ± that leaves it as good as unknown. */
export function isTooLoose(
	blanks: Blanks,
	context: FormContext,
	{ amount, plusMinus }: AmountBlanks
): boolean {
	const reader = new BlankReader(blanks, context);
	if (reader.text(plusMinus) === '') return false;
	const [size, sure] = [reader.content(amount, 'the amount'), reader.content(plusMinus, 'its ±')];
	return reader.isSound && sure > SAYS_NOTHING_FROM * size;
}

/** What is asked at the ± of such an amount: it may be told all the same, and weighs little. */
export function tooLoose(
	blanks: Blanks,
	context: FormContext,
	fields: AmountBlanks
): Record<string, string> {
	if (!isTooLoose(blanks, context, fields)) return {};
	const reader = new BlankReader(blanks, context);
	const said = `${reader.text(fields.amount)}\u00a0±\u00a0${reader.text(fields.plusMinus)}`;
	return {
		[fields.plusMinus]: `With ${said} nobody knows how much it is: ${fields.it} can say next to nothing. If it is that wide, press once more.`
	};
}
