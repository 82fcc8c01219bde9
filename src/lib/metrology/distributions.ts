import quantile from '@stdlib/stats-base-dists-t-quantile';

/**
 * Quantile of Student's t distribution.
 *
 * @param p probability, 0 to 1 (both left out); 0.975 for a two-sided 95 % interval
 * @param degreesOfFreedom above 0; may be fractional or infinite
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
	if (!(p > 0 && p < 1)) throw new RangeError(`p must lie between 0 and 1; found ${p}`);
	if (!(degreesOfFreedom > 0))
		throw new RangeError(`degreesOfFreedom must be above 0; found ${degreesOfFreedom}`);
	// Beyond a million degrees the normal distribution is the same to all digits that matter.
	return quantile(p, Math.min(degreesOfFreedom, 1e6));
}
