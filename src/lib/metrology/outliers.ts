import { mean, standardDeviation } from './replicates';
import { studentTQuantile } from './distributions';

export type OutlierTest = {
	statistic: number;
	/** Two-sided 5 % limit. */
	limit: number;
	/** Index of the most suspect value. */
	suspect: number;
	isSuspect: boolean;
};

/**
 * Grubbs' test for one outlier, two-sided at 5 %. A screen, never a reason to delete: at n = 3 the
 * largest statistic there can be is 1.1547 and the limit 1.1543, so it says next to nothing.
 *
 * Source: Grubbs 1969; the limit from Student's t with p = 1 − 0.05/2n.
 */
export function grubbsTest(values: readonly number[]): OutlierTest {
	if (values.length < 3)
		throw new RangeError(`grubbsTest requires at least 3 values; found ${values.length}`);
	const middle = mean(values);
	const sd = standardDeviation(values);
	const n = values.length;
	let suspect = 0;
	values.forEach((value, i) => {
		if (Math.abs(value - middle) > Math.abs((values[suspect] ?? middle) - middle)) suspect = i;
	});
	const statistic = sd === 0 ? 0 : Math.abs((values[suspect] ?? middle) - middle) / sd;
	const t = studentTQuantile(1 - 0.05 / (2 * n), n - 2);
	const limit = ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
	return { statistic, limit, suspect, isSuspect: statistic > limit };
}

/** Two-sided 5 % limits of Dixon's r10, n = 3 to 10. Source: Rorabacher 1991 (Anal. Chem. 63:139), table 2. */
const dixonLimits = [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466];

/** Dixon's r10 (gap over range) for one outlier, two-sided at 5 %, 3 to 10 values. A screen, like Grubbs' test. */
export function dixonTest(values: readonly number[]): OutlierTest {
	const limit = dixonLimits[values.length - 3];
	if (limit === undefined)
		throw new RangeError(`dixonTest requires 3 to 10 values; found ${values.length}`);
	const order = values.map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value);
	const at = (k: number) => order[k] ?? { value: Number.NaN, i: -1 };
	const n = values.length;
	const range = at(n - 1).value - at(0).value;
	const low = at(1).value - at(0).value;
	const high = at(n - 1).value - at(n - 2).value;
	const statistic = range === 0 ? 0 : Math.max(low, high) / range;
	return {
		statistic,
		limit,
		suspect: high >= low ? at(n - 1).i : at(0).i,
		isSuspect: statistic > limit
	};
}
