import { normalCdf, normalQuantile } from './distributions';

/** Limits that a true value should keep; one of the two may be left out. In one unit. */
export type ToleranceLimits = { lower?: number; upper?: number };

/** @throws RangeError when there is no limit, one is no number, or they stand the wrong way round */
function requireLimits({ lower, upper }: ToleranceLimits): void {
	if (lower === undefined && upper === undefined)
		throw new RangeError('lower or upper must be given; found neither');
	for (const [field, limit] of [
		['lower', lower],
		['upper', upper]
	] as const)
		if (limit !== undefined && !Number.isFinite(limit))
			throw new RangeError(`${field} must be a number; found ${limit}`);
	if (lower !== undefined && upper !== undefined && !(lower < upper))
		throw new RangeError(`lower must be below upper, ${upper}; found ${lower}`);
}

function requireUncertainty(standardUncertainty: number): void {
	if (!(standardUncertainty > 0 && Number.isFinite(standardUncertainty)))
		throw new RangeError(`standardUncertainty must be above 0; found ${standardUncertainty}`);
}

/**
 * Probability that the true value lies within the limits, if it is normal about what was measured.
 * Nothing known beforehand is used. Never to be shown as 0 or 1.
 *
 * Source: JCGM 106:2012, 7.2 and 7.4: Φ((T_U − y)/u) − Φ((T_L − y)/u).
 *
 * @throws RangeError naming the field out of range
 */
export function conformityProbability(
	value: number,
	standardUncertainty: number,
	limits: ToleranceLimits
): number {
	if (!Number.isFinite(value)) throw new RangeError(`value must be a number; found ${value}`);
	requireUncertainty(standardUncertainty);
	requireLimits(limits);
	const { lower = Number.NEGATIVE_INFINITY, upper = Number.POSITIVE_INFINITY } = limits;
	const [low, high] = [
		(lower - value) / standardUncertainty,
		(upper - value) / standardUncertainty
	];
	// Far above the middle two numbers near 1 would be taken from each other: turn it round.
	return low > 0 ? normalCdf(-low) - normalCdf(-high) : normalCdf(high) - normalCdf(low);
}

export type GuardBandOptions = {
	/** Probability that the true value is beyond a limit, for a value measured at the guarded one; 0.05 when left out. */
	risk?: number;
	/** Width in standard uncertainties instead of a risk: 2 for a band of U (k = 2). */
	factor?: number;
};

export type GuardedLimits = ToleranceLimits & {
	/** Width of each guard band, in the unit of the limits. */
	width: number;
	/** The two guarded limits have met: no value can be measured well enough to be sure. */
	isEmpty: boolean;
};

/**
 * Limits drawn in by a guard band, so that a value measured within them is within the true limits but
 * for a stated risk (at each limit by itself).
 *
 * Source: JCGM 106:2012, 8.3 (guarded acceptance): w = z(1 − risk) u.
 *
 * @throws RangeError naming the field out of range
 */
export function guardedLimits(
	limits: ToleranceLimits,
	standardUncertainty: number,
	{ risk = 0.05, factor }: GuardBandOptions = {}
): GuardedLimits {
	requireUncertainty(standardUncertainty);
	requireLimits(limits);
	if (!(risk > 0 && risk <= 0.5))
		throw new RangeError(`risk must be above 0 and at most 0.5; found ${risk}`);
	if (factor !== undefined && !(factor >= 0 && Number.isFinite(factor)))
		throw new RangeError(`factor must be 0 or above; found ${factor}`);
	const width = (factor ?? normalQuantile(1 - risk)) * standardUncertainty;
	const { lower, upper } = limits;
	const guarded = {
		...(lower === undefined ? {} : { lower: lower + width }),
		...(upper === undefined ? {} : { upper: upper - width })
	};
	const isEmpty =
		guarded.lower !== undefined && guarded.upper !== undefined && guarded.lower > guarded.upper;
	return { ...guarded, width, isEmpty };
}
