import { intervalAbout, type Interval } from './interval';
import { linearRegression } from './least-squares';
import {
	differencesOf,
	testOfDifferences,
	type DifferenceOptions,
	type DifferenceTest,
	type MethodPair
} from './paired';

export type BlandAltmanOptions = DifferenceOptions & {
	/** Limits of agreement lie so many standard deviations from the bias: 1.96 when left out; the paper took 2. */
	multiplier?: number;
};

/** A limit of agreement, and how well it is known. */
export type AgreementLimit = { value: number; interval: Interval };

export type BlandAltman = DifferenceTest & {
	/** Mean of a less b. */
	bias: number;
	biasInterval: Interval;
	/** About 95 of 100 differences lie between the two. */
	lower: AgreementLimit;
	upper: AgreementLimit;
	/** Where each pair stands in the plot: mean of the two, and a less b, in the order of the pairs. */
	points: { mean: number; difference: number }[];
	/**
	 * Difference per unit of the mean. `isLikely`: its interval leaves out 0, so the bias may grow with
	 * the value. A hint only: a method that scatters more than the other gives a slope by itself. Null
	 * for fewer than 5 pairs, or where all means are alike.
	 */
	trend: { slope: number; interval: Interval; isLikely: boolean } | null;
	/** Below 20 pairs the limits are known so badly that they are a first impression; this project's choice. */
	isProvisional: boolean;
};

const FEWEST_FOR_TREND = 5;
const FEWEST_FOR_LIMITS = 20;

function trendOf(points: BlandAltman['points'], confidence: number): BlandAltman['trend'] {
	if (points.length < FEWEST_FOR_TREND) return null;
	if (points.every(({ mean }) => mean === points[0]?.mean)) return null;
	const fit = linearRegression(
		points.map(({ mean: x, difference: y }) => ({ x, y })),
		{ confidence }
	);
	const { low, high } = fit.slopeInterval;
	return { slope: fit.slope, interval: fit.slopeInterval, isLikely: low > 0 || high < 0 };
}

/**
 * Can two methods stand in for each other? Bias and limits of agreement of the differences a − b, with
 * the confidence limits of each. Correlation does not answer this.
 *
 * Source: Bland and Altman 1986 (Lancet i:307): standard error of a limit √(3 s²/n), Student's t with
 * n − 1. The exact one is a little wider for few pairs.
 *
 * @param pairs at least 3 waters, each measured by both
 * @throws RangeError naming what there is too little of or out of range; for differences all alike
 * without a resolution
 */
export function blandAltman(
	pairs: readonly MethodPair[],
	{ multiplier = 1.96, confidence = 0.95, resolution }: BlandAltmanOptions = {}
): BlandAltman {
	const differences = differencesOf(pairs, 3, 'blandAltman');
	if (!(multiplier > 0 && Number.isFinite(multiplier)))
		throw new RangeError(`multiplier must be above 0; found ${multiplier}`);
	const test = testOfDifferences(differences, {
		confidence,
		...(resolution === undefined ? {} : { resolution })
	});
	const { n, meanDifference: bias, sd, degreesOfFreedom, interval } = test;
	const limitAt = (value: number): AgreementLimit => ({
		value,
		interval: intervalAbout(value, sd * Math.sqrt(3 / n), degreesOfFreedom, confidence)
	});
	const points = pairs.map(({ a, b }) => ({ mean: (a + b) / 2, difference: a - b }));
	return {
		...test,
		bias,
		biasInterval: interval,
		lower: limitAt(bias - multiplier * sd),
		upper: limitAt(bias + multiplier * sd),
		points,
		trend: trendOf(points, confidence),
		isProvisional: n < FEWEST_FOR_LIMITS
	};
}
