import type { Unit } from '$lib/kits';
import { convertValue, decimalsFor } from '$lib/kits/units';
import type { TestSummary } from '$lib/observation';
import { plain } from '../charts/numbers';

/** A reading as figures on the page, in the unit that was chosen: both with the same decimals. */
export type Shown = { value: string; band: string };

/** A reading in a unit: numbers. */
export function inUnit(
	{ value, unit, expandedUncertainty }: Pick<TestSummary, 'value' | 'unit' | 'expandedUncertainty'>,
	shown: Unit
): { value: number; expandedUncertainty: number } {
	return {
		value: convertValue(value, unit, shown),
		expandedUncertainty: convertValue(expandedUncertainty, unit, shown)
	};
}

/** A reading in a unit: figures, as many as its ± bears. */
export function shownIn(
	summary: Pick<TestSummary, 'value' | 'unit' | 'expandedUncertainty'>,
	unit: Unit
): Shown {
	const { value, expandedUncertainty } = inUnit(summary, unit);
	const decimals = decimalsFor(unit, expandedUncertainty);
	return { value: plain(value, decimals), band: plain(expandedUncertainty, decimals) };
}
