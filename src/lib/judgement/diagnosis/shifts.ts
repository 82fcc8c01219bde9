import type { Account, Seen } from './gaussian';

/** Up to two unknown sizes with normal priors, each along a direction. */
export type Sized = { seen: Seen; mean: number; variance: number };

/** Likelihood and the tank's value once the sizes are integrated out, and what became of the sizes. */
export type Shifted = {
	lnLikelihood: number;
	tankMean: number;
	tankVariance: number;
	/** Posterior of the sizes: means, and covariance (11, 12, 22). */
	size1: number;
	size2: number;
	c11: number;
	c12: number;
	c22: number;
};

/**
 * Integrates up to two sizes out of an account, exactly: y ~ N(m + X b, K) with b ~ N(μ, T) has
 * ln det(I + T XᵀK⁻¹X) more in its determinant, and b given y is normal with covariance
 * C = (I + T Q)⁻¹ T, Q = XᵀK⁻¹X, about μ + C (XᵀK⁻¹(y − m) − Q μ).
 *
 * Source: standard results on linear models with normal priors (Lindley and Smith 1972). A variance
 * of 0, or a direction that touches no reading, is allowed.
 *
 * @param cross product of the two directions as the account sees them; 0 for one alone
 * @param into taken for the answer, so that thousands of these cost no memory
 */
export function integrate(
	account: Account,
	one: Sized,
	two: Sized | null,
	cross: number,
	into: Shifted
): Shifted {
	const q11 = one.seen.self;
	const q22 = two ? two.seen.self : 0;
	const q12 = two ? cross : 0;
	const m1 = one.mean;
	const m2 = two ? two.mean : 0;
	const t1 = one.variance;
	const t2 = two ? two.variance : 0;
	const p1 = one.seen.withReadings;
	const p2 = two ? two.seen.withReadings : 0;
	const s1 = p1 - q11 * m1 - q12 * m2;
	const s2 = p2 - q12 * m1 - q22 * m2;
	const det = (1 + t1 * q11) * (1 + t2 * q22) - t1 * t2 * q12 * q12;
	const c11 = (t1 * (1 + t2 * q22)) / det;
	const c22 = (t2 * (1 + t1 * q11)) / det;
	const c12 = (-t1 * t2 * q12) / det;
	const quadratic =
		account.quadratic -
		2 * (m1 * p1 + m2 * p2) +
		m1 * m1 * q11 +
		2 * m1 * m2 * q12 +
		m2 * m2 * q22 -
		(s1 * s1 * c11 + 2 * s1 * s2 * c12 + s2 * s2 * c22);
	const h1 = one.seen.withTank;
	const h2 = two ? two.seen.withTank : 0;
	into.size1 = m1 + c11 * s1 + c12 * s2;
	into.size2 = m2 + c12 * s1 + c22 * s2;
	into.c11 = c11;
	into.c12 = c12;
	into.c22 = c22;
	into.lnLikelihood = account.lnScale - 0.5 * (Math.log(det) + quadratic);
	into.tankMean = account.tankMean - h1 * into.size1 - h2 * into.size2;
	into.tankVariance = account.tankVariance + h1 * h1 * c11 + 2 * h1 * h2 * c12 + h2 * h2 * c22;
	return into;
}

export const blankShifted = (): Shifted => ({
	lnLikelihood: 0,
	tankMean: 0,
	tankVariance: 0,
	size1: 0,
	size2: 0,
	c11: 0,
	c12: 0,
	c22: 0
});
