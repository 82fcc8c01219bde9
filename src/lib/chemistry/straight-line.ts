/** A straight line through points, with what its scatter says about it. */
export type StraightLine = {
	slope: number;
	intercept: number;
	/** Where it meets the axis, and the standard uncertainty of that. */
	zeroAt: number;
	zeroStandardUncertainty: number;
	/** Points less 2. */
	degreesOfFreedom: number;
	/** Sum of weighted squares over the degrees of freedom; 1 where the variances were the true ones. */
	reducedChiSquare: number;
};

/**
 * Weighted least squares for y against x. The uncertainty of the zero is worked out from the
 * covariance of slope and intercept, scaled by the scatter found.
 *
 * @param variances of each y, up to a common factor
 * @param leastChiSquare smallest scale of the variances that is believed, however well the points lie
 * @throws RangeError with fewer than three points, or none apart from each other
 */
export function straightLine(
	x: readonly number[],
	y: readonly number[],
	variances: readonly number[],
	leastChiSquare = 0
): StraightLine {
	if (x.length < 3) throw new RangeError(`points must be at least 3 for a line; found ${x.length}`);
	const weights = variances.map((variance) => 1 / variance);
	const sum = (of: (i: number) => number) => weights.reduce((all, w, i) => all + w * of(i), 0);
	const weight = sum(() => 1);
	const meanX = sum((i) => x[i]!) / weight;
	const meanY = sum((i) => y[i]!) / weight;
	const sxx = sum((i) => (x[i]! - meanX) ** 2);
	if (!(sxx > 0)) throw new RangeError('points must lie apart in volume; found all at one');
	const slope = sum((i) => (x[i]! - meanX) * (y[i]! - meanY)) / sxx;
	const degreesOfFreedom = x.length - 2;
	const chiSquare = sum((i) => (y[i]! - meanY - slope * (x[i]! - meanX)) ** 2);
	const reducedChiSquare = chiSquare / degreesOfFreedom;
	const zeroAt = meanX - meanY / slope;
	// Mean and slope are uncorrelated when x is counted from its mean.
	const zeroVariance = (1 / weight + (zeroAt - meanX) ** 2 / sxx) / slope ** 2;
	return {
		slope,
		intercept: meanY - slope * meanX,
		zeroAt,
		zeroStandardUncertainty: Math.sqrt(zeroVariance * Math.max(reducedChiSquare, leastChiSquare)),
		degreesOfFreedom,
		reducedChiSquare
	};
}
