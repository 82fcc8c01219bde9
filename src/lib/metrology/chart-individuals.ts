import {
	basisOf,
	movingRanges,
	RANGE_OF_TWO,
	type ChartBasis,
	type ChartOptions
} from './chart-limits';
import { isAbove, rulesBrokenAt, runRules, type RunRule } from './run-rules';

export type IndividualsOptions = ChartOptions & {
	/** Rules that count as a signal; all when left out. */
	rules?: readonly RunRule[];
};

export type IndividualsPoint = {
	/** From 0, in the order of the values. */
	index: number;
	value: number;
	/** Value less target, in sigmas. */
	z: number;
	/** Distance from the value before; null for the first. */
	movingRange: number | null;
	isRangeBeyond: boolean;
	/** Beyond two sigmas: one in 22 is, when nothing is wrong. A reason to look, no signal. */
	isWarning: boolean;
	/** Rules that this value completes. */
	broken: RunRule[];
};

export type IndividualsChart = ChartBasis & {
	/** Target ± 3 sigmas, in the unit of the values. */
	lower: number;
	upper: number;
	/** A moving range lies above this about once in a hundred times, when nothing is wrong. */
	movingRangeLimit: number;
	points: IndividualsPoint[];
	/** The first value that completes a rule, and the first such rule in their order. */
	firstSignal: { index: number; rule: RunRule } | null;
};

/** Upper limit of a range of two over its mean (D4), as tables for charts print it. */
const RANGE_LIMIT = 3.267;

/**
 * Control chart of single values with their moving range. Meant for repeated checks of one known
 * solution: a trend in the water itself is not what it looks for. When nothing is wrong, all five rules
 * together give a signal once in about 158 values (simulated), the first alone once in 370.
 *
 * Source: NIST/SEMATECH e-Handbook, 6.3.2.2: limits x̄ ± 3 MR̄/1.128, range limit 3.267 MR̄.
 *
 * @param values in the order of time, at least 3 (1 where target and sigma are given)
 * @throws RangeError as `ChartOptions` says: too few values, one that is no number, an option out of
 * range, or values without scatter and no sigma or resolution
 */
export function individualsChart(
	values: readonly number[],
	{ rules = runRules, ...options }: IndividualsOptions = {}
): IndividualsChart {
	for (const rule of rules)
		if (!runRules.includes(rule))
			throw new RangeError(`rules must be among ${runRules.join('; ')}; found ${String(rule)}`);
	const basis = basisOf(values, options, 'individualsChart');
	const { target, sigma } = basis;
	const z = values.map((value) => (value - target) / sigma);
	const movingRangeLimit = RANGE_LIMIT * RANGE_OF_TWO * sigma;
	const ranges = movingRanges(values);
	const points = values.map((value, index): IndividualsPoint => {
		const movingRange = ranges[index] ?? null;
		return {
			index,
			value,
			z: z[index] ?? Number.NaN,
			movingRange,
			isRangeBeyond: movingRange !== null && movingRange > movingRangeLimit,
			isWarning: isAbove(Math.abs(z[index] ?? 0), 2),
			broken: rulesBrokenAt(z, index, rules)
		};
	});
	const first = points.find(({ broken }) => broken.length > 0);
	const rule = first?.broken[0];
	return {
		...basis,
		lower: target - 3 * sigma,
		upper: target + 3 * sigma,
		movingRangeLimit,
		points,
		firstSignal: first && rule ? { index: first.index, rule } : null
	};
}
