import {
	analyteName,
	beyondAnyTank,
	differenceOfAnalyte,
	plausibleRange,
	typedNumber,
	unitName,
	type Analyte
} from '$lib/kits';
import { BlankReader } from './blank-reader';
import type { Blanks, FormContext } from './form';

/** What is taken off to find an analyte; undefined where nothing is. */
export const takenOffFor = (analyte: Analyte): Analyte | undefined =>
	Object.values(differenceOfAnalyte).find(({ gives }) => gives === analyte)?.less;

/** What is asked at the blank of a value of the tank, though it can be: both of the doubts below. */
export const doubtsOfValue = (blanks: Blanks, context: FormContext): Record<string, string> => ({
	...ofNoTank(blanks, context),
	...takenForAnother(blanks, context)
});

/**
 * What is asked at the blank of a value that no tank has, and that would be usual for what is taken off:
 * the one may have been written for the other.
 */
export function takenForAnother(blanks: Blanks, context: FormContext): Record<string, string> {
	const { analyte } = context;
	const less = takenOffFor(analyte);
	if (!less) return {};
	const reader = new BlankReader(blanks, context);
	const { unit } = reader;
	const typed = typedNumber(reader.text('value'), '', { low: 0, high: 1e6, why: '' });
	if (!('value' in typed)) return {};
	const isUsualFor = (each: Analyte) => {
		const { low, high } = plausibleRange(unit, each);
		return typed.value >= low && typed.value <= high;
	};
	if (isUsualFor(analyte) || !isUsualFor(less)) return {};
	const said = `${reader.text('value')}\u00a0${unitName(unit, analyte)}`;
	return {
		value: `${said} looks like ${analyteName(less)}: ${analyteName(analyte)} is meant here. If it is that, press once more.`
	};
}

/**
 * What is asked at the blank of a value that no tank holds: a figure or a point in the wrong place is the
 * likelier account.
 */
function ofNoTank(blanks: Blanks, context: FormContext): Record<string, string> {
	const reader = new BlankReader(blanks, context);
	const { unit } = reader;
	const text = reader.text('value');
	const typed = typedNumber(text, '', { low: 0, high: 1e6, why: '' });
	if (!('value' in typed) || !beyondAnyTank(typed.value, unit, context.analyte)) return {};
	// Where the reading in question is such a number, others like it are what is asked for.
	const { first } = context;
	if (first && beyondAnyTank(first.value, first.unit, context.analyte)) return {};
	const said = `${text}\u00a0${unitName(unit, context.analyte)}`;
	return {
		value: `No tank holds ${said}. Look at its figures and its point once more; if it stands, press once more.`
	};
}
