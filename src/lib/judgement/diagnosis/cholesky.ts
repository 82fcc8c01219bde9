/** Lower Cholesky factors, row by row in one array. */

/** A pivot is never below this. */
export const LEAST_PIVOT = 1e-12;
/** Smaller products of pivots are taken to their logarithm before they come to nothing. */
export const SMALL = 1e-200;

/** Solves L x = b in place for a lower triangle of n rows. */
export function solveLower(factor: Float64Array, n: number, b: Float64Array): Float64Array {
	for (let i = 0; i < n; i++) {
		let sum = b[i]!;
		const at = i * n;
		for (let k = 0; k < i; k++) sum -= factor[at + k]! * b[k]!;
		b[i] = sum / factor[at + i]!;
	}
	return b;
}

/**
 * ln of the product of the pivots from each row on, of a covariance given by its lower triangle; the
 * last is 0. No covariance that has something added to it has smaller pivots (Horn and Johnson 2013,
 * Matrix Analysis, 7.7: Schur complements keep the order of matrices).
 */
export function lnDetFrom(covariance: Float64Array, n: number): Float64Array {
	const factor = covariance.slice();
	const found = new Float64Array(n + 1);
	for (let i = 0; i < n; i++) {
		for (let j = 0; j <= i; j++) {
			let sum = factor[i * n + j]!;
			for (let m = 0; m < j; m++) sum -= factor[i * n + m]! * factor[j * n + m]!;
			factor[i * n + j] =
				i === j ? Math.sqrt(Math.max(LEAST_PIVOT, sum)) : sum / factor[j * n + j]!;
		}
		found[i] = 2 * Math.log(factor[i * n + i]!);
	}
	for (let i = n - 1; i >= 0; i--) found[i]! += found[i + 1]!;
	return found;
}
