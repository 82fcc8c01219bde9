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

/** Both ends of an interval, with the same digits. */
export function endsOf({ low, high }: Interval): [low: string, high: string] {
	const half = (high - low) / 2;
	return [trimmed(low, half), trimmed(high, half)];
}

/** Decimals of a number for somebody who works it out again: three digits of its standard error. */
export function fineDecimals(standardError: number): number {
	if (!(standardError > 0)) return 4;
	return Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(standardError))));
}

/** Decimals of values as typed: two of them do not differ by less than this step. */
export const decimalsOfStep = (step: number): number =>
	Math.min(4, Math.max(0, Math.round(-Math.log10(step))));
