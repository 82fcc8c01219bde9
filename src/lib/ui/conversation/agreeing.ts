import { convertValue, type Analyte, type Unit } from '$lib/kits';
import type { Evidence } from '$lib/observation';

/** A value with its ±, in one unit. */
type Told = { value: number; expandedUncertainty: number };

/** Whether two values differ by no more than their ± together (E_n of at most 1). Source: ISO 13528:2022, 9.7. */
const agree = (one: Told, other: Told): boolean =>
	Math.abs(one.value - other.value) <=
	Math.hypot(one.expandedUncertainty, other.expandedUncertainty) + 1e-9;

/**
 * Places of the pieces that agree within the ± of both: other readings of today's water with the one in
 * question, known solutions with what they are said to hold. What reads another thing, or another day, is
 * not among them.
 */
export function agreeingPlaces(
	evidence: readonly Evidence[],
	unit: Unit,
	analyte: Analyte
): ReadonlySet<number> {
	const told = (value: number, expandedUncertainty: number, from: Unit): Told => ({
		value: convertValue(value, from, unit, analyte),
		expandedUncertainty: convertValue(expandedUncertainty, from, unit, analyte)
	});
	const first = evidence.find((each) => each.kind === 'test' && each.from === 'first');
	return new Set(
		evidence.flatMap((each, at) => {
			if (!('reading' in each) || each === first) return [];
			const { value, expandedUncertainty, unit: own } = each.reading;
			const read = told(value, expandedUncertainty, own);
			const other =
				each.kind === 'reference'
					? told(each.nominal, each.nominalExpandedUncertainty, own)
					: (each.kind === 'test' || each.kind === 'secondMethod') && first && 'reading' in first
						? told(first.reading.value, first.reading.expandedUncertainty, first.reading.unit)
						: null;
			return other && agree(read, other) ? [at] : [];
		})
	);
}
