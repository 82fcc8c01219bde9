import { requireData } from './require-data';

/** Arithmetic mean. */
export function mean(values: readonly number[]): number {
	requireData(values, 1, 'mean');
	const rough = values.reduce((sum, value) => sum + value, 0) / values.length;
	// A second pass takes away what the first lost to rounding.
	return rough + values.reduce((sum, value) => sum + (value - rough), 0) / values.length;
}

/** Sample standard deviation, n − 1 in the denominator; two passes, so that large offsets do no harm. */
export function standardDeviation(values: readonly number[]): number {
	requireData(values, 2, 'standardDeviation');
	const middle = mean(values);
	const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
	return Math.sqrt(squares / (values.length - 1));
}

/** Standard deviation of a person's pairs of results: √(Σd²/2m) from m differences. */
export function pooledFromDuplicates(differences: readonly number[]): number {
	requireData(differences, 1, 'pooledFromDuplicates');
	return Math.sqrt(
		differences.reduce((sum, difference) => sum + difference ** 2, 0) / (2 * differences.length)
	);
}

/** ISO 5725-6: two results of the same hand on the same water differ by more only once in twenty times. */
export function repeatabilityLimit(repeatabilitySd: number): number {
	if (!(repeatabilitySd >= 0))
		throw new RangeError(`repeatabilitySd must be 0 or above; found ${repeatabilitySd}`);
	return 2.8 * repeatabilitySd;
}

/** Factors f(n) of the critical range, n = 2 to 10. Source: ISO 5725-6:1994, table 1. */
const criticalRangeFactors = [2.8, 3.3, 3.6, 3.9, 4.0, 4.2, 4.3, 4.4, 4.5];

/** Largest minus smallest of n results is above this only once in twenty times. */
export function criticalRange(n: number, repeatabilitySd: number): number {
	if (!(repeatabilitySd >= 0))
		throw new RangeError(`repeatabilitySd must be 0 or above; found ${repeatabilitySd}`);
	const factor = criticalRangeFactors[n - 2];
	if (factor === undefined || !Number.isInteger(n))
		throw new RangeError(`n must be a whole number from 2 to 10; found ${n}`);
	return factor * repeatabilitySd;
}
