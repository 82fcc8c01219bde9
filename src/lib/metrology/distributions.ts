import chiSquare from '@stdlib/stats-base-dists-chisquare-quantile';
import fCdf from '@stdlib/stats-base-dists-f-cdf';
import fInverse from '@stdlib/stats-base-dists-f-quantile';
import phi from '@stdlib/stats-base-dists-normal-cdf';
import normalInverse from '@stdlib/stats-base-dists-normal-quantile';
import quantile from '@stdlib/stats-base-dists-t-quantile';

/** The one door to the library of distributions; it answers NaN where these name what is wrong. */

function requireProbability(p: number): void {
	if (!(p > 0 && p < 1)) throw new RangeError(`p must lie between 0 and 1; found ${p}`);
}

function requireDegrees(field: string, degrees: number): void {
	if (!(degrees > 0)) throw new RangeError(`${field} must be above 0; found ${degrees}`);
}

/** Beyond a million degrees of freedom the limit distribution is the same to all digits that matter. */
const finite = (degrees: number) => Math.min(degrees, 1e6);

/**
 * Quantile of Student's t distribution.
 *
 * @param p probability, 0 to 1 (both left out); 0.975 for a two-sided 95 % interval
 * @param degreesOfFreedom above 0; may be fractional or infinite
 */
export function studentTQuantile(p: number, degreesOfFreedom: number): number {
	requireProbability(p);
	requireDegrees('degreesOfFreedom', degreesOfFreedom);
	return quantile(p, finite(degreesOfFreedom));
}

/**
 * Probability of a t as far from 0 as this one or farther, either way.
 *
 * @param t any number; infinite gives 0
 * @param degreesOfFreedom above 0; may be fractional or infinite
 */
export function studentTTwoSided(t: number, degreesOfFreedom: number): number {
	if (Number.isNaN(t)) throw new RangeError(`t must be a number; found ${t}`);
	return fUpperTail(t * t, 1, degreesOfFreedom);
}

/**
 * Probability that a standard normal variable is at or below z (Φ).
 *
 * @param z any number, infinite too
 */
export function normalCdf(z: number): number {
	if (Number.isNaN(z)) throw new RangeError(`z must be a number; found ${z}`);
	return phi(z, 0, 1);
}

/** Density of the standard normal distribution at z (φ). */
export const normalDensity = (z: number): number => Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Quantile of the standard normal distribution.
 *
 * @param p probability, 0 to 1 (both left out)
 */
export function normalQuantile(p: number): number {
	requireProbability(p);
	return normalInverse(p, 0, 1);
}

/**
 * Quantile of the F distribution.
 *
 * @param p probability, 0 to 1 (both left out)
 * @param numeratorDegrees and `denominatorDegrees`: above 0; may be infinite
 */
export function fQuantile(p: number, numeratorDegrees: number, denominatorDegrees: number): number {
	requireProbability(p);
	requireDegrees('numeratorDegrees', numeratorDegrees);
	requireDegrees('denominatorDegrees', denominatorDegrees);
	return fInverse(p, finite(numeratorDegrees), finite(denominatorDegrees));
}

/**
 * Probability that an F variable is at or above f. Small ones keep their digits: it is worked out as
 * the lower tail of 1/F.
 *
 * @param f 0 or above; infinite gives 0
 */
export function fUpperTail(
	f: number,
	numeratorDegrees: number,
	denominatorDegrees: number
): number {
	if (!(f >= 0)) throw new RangeError(`f must be 0 or above; found ${f}`);
	requireDegrees('numeratorDegrees', numeratorDegrees);
	requireDegrees('denominatorDegrees', denominatorDegrees);
	if (f === 0) return 1;
	return fCdf(1 / f, finite(denominatorDegrees), finite(numeratorDegrees));
}

/**
 * Quantile of the chi-square distribution.
 *
 * @param p probability, 0 to 1 (both left out)
 * @param degreesOfFreedom above 0
 */
export function chiSquareQuantile(p: number, degreesOfFreedom: number): number {
	requireProbability(p);
	requireDegrees('degreesOfFreedom', degreesOfFreedom);
	return chiSquare(p, degreesOfFreedom);
}
