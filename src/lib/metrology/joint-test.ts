import { fQuantile, fUpperTail } from './distributions';
import { requireConfidence } from './interval';
import type { LinearFit } from './least-squares';

export type JointTest = {
	/** F with 2 and n − 2 degrees of freedom; infinite where the points have no scatter. */
	statistic: number;
	/** What F stays below in 95 of 100 cases when the line is the one given. */
	critical: number;
	/** Probability of an F as large as this or larger, if the line is the one given. */
	p: number;
	isRejected: boolean;
};

/**
 * Are intercept and slope together those given? With few points the two are strongly correlated: each
 * alone may look ordinary when both together do not.
 *
 * Source: F test of two linear restrictions (textbook).
 *
 * @param given intercept 0 and slope 1 for 'found is what was there'
 * @throws RangeError for a line through the origin, which has no intercept to test, or a given number
 * that is none
 */
export function jointLineTest(
	fit: LinearFit,
	given: { intercept: number; slope: number },
	confidence = 0.95
): JointTest {
	requireConfidence(confidence);
	if (fit.isThroughOrigin)
		throw new RangeError('fit must have an intercept; found a line through the origin');
	for (const field of ['intercept', 'slope'] as const)
		if (!Number.isFinite(given[field]))
			throw new RangeError(`${field} must be a number; found ${given[field]}`);
	const atMiddle = fit.meanY - given.intercept - given.slope * fit.meanX;
	const inSlope = fit.slope - given.slope;
	const squares = fit.n * atMiddle ** 2 + inSlope ** 2 * fit.sumOfSquaresX;
	const meanSquare = fit.residualSd ** 2;
	const statistic = squares === 0 ? 0 : squares / 2 / meanSquare;
	const critical = fQuantile(confidence, 2, fit.degreesOfFreedom);
	return {
		statistic,
		critical,
		p: fUpperTail(statistic, 2, fit.degreesOfFreedom),
		isRejected: statistic > critical
	};
}
