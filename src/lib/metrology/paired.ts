import { studentTQuantile, studentTTwoSided } from './distributions';
import { holds, intervalAbout, requireConfidence, type Interval } from './interval';
import { step } from './judged';
import { mean, standardDeviation } from './replicates';
import { requireData } from './require-data';

/** One water measured two ways, in one unit. */
export type MethodPair = { a: number; b: number };

export type DifferenceOptions = {
	/** Confidence of the intervals, 0 to 1; 0.95 when left out. */
	confidence?: number;
	/**
	 * Finest step that a difference can have, in the unit of the values: a drop, a last digit. Scatter
	 * is never taken for less than this over √12, so that equal drop counts do not look certain.
	 */
	resolution?: number;
};

export type DifferenceTest = {
	n: number;
	/** a less b. */
	meanDifference: number;
	/** Of one difference, n − 1 in the denominator; not below the floor that `resolution` sets. */
	sd: number;
	isSdFloored: boolean;
	standardError: number;
	degreesOfFreedom: number;
	/** Where the true mean difference lies, with the confidence asked for. */
	interval: Interval;
	/** Mean over its standard error, and what it stays within either way if there is no difference. */
	t: number;
	critical: number;
	/** Probability of a t as far from 0 or farther, if there is no difference. */
	p: number;
	/** The interval leaves out 0. That it holds 0 does not make two methods alike. */
	isDifferent: boolean;
};

/** @throws RangeError naming the pair and field that is no number, or when there are too few */
export function differencesOf(pairs: readonly MethodPair[], least: number, what: string): number[] {
	if (pairs.length < least)
		throw new RangeError(`${what} requires at least ${least} pairs; found ${pairs.length}`);
	return pairs.map(({ a, b }, i) => {
		if (!Number.isFinite(a)) throw new RangeError(`pairs[${i}].a must be a number; found ${a}`);
		if (!Number.isFinite(b)) throw new RangeError(`pairs[${i}].b must be a number; found ${b}`);
		return a - b;
	});
}

/**
 * Scatter of differences, floored.
 *
 * @throws RangeError where they are all alike and no resolution says how alike that is
 */
export function scatterOf(
	differences: readonly number[],
	resolution: number | undefined,
	what: string
): { sd: number; isSdFloored: boolean } {
	if (resolution !== undefined && !(resolution > 0 && Number.isFinite(resolution)))
		throw new RangeError(`resolution must be above 0; found ${resolution}`);
	const isFlat = differences.every((each) => each === differences[0]);
	const own = isFlat ? 0 : standardDeviation(differences);
	const sd = Math.max(own, step(resolution ?? 0));
	if (sd === 0)
		throw new RangeError(
			`${what} requires values that differ, or a resolution; found ${differences[0]} only`
		);
	return { sd, isSdFloored: sd > own };
}

/**
 * Student's test of differences: is their mean zero?
 *
 * @param differences at least 2, in one unit
 * @throws RangeError for too few, one that is no number, or all alike without a resolution
 */
export function testOfDifferences(
	differences: readonly number[],
	{ confidence = 0.95, resolution }: DifferenceOptions = {}
): DifferenceTest {
	requireData(differences, 2, 'testOfDifferences');
	requireConfidence(confidence);
	const { sd, isSdFloored } = scatterOf(differences, resolution, 'testOfDifferences');
	const n = differences.length;
	const meanDifference = mean(differences);
	const standardError = sd / Math.sqrt(n);
	const degreesOfFreedom = n - 1;
	const interval = intervalAbout(meanDifference, standardError, degreesOfFreedom, confidence);
	const t = meanDifference / standardError;
	return {
		n,
		meanDifference,
		sd,
		isSdFloored,
		standardError,
		degreesOfFreedom,
		interval,
		t,
		critical: studentTQuantile((1 + confidence) / 2, degreesOfFreedom),
		p: studentTTwoSided(t, degreesOfFreedom),
		isDifferent: !holds(interval, 0)
	};
}

/**
 * Paired differences: the same waters measured two ways, or by two people. Differences between waters
 * take themselves out.
 *
 * Source: paired t test (textbook).
 *
 * @param pairs at least 2
 * @throws RangeError as `testOfDifferences`, naming the pair
 */
export function pairedDifferences(
	pairs: readonly MethodPair[],
	options: DifferenceOptions = {}
): DifferenceTest {
	return testOfDifferences(differencesOf(pairs, 2, 'pairedDifferences'), options);
}
