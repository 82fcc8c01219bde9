import type { LeftOverCause } from './fit-left-over';
import type { ProbePoint, ProbeTitration } from './probe-titration';

export type FitOptions = ProbeTitration & {
	/**
	 * 'closed' (when left out): no CO2 left the sample; all readings are used. 'open': some left, nobody
	 * knows how much at which point; only readings up to `openBelowPh` are used, where little of what
	 * is still there is bicarbonate, and the carbon found is what was left there.
	 */
	vessel?: 'closed' | 'open';
	/** Highest reading used of an open vessel, pH as the meter shows it; 4.0 when left out. */
	openBelowPh?: number;
	/**
	 * Whether the electrode's slope is found from the readings ('fit') or taken for ideal within its
	 * standard uncertainty ('ideal'). 'auto' (when left out) finds it where at least 15 readings that
	 * may be used reach from 6.5 or above to 3.5 or below.
	 */
	slope?: 'auto' | 'fit' | 'ideal';
	/** Standard uncertainty of a slope that is taken for ideal; 0.01 when left out (judgement). */
	slopeStandardUncertainty?: number;
	/** Random standard uncertainty of each added volume, mL; 0.2 % of the largest when left out (judgement). */
	addedStandardUncertaintyMl?: number;
};

export const fitParameterNames = ['alkalinity', 'dic', 'offset', 'slope'] as const;
export type FitParameterName = (typeof fitParameterNames)[number];

export type FittedPoint = ProbePoint & {
	/** Its place in the list that was handed in, from 0. */
	index: number;
	fittedPh: number;
	residualPh: number;
	/**
	 * Residual over its standard deviation as the other points tell it (externally studentised);
	 * null for a point that the fit did not use.
	 */
	studentizedResidual: number | null;
	isUsed: boolean;
};

export type TitrationFit = {
	vessel: 'closed' | 'open';
	alkalinityMolPerKg: number;
	/** At the sample's density. */
	alkalinityDkh: number;
	/** Everything together: scatter, acid, sample, delivery, slope and carbon where they were not found. */
	alkalinityStandardUncertaintyMolPerKg: number;
	alkalinityStandardUncertaintyDkh: number;
	/** The part of it that comes from the scatter of the readings, with `degreesOfFreedom`. */
	alkalinityScatterMolPerKg: number;
	/** Inorganic carbon of the sample as far as it was still there; below 0 only by chance. */
	dicMolPerKg: number;
	dicStandardUncertaintyMolPerKg: number;
	/** Meter's reading less pH on the free scale, at pH 4. It takes up whatever scale the buffers stand on. */
	offsetPh: number;
	offsetStandardUncertaintyPh: number;
	/** The same against the total scale, in the undiluted sample. */
	offsetTotalPh: number;
	/** Electrode's slope over the ideal one. */
	slope: number;
	slopeStandardUncertainty: number;
	/** Whether the readings alone tell the slope. */
	isSlopeFitted: boolean;
	/** Correlations of the fit, in the order of `fitParameterNames`. */
	correlation: readonly (readonly number[])[];
	/** Points used less the parameters that they had to settle; no whole number where some was known before. */
	degreesOfFreedom: number;
	/** Of the whole standard uncertainty, after Welch and Satterthwaite; Infinity without scatter. */
	effectiveDegreesOfFreedom: number;
	/** Scatter of a reading about the curve where the curve is flat, pH. */
	residualSdPh: number;
	/**
	 * Causes that the fit does not know, each as if it were the only one, from the residuals: what the meter
	 * shifted evenly by from the first reading to the last, pH; the acid's strength over the stated one, as
	 * a natural logarithm; the slope less the one found. Null where no reading would show it.
	 */
	leftOver: Readonly<Record<'driftPh' | 'acidLog' | 'slope', LeftOverCause | null>>;
	/** Acid at which alkalinity has become nothing, mL. */
	endVolumeMl: number;
	/** All readings by rising volume. */
	points: readonly FittedPoint[];
	pointsUsed: number;
	/** The fitted curve for drawing, as the meter would show it, from nothing to the last volume. */
	curve: readonly ProbePoint[];
	isConverged: boolean;
};
