import { convertValue, decimalsFor, unitName, type Analyte, type Unit } from '$lib/kits';
import { plain, signed } from '../../charts/numbers';

/** How values of one test are written: in one unit, with as many decimals as its ± allows. */
export type Shown = {
	unit: Unit;
	/** As it stands on the page. */
	unitName: string;
	decimals: number;
	/** A value given in the kit's unit, or a difference without sign. */
	value(inKitUnit: number): string;
	/** A difference, with its sign. */
	change(inKitUnit: number): string;
	/** '7.4 ± 0.4' */
	both(inKitUnit: number, expandedUncertainty: number): string;
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
	const decimals = decimalsFor(
		unit,
		expandedUncertainty === undefined ? undefined : convert(expandedUncertainty),
		analyte
	);
	const value = (inKitUnit: number) => plain(convert(inKitUnit), decimals);
	return {
		unit,
		unitName: unitName(unit, analyte),
		decimals,
		value,
		change: (inKitUnit) => signed(convert(inKitUnit), decimals),
		both: (inKitUnit, expanded) => `${value(inKitUnit)} ± ${value(expanded)}`
	};
}
