import { step } from './judged';
import { mean } from './replicates';
import { requireData } from './require-data';

export type ChartOptions = {
	/** What the values should be, in their unit: mean of the baseline when left out. */
	target?: number;
	/**
	 * Standard deviation of one value while nothing is wrong; from the moving ranges of the baseline when
	 * left out.
	 */
	sigma?: number;
	/** How many of the first values say what is usual, at least 3; all of them when left out. */
	baseline?: number;
	/** Finest step of the values: an estimated sigma is never below this over √12. */
	resolution?: number;
};

export type ChartBasis = {
	target: number;
	sigma: number;
	/** Values from which target or sigma were worked out; 0 where both were given. */
	baseline: number;
	/** Worked out from fewer than about 20 values: the limits mean little yet. */
	isProvisional: boolean;
};

/** Mean of the range of two normal values, as tables for charts print it: sigma = MR̄/1.128. */
export const RANGE_OF_TWO = 1.128;
/** Common practice; so too in Montgomery, Introduction to Statistical Quality Control (from memory). */
export const ENOUGH = 20;
const FEWEST = 3;
/** A value on a limit is within it; so many sigmas are left to the rounding of binary numbers. */
export const ON_LIMIT = 1e-9;

/** Distance of each value from the one before it; null for the first. */
export const movingRanges = (values: readonly number[]): (number | null)[] =>
	values.map((value, i) => (i === 0 ? null : Math.abs(value - (values[i - 1] ?? value))));

function requireAbove0(field: string, value: number | undefined): void {
	if (value !== undefined && !(value > 0 && Number.isFinite(value)))
		throw new RangeError(`${field} must be above 0; found ${value}`);
}

function sigmaOf(values: readonly number[], resolution: number | undefined, what: string): number {
	const ranges = movingRanges(values).filter((range) => range !== null);
	const sigma = Math.max(mean(ranges) / RANGE_OF_TWO, step(resolution ?? 0));
	if (sigma === 0)
		throw new RangeError(
			`${what} requires values that differ, or a sigma or resolution; found ${values[0]} only`
		);
	return sigma;
}

/**
 * What a control chart measures its values against.
 *
 * @throws RangeError naming the option out of range, for too few values, or for a baseline without any
 * scatter and no resolution
 */
export function basisOf(
	values: readonly number[],
	{ target, sigma, baseline, resolution }: ChartOptions,
	what: string
): ChartBasis {
	const isGiven = target !== undefined && sigma !== undefined;
	requireData(values, isGiven ? 1 : FEWEST, what);
	if (target !== undefined && !Number.isFinite(target))
		throw new RangeError(`target must be a number; found ${target}`);
	requireAbove0('sigma', sigma);
	requireAbove0('resolution', resolution);
	if (
		baseline !== undefined &&
		!(Number.isInteger(baseline) && baseline >= FEWEST && baseline <= values.length)
	)
		throw new RangeError(
			`baseline must be a whole number from ${FEWEST} to ${values.length}; found ${baseline}`
		);
	if (isGiven) return { target, sigma, baseline: 0, isProvisional: false };
	const usual = values.slice(0, baseline);
	return {
		target: target ?? mean(usual),
		sigma: sigma ?? sigmaOf(usual, resolution, what),
		baseline: usual.length,
		isProvisional: usual.length < ENOUGH
	};
}
