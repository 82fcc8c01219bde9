import { mean, standardDeviation } from './replicates';
import { requireData } from './require-data';
import { studentTQuantile } from './distributions';

export type OutlierTest = {
	statistic: number;
	/** Two-sided 5 % limit. */
	limit: number;
	/** Index of the most suspect value. */
	suspect: number;
	isSuspect: boolean;
	/**
	 * Of three results any two that happen to be equal make the third suspect: nothing follows from
	 * it. Rounded results and drop counts are equal often.
	 */
	saysLittle: boolean;
};

/**
 * What Grubbs' statistic of n normal values stays within, but for a share α of cases.
 *
 * Source: Grubbs 1969: from Student's t with p = 1 − α/2n (two-sided) or 1 − α/n (one-sided) and n − 2.
 *
 * @param n 3 or more
 * @param alpha 0 to 1, both left out
 */
export function grubbsLimit(n: number, alpha = 0.05, sides: 1 | 2 = 2): number {
	if (!(Number.isInteger(n) && n >= 3))
		throw new RangeError(`n must be a whole number from 3; found ${n}`);
	if (!(alpha > 0 && alpha < 1))
		throw new RangeError(`alpha must lie between 0 and 1; found ${alpha}`);
	const t = studentTQuantile(1 - alpha / (sides * n), n - 2);
	return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

const saysLittle = (values: readonly number[]) => values.length < 4;

/**
 * Grubbs' test for one outlier, two-sided at 5 %. A screen, never a reason to delete: that takes a
 * cause found at the bench. At n = 3 the largest statistic there can be is 1.1547 and the limit
 * 1.1543.
 *
 * Source: Grubbs 1969.
 *
 * @throws RangeError for fewer than 3 values, or one that is no number
 */
export function grubbsTest(values: readonly number[]): OutlierTest {
	requireData(values, 3, 'grubbsTest');
	const middle = mean(values);
	const n = values.length;
	let suspect = 0;
	values.forEach((value, i) => {
		if (Math.abs(value - middle) > Math.abs((values[suspect] ?? middle) - middle)) suspect = i;
	});
	const isFlat = values.every((value) => value === values[0]);
	const statistic = isFlat
		? 0
		: Math.abs((values[suspect] ?? middle) - middle) / standardDeviation(values);
	const limit = grubbsLimit(n);
	return {
		statistic,
		limit,
		suspect,
		isSuspect: statistic > limit,
		saysLittle: saysLittle(values)
	};
}

/**
 * Two-sided 5 % limits of Dixon's r10, n = 3 to 10. Source: Rorabacher 1991 (Anal. Chem. 63:139),
 * 95 %; exact integration differs from the print by up to 0.003 (n = 6).
 */
const dixonLimits = [0.97, 0.829, 0.71, 0.625, 0.568, 0.526, 0.493, 0.466];

/**
 * Dixon's r10 (gap over range) for one outlier, two-sided at 5 %. A screen, like Grubbs' test.
 *
 * @throws RangeError unless there are 3 to 10 values, all of them numbers
 */
export function dixonTest(values: readonly number[]): OutlierTest {
	requireData(values, 3, 'dixonTest');
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
		isSuspect: statistic > limit,
		saysLittle: saysLittle(values)
	};
}
