import { holds, intervalAbout, requireConfidence, type Interval } from './interval';
import { momentsOf, requirePoints, type Point } from './points';
import { standardDeviation } from './replicates';

export type DemingOptions = {
	/**
	 * Variance of the errors of y over variance of the errors of x: λ = σ²(err y)/σ²(err x). 1 when left
	 * out (orthogonal regression, which needs both axes in one unit). Half of all software means the
	 * inverse by the same letter.
	 */
	lambda?: number;
	/** Confidence of the intervals, 0 to 1; 0.95 when left out. */
	confidence?: number;
};

export type DemingLine = {
	n: number;
	lambda: number;
	slope: number;
	slopeStandardError: number;
	slopeInterval: Interval;
	intercept: number;
	interceptStandardError: number;
	interceptInterval: Interval;
	/** The interval of the intercept leaves out 0: one method reads higher by a constant. */
	isConstantErrorClear: boolean;
	/** The interval of the slope leaves out 1: one method reads higher in proportion. */
	isProportionalErrorClear: boolean;
};

type Line = { slope: number; intercept: number };

/** Null where the points have no direction. */
function lineThrough(points: readonly Point[], lambda: number): Line | null {
	const { meanX, meanY, xx, xy, yy } = momentsOf(points);
	const lean = yy - lambda * xx;
	const root = Math.hypot(lean, 2 * Math.sqrt(lambda) * xy);
	// Two forms of one root of a quadratic: each where it does not take like from like.
	const slope = lean > 0 ? (lean + root) / (2 * xy) : (2 * lambda * xy) / (root - lean);
	return Number.isFinite(slope) ? { slope, intercept: meanY - slope * meanX } : null;
}

/** Standard error of an estimate from those with each point left out in turn. */
function jackknife(whole: number, withoutEach: readonly number[]): number {
	const n = withoutEach.length;
	const pseudo = withoutEach.map((without) => n * whole - (n - 1) * without);
	return standardDeviation(pseudo) / Math.sqrt(n);
}

/**
 * Deming regression: a straight line where both axes scatter, each alike everywhere, with a known
 * ratio of the two. Standard errors by the jackknife, intervals with Student's t for n − 2; with fewer
 * than about ten points they are rough.
 *
 * Source: Deming 1943 (from memory); errors by jackknife after Linnet 1990 (Stat. Med. 9:1463, from
 * memory).
 *
 * @param points at least 3, not all alike in x
 * @throws RangeError for too few points, one that is no number, a λ that is not above 0, or points
 * that have no direction, all of them or with any one left out
 */
export function demingRegression(
	points: readonly Point[],
	{ lambda = 1, confidence = 0.95 }: DemingOptions = {}
): DemingLine {
	requirePoints(points, 3, 'demingRegression');
	requireConfidence(confidence);
	if (!(lambda > 0 && Number.isFinite(lambda)))
		throw new RangeError(`lambda must be above 0; found ${lambda}`);
	const line = lineThrough(points, lambda);
	if (!line)
		throw new RangeError('demingRegression requires points with a direction; found none in them');
	const without = points.map((_, i) => {
		const left = lineThrough(
			points.filter((_, other) => other !== i),
			lambda
		);
		if (!left)
			throw new RangeError(
				`demingRegression requires points with a direction; found none without points[${i}]`
			);
		return left;
	});
	const slopeStandardError = jackknife(
		line.slope,
		without.map(({ slope }) => slope)
	);
	const interceptStandardError = jackknife(
		line.intercept,
		without.map(({ intercept }) => intercept)
	);
	const n = points.length;
	const slopeInterval = intervalAbout(line.slope, slopeStandardError, n - 2, confidence);
	const interceptInterval = intervalAbout(
		line.intercept,
		interceptStandardError,
		n - 2,
		confidence
	);
	return {
		n,
		lambda,
		...line,
		slopeStandardError,
		slopeInterval,
		interceptStandardError,
		interceptInterval,
		isConstantErrorClear: !holds(interceptInterval, 0),
		isProportionalErrorClear: !holds(slopeInterval, 1)
	};
}
