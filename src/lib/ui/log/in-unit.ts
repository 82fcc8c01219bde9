import type { Analyte, Unit } from '$lib/kits';
import { convertValue, decimalsFor, roundedAs } from '$lib/kits/units';
import type { TestSummary } from '$lib/observation';
import { plain } from '../charts/numbers';

/** A reading as figures on the page, in the unit that was chosen: both with the same decimals. */
export type Shown = { value: string; band: string };

/** A reading in a unit: numbers. */
export function inUnit(
	{ value, unit, expandedUncertainty }: Pick<TestSummary, 'value' | 'unit' | 'expandedUncertainty'>,
	shown: Unit,
	analyte: Analyte
): { value: number; expandedUncertainty: number } {
	return {
		value: convertValue(value, unit, shown, analyte),
		expandedUncertainty: convertValue(expandedUncertainty, unit, shown, analyte)
	};
}

/** A reading in a unit: figures, as many as its ± bears. */
export function shownIn(
	summary: Pick<TestSummary, 'value' | 'unit' | 'expandedUncertainty'>,
	unit: Unit,
	analyte: Analyte
): Shown {
	const { value, expandedUncertainty } = inUnit(summary, unit, analyte);
	const decimals = decimalsFor(unit, expandedUncertainty, analyte);
	const write = (amount: number) => plain(roundedAs(amount, expandedUncertainty), decimals);
	return { value: write(value), band: write(expandedUncertainty) };
}
