import { intervalAbout, type Interval } from './interval';
import { momentsOf, requirePoints, type Point } from './points';

export type LinearRegressionOptions = {
	/** The line goes through the origin: y = slope · x. */
	throughOrigin?: boolean;
	/** Confidence of the intervals, 0 to 1; 0.95 when left out. */
	confidence?: number;
};

/** A straight line y = intercept + slope · x, with what the scatter of the points says about it. */
export type LinearFit = {
	n: number;
	/** Points less numbers fitted. */
	degreesOfFreedom: number;
	/** In the unit of y per unit of x. */
	slope: number;
	slopeStandardError: number;
	slopeInterval: Interval;
	/** In the unit of y; 0, and its standard error too, for a line through the origin. */
	intercept: number;
	interceptStandardError: number;
	interceptInterval: Interval;
	/** Correlation of the two estimates: near −1 where all x lie far from 0, so that one makes up for the other. */
	correlation: number;
	/** Standard deviation of the points about the line, in the unit of y. */
	residualSd: number;
	/** y less the line, in the order of the points. */
	residuals: number[];
	/**
	 * Share of the sum of squares of y that the line takes up: about the mean of y, or about 0 for a
	 * line through the origin; the two cannot be compared. 1 where all y are alike and on the line.
	 */
	rSquared: number;
	/** Mean square of the line over that of the residuals; infinite where there is no scatter. */
	fStatistic: number;
	meanX: number;
	meanY: number;
	/** Σ(x − x̄)², or Σx² through the origin. */
	sumOfSquaresX: number;
	isThroughOrigin: boolean;
};

const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

/**
 * Ordinary least squares: x is taken as exact, and y scatters alike everywhere. Sums are taken about
 * the means in two passes, so that large offsets do no harm.
 *
 * Source: textbook formulas; NIST StRD, Norris and NoInt1, for the digits.
 *
 * @param points at least 3 (2 through the origin), with x that differ (not all 0 through the origin)
 * @throws RangeError for too few points, one that is no number, or x that are all alike
 */
export function linearRegression(
	points: readonly Point[],
	{ throughOrigin = false, confidence = 0.95 }: LinearRegressionOptions = {}
): LinearFit {
	requirePoints(points, throughOrigin ? 2 : 3, 'linearRegression');
	const { n, meanX, meanY, xx, xy, yy } = momentsOf(points, throughOrigin);
	if (!(xx > 0))
		throw new RangeError(
			throughOrigin
				? 'linearRegression requires an x other than 0; found 0 only'
				: `linearRegression requires x that differ; found ${points[0]?.x} only`
		);
	const slope = xy / xx;
	const intercept = throughOrigin ? 0 : meanY - slope * meanX;
	const residuals = throughOrigin
		? points.map(({ x, y }) => y - slope * x)
		: points.map(({ x, y }) => y - meanY - slope * (x - meanX));
	const residualSquares = sumOf(residuals.map((each) => each * each));
	const degreesOfFreedom = n - (throughOrigin ? 1 : 2);
	const residualSd = Math.sqrt(residualSquares / degreesOfFreedom);
	const slopeStandardError = residualSd / Math.sqrt(xx);
	const perSd = throughOrigin ? 0 : Math.sqrt(1 / n + meanX ** 2 / xx);
	const interceptStandardError = residualSd * perSd;
	const about = (middle: number, standardError: number) =>
		intervalAbout(middle, standardError, degreesOfFreedom, confidence);
	return {
		n,
		degreesOfFreedom,
		slope,
		slopeStandardError,
		slopeInterval: about(slope, slopeStandardError),
		intercept,
		interceptStandardError,
		interceptInterval: about(intercept, interceptStandardError),
		correlation: throughOrigin ? 0 : -meanX / (Math.sqrt(xx) * perSd),
		residualSd,
		residuals,
		rSquared: yy === 0 ? 1 : 1 - residualSquares / yy,
		fStatistic: (slope * xy) / (residualSquares / degreesOfFreedom),
		meanX,
		meanY,
		sumOfSquaresX: xx,
		isThroughOrigin: throughOrigin
	};
}

/**
 * The line at x, with the standard error of the line itself (not of one more point about it).
 *
 * @throws RangeError when x is no number
 */
export function lineAt(fit: LinearFit, x: number): { y: number; standardError: number } {
	if (!Number.isFinite(x)) throw new RangeError(`x must be a number; found ${x}`);
	const { meanX, meanY, slope, sumOfSquaresX, residualSd, n, isThroughOrigin } = fit;
	if (isThroughOrigin)
		return { y: slope * x, standardError: residualSd * (Math.abs(x) / Math.sqrt(sumOfSquaresX)) };
	return {
		y: meanY + slope * (x - meanX),
		standardError: residualSd * Math.sqrt(1 / n + (x - meanX) ** 2 / sumOfSquaresX)
	};
}
