import { convertValue, decimalsFor, roundedAs, unitName, type Analyte, type Unit } from '$lib/kits';
import { plain, signed } from '../../charts/numbers';

/**
 * How values of one test are written: in one unit, with as many decimals as its ± allows. What a ± is
 * made of, and what would change it, needs two figures of the ± itself, else all look the same.
 */
export type Shown = {
	unit: Unit;
	/** As it stands on the page. */
	unitName: string;
	decimals: number;
	/** A value given in the kit's unit, or a difference without sign. */
	value(inKitUnit: number): string;
	/** One titration of several: never coarser than the unit is customarily written. */
	single(inKitUnit: number): string;
	/** A difference, with its sign. */
	change(inKitUnit: number): string;
	/** '7.4 ± 0.4' */
	both(inKitUnit: number, expandedUncertainty: number): string;
	/**
	 * Ends of the interval, out of value and ± as they are printed: 7.5 ± 0.5 runs from 7.0 to 8.0, and
	 * 0.2 ± 0.6 from nothing to 0.8, since no water holds less than nothing.
	 */
	ends(inKitUnit: number, expandedUncertainty: number): [string, string];
	/** Decimals at which the ± of this result has two figures. */
	fineDecimals: number;
	/** A part of the ±, or another ±, without sign. */
	fine(inKitUnit: number): string;
	/** As `change`, with the decimals of `fine`. */
	fineChange(inKitUnit: number): string;
	/** Two ± as `fine`, with as many decimals as tell them apart. */
	apart(inKitUnit: number, other: number): [string, string];
};

/**
 * @param kitUnit unit of the numbers that will be handed in
 * @param unit to write them in
 * @param expandedUncertainty of the result, in the kit's unit: it sets the decimals
 */
export function shownIn(
	kitUnit: Unit,
	unit: Unit,
	expandedUncertainty: number | undefined,
	analyte: Analyte
): Shown {
	const convert = (inKitUnit: number) => convertValue(inKitUnit, kitUnit, unit, analyte);
	const expandedInUnit =
		expandedUncertainty === undefined ? undefined : convert(expandedUncertainty);
	const decimals = decimalsFor(unit, expandedInUnit, analyte);
	const fineDecimals =
		expandedUncertainty === undefined
			? decimals
			: Math.max(decimals, twoFigures(convert(expandedUncertainty)));
	const rounded = (inKitUnit: number) => roundedAs(convert(inKitUnit), expandedInUnit);
	const value = (inKitUnit: number) => plain(rounded(inKitUnit), decimals);
	const printed = (inKitUnit: number) => Number(rounded(inKitUnit).toFixed(decimals));
	return {
		unit,
		unitName: unitName(unit, analyte),
		decimals,
		value,
		single: (inKitUnit) =>
			plain(convert(inKitUnit), Math.max(decimals, decimalsFor(unit, undefined, analyte))),
		change: (inKitUnit) => signed(convert(inKitUnit), decimals),
		both: (inKitUnit, expanded) => `${value(inKitUnit)} ± ${value(expanded)}`,
		ends: (inKitUnit, expanded) => [
			plain(Math.max(0, printed(inKitUnit) - printed(expanded)), decimals),
			plain(printed(inKitUnit) + printed(expanded), decimals)
		],
		fineDecimals,
		fine: (inKitUnit) => plain(convert(inKitUnit), fineDecimals),
		fineChange: (inKitUnit) => signed(convert(inKitUnit), fineDecimals),
		apart: (inKitUnit, other) => {
			const at = (places: number): [string, string] => [
				plain(convert(inKitUnit), places),
				plain(convert(other), places)
			];
			const tells = [0, 1, 2].find((more) => new Set(at(fineDecimals + more)).size > 1) ?? 0;
			return at(fineDecimals + tells);
		}
	};
}

/** Decimals at which a number above 0 has two figures, from 0 to 4. */
function twoFigures(size: number): number {
	if (!(size > 0)) return 0;
	// Two figures first: 0.0996 is 0.10, with two decimals.
	const exponent = Number(size.toExponential(1).split('e')[1]);
	return Math.min(4, Math.max(0, 1 - exponent));
}
