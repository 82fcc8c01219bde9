import { fitAlkalinityTitration } from './fit-titration';
import type { FitOptions, TitrationFit } from './fit-options';
import { granEndPoint, GRAN_WINDOW_PH, type GranEndPoint } from './gran';
import type { KnownAlkalinity, ProbeFlag } from './probe-flag';
import { flagsOfCarbon, flagsOfKnown } from './probe-flags-chemistry';
import { flagsOfFit } from './probe-flags-fit';
import { flagsOfMeter } from './probe-flags-meter';
import type { MeterSetOn } from './probe-meter-moved';
import { flagsOfColumns, flagsOfReadings } from './probe-flags-readings';
import { requirePoints, requireTitration, sampleDensity, type ProbePoint } from './probe-titration';
import { dkhFromMolPerKg } from './units';

/** What is taken for the uncertainties that nobody stated, as shares; judgement for home ware. */
export const ASSUMED_SHARES = { acid: 0.01, sample: 0.005, delivery: 0.005 };

export type ProbeAlkalinityOptions = FitOptions & {
	/** Window of the Gran lines; 3.0 to 3.5 when left out. */
	windowPh?: { low: number; high: number };
	/** What the solution is known to be, if it is a reference; the acid's strength is judged by it. */
	known?: KnownAlkalinity;
	/** On what the meter was set the same day; it is not taken to have been set when left out. */
	meterSetOn?: MeterSetOn;
};

export type ProbeAlkalinity = {
	/** The value to go by: of the fit, or of the Gran line where no fit is possible; null where neither is. */
	value: {
		by: 'fit' | 'gran';
		alkalinityMolPerKg: number;
		alkalinityDkh: number;
		standardUncertaintyMolPerKg: number;
		standardUncertaintyDkh: number;
		/** Of that standard uncertainty; the coverage factor of an expanded one follows from it. */
		effectiveDegreesOfFreedom: number;
	} | null;
	fit: TitrationFit | null;
	/** The plain and the corrected function. */
	gran: GranEndPoint | null;
	correctedGran: GranEndPoint | null;
	flags: readonly ProbeFlag[];
	/** Relative standard uncertainties that were taken because none was stated. */
	assumed: Partial<typeof ASSUMED_SHARES>;
};

/** What bars a value first, then what moves it most. */
const weightiest: readonly ProbeFlag['id'][] = [
	'acidStrength',
	'notAsSet',
	'neverCalibrated',
	'badSlope',
	'drift'
];
function placeOf({ id, weight }: ProbeFlag): number {
	if (weight === 'unusable') return -1;
	const at = weightiest.indexOf(id);
	return at < 0 ? weightiest.length : at;
}

/** The result, or null where there are too few readings for it. */
function orNull<T>(work: () => T): T | null {
	try {
		return work();
	} catch (error) {
		// What was handed in has been checked before: what is left is a lack of readings.
		if (error instanceof RangeError) return null;
		throw error;
	}
}

/**
 * Alkalinity by pH probe, as a second method beside drops: the fit, both Gran lines, and everything
 * that speaks against them. Uncertainties of acid, sample and delivery that are left out are taken as
 * one and twice half a per cent, since none of them is ever nothing.
 *
 * @param points readings in any order; too few of them are no error but a flag
 * @param options `vessel` is 'open' when left out, unlike in the fit itself: a stirred beaker is
 * @throws RangeError naming the field that lies outside its range
 */
export function alkalinityOfProbeTitration(
	points: readonly ProbePoint[],
	options: ProbeAlkalinityOptions
): ProbeAlkalinity {
	requireTitration(options);
	requirePoints(points);
	const { known, meterSetOn, windowPh = GRAN_WINDOW_PH, ...stated } = options;
	const assumed: Partial<typeof ASSUMED_SHARES> = {
		...(stated.acidStandardUncertaintyMolPerL === undefined && { acid: ASSUMED_SHARES.acid }),
		...(stated.sampleRelativeStandardUncertainty === undefined && {
			sample: ASSUMED_SHARES.sample
		}),
		...(stated.deliveryRelativeStandardUncertainty === undefined && {
			delivery: ASSUMED_SHARES.delivery
		})
	};
	const titration: FitOptions = {
		acidStandardUncertaintyMolPerL: ASSUMED_SHARES.acid * stated.acidMolPerL,
		sampleRelativeStandardUncertainty: ASSUMED_SHARES.sample,
		deliveryRelativeStandardUncertainty: ASSUMED_SHARES.delivery,
		vessel: 'open',
		...stated
	};
	const fit = orNull(() => fitAlkalinityTitration(points, titration));
	const gran = orNull(() => granEndPoint(points, { ...titration, windowPh }));
	const correctedGran = orNull(() =>
		granEndPoint(points, { ...titration, windowPh, granFunction: 'hanssonJagner1973' })
	);
	const columns = flagsOfColumns(points);
	const value = valueOf(fit, correctedGran, sampleDensity(titration));
	const ofKnown = value ? flagsOfKnown(value, known) : [];
	return {
		value,
		fit,
		gran,
		correctedGran,
		flags:
			columns.length > 0
				? columns
				: [
						...flagsOfReadings(points, windowPh, fit?.isConverged ?? false),
						...(fit ? flagsOfFit(points, fit) : []),
						...(fit
							? flagsOfMeter(fit, {
									meterSetOn,
									isAcidKnown: known !== undefined && ofKnown.length === 0
								})
							: []),
						...(fit && (options.matrix ?? 'seawater') === 'seawater' ? flagsOfCarbon(fit) : []),
						...ofKnown
					].sort((a, b) => placeOf(a) - placeOf(b)),
		assumed
	};
}

function valueOf(
	fit: TitrationFit | null,
	gran: GranEndPoint | null,
	densityKgPerL: number
): ProbeAlkalinity['value'] {
	const inBoth = (molPerKg: number, sdMolPerKg: number) => ({
		alkalinityMolPerKg: molPerKg,
		alkalinityDkh: dkhFromMolPerKg(molPerKg, densityKgPerL),
		standardUncertaintyMolPerKg: sdMolPerKg,
		standardUncertaintyDkh: dkhFromMolPerKg(sdMolPerKg, densityKgPerL)
	});
	if (fit?.isConverged)
		return {
			by: 'fit',
			...inBoth(fit.alkalinityMolPerKg, fit.alkalinityStandardUncertaintyMolPerKg),
			effectiveDegreesOfFreedom: fit.effectiveDegreesOfFreedom
		};
	if (!gran) return null;
	const scatterShare = gran.endVolumeStandardUncertaintyMl / gran.endVolumeMl;
	const share = gran.alkalinityStandardUncertaintyMolPerKg / gran.alkalinityMolPerKg;
	return {
		by: 'gran',
		...inBoth(gran.alkalinityMolPerKg, gran.alkalinityStandardUncertaintyMolPerKg),
		effectiveDegreesOfFreedom:
			scatterShare > 0 ? gran.degreesOfFreedom * (share / scatterShare) ** 4 : Infinity
	};
}
