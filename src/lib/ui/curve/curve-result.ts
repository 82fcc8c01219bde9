import {
	alkalinityOfProbeTitration,
	ASSUMED_SHARES,
	type GranEndPoint,
	type ProbeAlkalinity,
	type ProbeAlkalinityOptions,
	type ProbePoint
} from '$lib/chemistry';
import { convertValue, type Unit } from '$lib/kits';
import { studentTQuantile } from '$lib/metrology';
import type { Evidence } from '$lib/observation';
import type { CurveInput } from './curve-input';

/** A value and its ±, which about 19 times in 20 holds the true one, in the unit asked for. */
export type Said = { value: number; expandedUncertainty: number };
export type PartOfDoubt = 'acid' | 'sample' | 'delivery' | 'readings';

export type CurveResult = {
	found: ProbeAlkalinity;
	unit: Unit;
	/** To go by; null where the readings bear no value. */
	value: (Said & { by: 'fit' | 'gran' }) | null;
	fit: Said | null;
	gran: Said | null;
	correctedGran: Said | null;
	/** What makes up most of the ± of the value, and its share of the variance. */
	mostOf: { part: PartOfDoubt; share: number } | null;
};

/** Factor from a standard uncertainty to one that holds about 19 times in 20. */
export function coverage(degreesOfFreedom: number): number {
	return studentTQuantile(0.975, Math.max(1, degreesOfFreedom));
}

/** A line's degrees of freedom stand for its scatter alone: the rest of its ± is known otherwise. */
function ofGran(gran: GranEndPoint): number {
	const scatter = gran.endVolumeStandardUncertaintyMl / gran.endVolumeMl;
	const whole = gran.alkalinityStandardUncertaintyMolPerKg / gran.alkalinityMolPerKg;
	return scatter > 0 ? gran.degreesOfFreedom * (whole / scatter) ** 4 : Infinity;
}

function mostOf(found: ProbeAlkalinity, options: ProbeAlkalinityOptions): CurveResult['mostOf'] {
	const { value } = found;
	if (!value) return null;
	const whole = value.standardUncertaintyMolPerKg / value.alkalinityMolPerKg;
	const acid = options.acidStandardUncertaintyMolPerL;
	const shares = {
		acid: acid === undefined ? ASSUMED_SHARES.acid : acid / options.acidMolPerL,
		sample: options.sampleRelativeStandardUncertainty ?? ASSUMED_SHARES.sample,
		delivery: options.deliveryRelativeStandardUncertainty ?? ASSUMED_SHARES.delivery
	};
	const known = Object.entries(shares).map(([part, each]) => ({
		part: part as PartOfDoubt,
		share: (each / whole) ** 2
	}));
	const rest = 1 - known.reduce((sum, { share }) => sum + share, 0);
	const all = [...known, { part: 'readings' as const, share: Math.max(0, rest) }];
	return all.reduce((most, each) => (each.share > most.share ? each : most));
}

/** What readings of a pH probe say. @throws RangeError as `alkalinityOfProbeTitration` */
export function curveResult(
	points: readonly ProbePoint[],
	options: ProbeAlkalinityOptions,
	unit: Unit
): CurveResult {
	const found = alkalinityOfProbeTitration(points, options);
	const said = (dkh: number, standardDkh: number, degreesOfFreedom: number): Said => ({
		value: convertValue(dkh, 'dKH', unit),
		expandedUncertainty: convertValue(standardDkh * coverage(degreesOfFreedom), 'dKH', unit)
	});
	const ofLine = (gran: GranEndPoint | null) =>
		gran && said(gran.alkalinityDkh, gran.alkalinityStandardUncertaintyDkh, ofGran(gran));
	const { value, fit } = found;
	const isUnusable = found.flags.some(({ weight }) => weight === 'unusable');
	return {
		found,
		unit,
		value:
			value && !isUnusable && value.alkalinityDkh > 0
				? {
						by: value.by,
						...said(
							value.alkalinityDkh,
							value.standardUncertaintyDkh,
							value.effectiveDegreesOfFreedom
						)
					}
				: null,
		fit:
			fit?.isConverged && !isUnusable
				? said(
						fit.alkalinityDkh,
						fit.alkalinityStandardUncertaintyDkh,
						fit.effectiveDegreesOfFreedom
					)
				: null,
		gran: ofLine(found.gran),
		correctedGran: ofLine(found.correctedGran),
		mostOf: mostOf(found, options)
	};
}

/** Its name where methods are listed; readings of one probe share its faults. */
export const PROBE = 'pH probe';

/**
 * A result as evidence in a check: a second method on the tank's water, or that method's reading of a
 * known solution. Null where there is no value, or nobody said what the solution holds.
 *
 * @param id of the reading, new in the check
 */
export function evidenceOfCurve(
	result: CurveResult,
	{ water, known }: Pick<CurveInput, 'water' | 'known'>,
	id: string
): Evidence | null {
	const { value, unit } = result;
	if (!value) return null;
	const reading = {
		id,
		label: water === 'tank' ? PROBE : `Known solution, by ${PROBE}`,
		value: value.value,
		expandedUncertainty: value.expandedUncertainty,
		unit
	};
	if (water === 'tank')
		return {
			kind: 'secondMethod',
			reading,
			method: 'probe',
			instrument: PROBE,
			coverageFactor: 2,
			reports: 'total'
		};
	return (
		known && {
			kind: 'reference',
			reading,
			nominal: known.value,
			nominalExpandedUncertainty: known.expandedUncertainty,
			matrix: water,
			instrument: PROBE
		}
	);
}
