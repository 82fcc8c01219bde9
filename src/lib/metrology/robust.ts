import { step } from './judged';
import { requireData } from './require-data';
import { median } from './spread';

/** 1/Φ⁻¹(3/4): makes the MAD of many normal values their standard deviation. */
const NORMAL = 1.4826;

/**
 * By how much more the MAD of n normal values falls short, n = 2 to 9. Source: Croux and Rousseeuw
 * 1992 (from memory; n = 3 to 9 simulated anew, within 0.011). Above 9: n/(n − 0.8), theirs too.
 */
const shortfalls = [1.196, 1.495, 1.363, 1.206, 1.2, 1.14, 1.129, 1.107];

export type RobustSpread = {
	median: number;
	/** Median of the distances from the median. */
	mad: number;
	/** 1.4826 b_n MAD, an estimate of the standard deviation that one odd value cannot spoil. */
	sd: number;
	/** The estimate lay below the floor that the resolution sets. */
	isFloored: boolean;
};

/**
 * Median and scatter of a few values, one of which may be odd. The MAD of three is the smaller of the
 * two gaps: of drop counts it is often 0, and so says nothing; hence the floor.
 *
 * @param values at least 2
 * @param resolution finest step of the values, above 0 (a drop, a last digit); floor at this over √12.
 * Left out, there is no floor, and a `sd` of 0 is not to be divided by
 * @throws RangeError for too few values, one that is no number, or a resolution not above 0
 */
export function robustSpread(values: readonly number[], resolution?: number): RobustSpread {
	requireData(values, 2, 'robustSpread');
	if (resolution !== undefined && !(resolution > 0 && Number.isFinite(resolution)))
		throw new RangeError(`resolution must be above 0; found ${resolution}`);
	const middle = median(values);
	const mad = median(values.map((value) => Math.abs(value - middle)));
	const n = values.length;
	const own = NORMAL * (shortfalls[n - 2] ?? n / (n - 0.8)) * mad;
	const floor = step(resolution ?? 0);
	return { median: middle, mad, sd: Math.max(own, floor), isFloored: own < floor };
}
