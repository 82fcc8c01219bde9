import { decimalsFor } from '$lib/kits';
import type { Interval } from '$lib/metrology';
import { plain, signed } from '../charts/numbers';

/** Digits that a ± allows; of any unit alike. */
const digitsFor = (plusMinus: number) => decimalsFor('dKH', plusMinus);
const trimmed = (value: number, plusMinus: number, write = plain) =>
	write(value, digitsFor(plusMinus));

/** A number and its ± with the digits that the ± allows. */
export const figureOf = (value: number, plusMinus: number) => ({
	value: trimmed(value, plusMinus),
	plusMinus: trimmed(plusMinus, plusMinus)
});
export const withPlusMinus = (value: number, plusMinus: number): string =>
	`${trimmed(value, plusMinus)}\u00a0±\u00a0${trimmed(plusMinus, plusMinus)}`;
export const signedBy = (value: number, plusMinus: number): string =>
	trimmed(value, plusMinus, signed);

/** More digits than these say nothing of a kit. */
const MOST_DIGITS = 4;

/**
 * Both ends of an interval, with the same digits: as many as its width allows, and more where an end that is
 * not 0 would be written as 0, so that what is clear does not look as if it may be nothing.
 */
export function endsOf({ low, high }: Interval): [low: string, high: string] {
	const looksLikeNone = (end: number, digits: number) =>
		end !== 0 && Number(end.toFixed(digits)) === 0;
	let digits = digitsFor((high - low) / 2);
	while (digits < MOST_DIGITS && [low, high].some((end) => looksLikeNone(end, digits))) digits += 1;
	return [plain(low, digits), plain(high, digits)];
}

/** Decimals of a number for somebody who works it out again: three digits of its standard error. */
export function fineDecimals(standardError: number): number {
	if (!(standardError > 0)) return 4;
	return Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(standardError))));
}

/** Decimals of values as typed: two of them do not differ by less than this step. */
export const decimalsOfStep = (step: number): number =>
	Math.min(4, Math.max(0, Math.round(-Math.log10(step))));
