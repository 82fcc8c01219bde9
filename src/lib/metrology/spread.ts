import type { ScatterModel } from './own-scatter';
import { criticalRange } from './replicates';

export type Spread = {
	/** Largest minus smallest, in the kit's unit. */
	range: number;
	/** What n results of these hands stay within in 19 of 20 times. */
	criticalRange: number;
	/** Within it, or no more than one step (a drop, a count) apart. */
	agrees: boolean;
	/**
	 * ISO 5725-6, 5.2.2: 'accept' the mean; 'takeOneMore' (or two), since these lie too far apart to be
	 * only scatter; 'median', when four or more still do and the middle of them is reported.
	 */
	toDo: 'accept' | 'takeOneMore' | 'median';
};

/**
 * Variance of the mean of n normal results over that of their median, n = 1 to 10. Simulated, two
 * million samples each. The median of two is their mean.
 */
const medianEfficiencies = [1, 1, 0.743, 0.838, 0.697, 0.776, 0.678, 0.744, 0.669, 0.722];
/** By how much larger the variance of a median of n is than that of their mean. */
export const medianFactor = (n: number) => 1 / (medianEfficiencies[Math.min(n, 10) - 1] ?? 1);

/** Middle value; of an even number, the mean of the two in the middle. */
export function median(values: readonly number[]): number {
	const sorted = [...values].sort((a, b) => a - b);
	const upper = Math.floor(sorted.length / 2);
	const at = (i: number) => sorted[i] ?? Number.NaN;
	return sorted.length % 2 === 1 ? at(upper) : (at(upper - 1) + at(upper)) / 2;
}

/** How n results lie about each other; null for one. `shownSd` is what repeats of these hands show. */
export function spreadOf(
	values: readonly number[],
	model: ScatterModel,
	shownSd: number
): Spread | null {
	const n = values.length;
	if (n < 2) return null;
	const range = Math.max(...values) - Math.min(...values);
	// The standard's table ends at ten; more than that hardly widens it.
	const critical = criticalRange(Math.min(n, 10), shownSd);
	const agrees = range <= Math.max(critical, model.step) + 1e-9;
	return {
		range,
		criticalRange: critical,
		agrees,
		toDo: agrees ? 'accept' : n < 4 ? 'takeOneMore' : 'median'
	};
}
