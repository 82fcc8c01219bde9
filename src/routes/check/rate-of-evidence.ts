import type { Diagnosis } from '$lib/judgement';
import { convertValue, type Analyte, type Unit } from '$lib/kits';
import { meanRate } from '$lib/metrology';
import type { Evidence } from '$lib/observation';

/**
 * Change per day from the readings before to what the water holds now, with its expanded
 * uncertainty, in a unit; null without a reading from another day. Each reading counts with all of
 * its ±, though part of it may be shared: a change is called real rather too late than too soon.
 */
export function rateOfEvidence(
	evidence: readonly Evidence[],
	{ trueValue, unit: from }: Pick<Diagnosis, 'trueValue' | 'unit'>,
	unit: Unit,
	analyte: Analyte
): { perDay: number; expandedUncertainty: number } | null {
	const points = evidence.flatMap((each) => {
		if (each.kind !== 'earlier') return [];
		const { value, expandedUncertainty, unit: own } = each.reading;
		return [
			{
				day: -each.daysAgo,
				value: convertValue(value, own, unit, analyte),
				standardUncertainty: convertValue(expandedUncertainty / 2, own, unit, analyte)
			}
		];
	});
	const now = {
		day: 0,
		value: convertValue(trueValue.mean, from, unit, analyte),
		standardUncertainty: convertValue(trueValue.standardDeviation, from, unit, analyte)
	};
	const rate = meanRate([...points, now]);
	return rate && { perDay: rate.perDay, expandedUncertainty: rate.expandedUncertainty };
}
