import {
	analyteName,
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
