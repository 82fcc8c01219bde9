/** What may be wrong with a probe titration. */
export const probeFlagIds = [
	'columnsSwapped',
	'tooFewPoints',
	'notFarEnough',
	'tooFewInWindow',
	'notFalling',
	'outlier',
	'drift',
	'badSlope',
	'neverCalibrated',
	'notAsSet',
	'carbonInconsistent',
	'acidStrength',
	'notSolved'
] as const;
export type ProbeFlagId = (typeof probeFlagIds)[number];

export type ProbeFlag = {
	id: ProbeFlagId;
	/** 'unusable': no value should be taken from it; 'doubt': the value may be off by more than its ±. */
	weight: 'unusable' | 'doubt';
	/** One or two plain sentences: what was seen, and what to do. */
	sentence: string;
	/** What it rests on; the names carry the unit. */
	figures: Readonly<Record<string, number>>;
	/** Places in the list of readings that was handed in, from 0, where some are meant. */
	points: readonly number[];
};

/** A solution whose alkalinity is known otherwise. */
export type KnownAlkalinity = { alkalinityMolPerKg: number; standardUncertaintyMolPerKg: number };

/** Limits; common practice for the slope, all others judgement. */
export const LIMITS = {
	fewestPoints: 10,
	/** In the window of the straight line: where the value rests on it alone, and beside a fit. */
	fewestInWindow: { alone: 5, besideFit: 3 },
	farEnoughPh: 3.5,
	/** A reading may stand so much above the one before by chance alone, pH. */
	risePh: 0.05,
	/** Fewer readings than these do not show what a column is. */
	fewestToSeeColumns: 3,
	/** What a pH can be from the sample to the end of a titration, at most. */
	phOfSamples: { low: 1.5, high: 10.5 },
	/** A meter that moves by no more than this, pH, shows nothing of the acid. */
	stillPh: 0.2,
	slope: { low: 0.95, high: 1.02 },
	/** A meter set on buffers shows about 0 to 0.1 more than pH on the free scale (from memory). */
	offsetPh: { usual: 0.05, within: 0.3 },
	/**
	 * What a meter that was set on two buffers the same day shows more than pH on the free scale in seawater;
	 * one set on buffers in seawater, more than on the total scale; and its slope, each with its standard
	 * deviation from meter to meter. pH of such buffers lies 0.03 above the free scale in seawater at 25 °C
	 * (activity of hydrogen ion after Takahashi et al. 1982, from memory); junctions differ, and both standard
	 * deviations are judgement. `chiSquare`: textbook quantiles, exceeded by chance once in 100 with one and
	 * with two degrees of freedom, and once in ten with one.
	 */
	asSet: {
		offsetPh: { buffers: 0.05, seawaterBuffers: 0 },
		offsetSdPh: 0.032,
		slope: 1,
		slopeSd: 0.012,
		chiSquare: { one: 6.63, two: 9.21, byChance: 2.71 },
		/** From so many standard deviations on, what is left over is one cause's and no chance. */
		likelyT: 3.3
	},
	/**
	 * A reading that lies off the curve by less, pH, is as far off as constants of seawater published by
	 * different people lie apart: with ours, Dickson's (1981) clean table is off by 0.022 at its start.
	 */
	strayPh: 0.03,
	/**
	 * Neighbouring residuals so alike do not come of scatter: at least so much, and more where they are
	 * few, in units of the 1/√n by which chance alone makes them alike.
	 */
	likeness: { least: 0.5, byChance: 2.6 },
	/**
	 * Wandering with a smaller scatter, pH, is what other constants make (0.003 with that same table), and
	 * less than most meters show.
	 */
	wanderPh: 0.005,
	fewestForDrift: 10,
	carbonShare: { low: 0.7, high: 1.05 }
};

/** A flag; most need no figures or readings. */
export const flag = (
	id: ProbeFlagId,
	weight: ProbeFlag['weight'],
	sentence: string,
	figures: ProbeFlag['figures'] = {},
	points: readonly number[] = []
): ProbeFlag => ({ id, weight, sentence, figures, points });

/** A pH or volume, and a share, in words. */
export const two = (value: number) => value.toFixed(2);
export const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
