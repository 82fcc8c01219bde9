import { chiSquareQuantile } from './distributions';
import { linearRegression } from './least-squares';
import { requirePoints, type Point } from './points';

export type WeightedPoint = Point & {
	/** Standard uncertainties of this point; one of the two may be 0. */
	ux: number;
	uy: number;
	/** Correlation of the two errors, −1 to 1, both left out; 0 when left out. */
	r?: number;
};

export type YorkLine = {
	n: number;
	slope: number;
	slopeStandardError: number;
	intercept: number;
	interceptStandardError: number;
	/** Covariance of slope and intercept. */
	covariance: number;
	/** Squared distances from the line over what the points' uncertainties allow; n − 2 is as expected. */
	chiSquare: number;
	/** χ² stays below this in 95 of 100 cases. */
	chiSquareLimit: number;
	/** The points lie no farther from the line than their uncertainties allow. */
	isConsistent: boolean;
};

/** The slope settles to this share of itself, or the best line is not found. */
const SETTLED = 1e-14;
const MOST_ROUNDS = 500;

type Sums = { slope: number; meanX: number; meanY: number; total: number; adjusted: number[] };

/** One round: weights by the slope so far, and the slope that they give. York 2004, table I. */
function round(points: readonly WeightedPoint[], b: number): Sums & { weights: number[] } {
	const weights = points.map(
		({ ux, uy, r = 0 }) => 1 / (uy ** 2 + b ** 2 * ux ** 2 - 2 * b * r * ux * uy)
	);
	const sumOf = (of: (point: WeightedPoint, w: number, i: number) => number) =>
		points.reduce((sum, point, i) => sum + of(point, weights[i] ?? 0, i), 0);
	const total = sumOf((_, w) => w);
	const meanX = sumOf(({ x }, w) => w * x) / total;
	const meanY = sumOf(({ y }, w) => w * y) / total;
	const betas = points.map(({ x, y, ux, uy, r = 0 }, i) => {
		const [u, v] = [x - meanX, y - meanY];
		return (weights[i] ?? 0) * (u * uy ** 2 + b * v * ux ** 2 - (b * u + v) * r * ux * uy);
	});
	const over = sumOf(({ y }, w, i) => w * (betas[i] ?? 0) * (y - meanY));
	const under = sumOf(({ x }, w, i) => w * (betas[i] ?? 0) * (x - meanX));
	return {
		slope: over / under,
		meanX,
		meanY,
		total,
		weights,
		adjusted: betas.map((beta) => meanX + beta)
	};
}

function settle(points: readonly WeightedPoint[]): ReturnType<typeof round> {
	let slope = linearRegression(points).slope;
	for (let i = 0; i < MOST_ROUNDS; i++) {
		const next = round(points, slope);
		if (!Number.isFinite(next.slope)) break;
		const isSettled = Math.abs(next.slope - slope) <= SETTLED * Math.abs(next.slope);
		slope = next.slope;
		if (isSettled) return round(points, slope);
	}
	throw new RangeError('points must lie about one line; found none that they settle on');
}

/**
 * Straight line through points that each have uncertainties of their own in x and y. Standard errors
 * are those that the uncertainties give, not widened by the points' scatter: `isConsistent` says
 * whether that is enough.
 *
 * Source: York, Evensen, Martínez and De Basabe Delgado 2004 (Am. J. Phys. 72:367), table I and eq. 13
 * (from memory); York 1966.
 *
 * @param points at least 3, with x that differ
 * @throws RangeError naming the field out of range, or when no line is found
 */
export function yorkRegression(points: readonly WeightedPoint[]): YorkLine {
	requirePoints(points, 3, 'yorkRegression');
	points.forEach(({ ux, uy, r = 0 }, i) => {
		for (const [field, u] of [
			['ux', ux],
			['uy', uy]
		] as const)
			if (!(u >= 0 && Number.isFinite(u)))
				throw new RangeError(`points[${i}].${field} must be 0 or above; found ${u}`);
		if (ux === 0 && uy === 0) throw new RangeError(`points[${i}].ux and uy must not both be 0`);
		if (!(r > -1 && r < 1))
			throw new RangeError(`points[${i}].r must lie between -1 and 1; found ${r}`);
	});
	const { slope, meanX, meanY, total, weights, adjusted } = settle(points);
	const intercept = meanY - slope * meanX;
	const sumOf = (of: (i: number, w: number) => number) =>
		weights.reduce((sum, w, i) => sum + of(i, w), 0);
	const middle = sumOf((i, w) => w * (adjusted[i] ?? 0)) / total;
	const slopeVariance = 1 / sumOf((i, w) => w * ((adjusted[i] ?? 0) - middle) ** 2);
	const chiSquare = sumOf((i, w) => {
		const { x, y } = points[i] ?? { x: 0, y: 0 };
		return w * (y - slope * x - intercept) ** 2;
	});
	const chiSquareLimit = chiSquareQuantile(0.95, points.length - 2);
	return {
		n: points.length,
		slope,
		slopeStandardError: Math.sqrt(slopeVariance),
		intercept,
		interceptStandardError: Math.sqrt(1 / total + middle ** 2 * slopeVariance),
		covariance: -middle * slopeVariance,
		chiSquare,
		chiSquareLimit,
		isConsistent: chiSquare <= chiSquareLimit
	};
}
