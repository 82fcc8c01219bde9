import { LEAST_PIVOT, lnDetFrom, SMALL, solveLower } from './cholesky';
import type { Model, World } from './model';

/**
 * A world's account of the readings with everything normal integrated out exactly: the covariance of
 * the readings is factored once, and whatever else may have shifted them is a matter of a few
 * products. Standard results on normal distributions (Rasmussen and Williams 2006, appendix A.2).
 */
export type Account = {
	world: World;
	/** Lower Cholesky factor of the covariance of the rows read, row by row. */
	factor: Float64Array;
	/** −½ (n ln 2π + ln det K) + ln of the Jacobian of what was put right. */
	lnScale: number;
	/** L⁻¹ of the readings less what was expected. */
	whitened: Float64Array;
	quadratic: number;
	/** L⁻¹ of their covariance with the tank's value. */
	withTank: Float64Array;
	tankMean: number;
	tankVariance: number;
};

const LN_2PI = Math.log(2 * Math.PI);

const dot = (a: Float64Array, b: Float64Array) => {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
	return sum;
};

/** What a world's readings cannot have less of: their covariance without what factors stretch. */
type Fixed = { covariance: Float64Array; lnDetFrom: Float64Array };

/** Accounts of one model in any number of worlds; what worlds have in common is worked out once. */
export class Accounts {
	readonly #fixed = new Map<World['put'], Fixed>();
	readonly #factor: Float64Array;
	readonly #whitened: Float64Array;
	readonly #withTank: Float64Array;
	/** For the factors of a world that is looked at once. */
	readonly scratch: Float64Array;

	constructor(readonly model: Model) {
		this.#factor = new Float64Array(model.count ** 2);
		this.#whitened = new Float64Array(model.count);
		this.#withTank = new Float64Array(model.count);
		this.scratch = new Float64Array(model.count);
	}

	/** Covariance of the rows read without what factors stretch, lower triangle. */
	#fixedOf(put: World['put']): Fixed {
		const known = this.#fixed.get(put);
		if (known) return known;
		const { count: n, size, added, share, scatter, value } = this.model;
		const values = put?.value ?? value;
		const covariance = new Float64Array(n * n);
		for (let i = 0; i < n; i++) {
			for (let j = 0; j <= i; j++)
				covariance[i * n + j] =
					added[i * size + j]! + values[i]! * values[j]! * share[i * size + j]!;
			covariance[i * n + i]! += scatter[i]! + (put?.variance[i] ?? 0);
		}
		const fixed = { covariance, lnDetFrom: lnDetFrom(covariance, n) };
		this.#fixed.set(put, fixed);
		return fixed;
	}

	/**
	 * Factor and whitened readings of a world, in place, row by row; answers ln of the likelihood of
	 * the readings. A covariance to which something is added has no smaller pivot anywhere, so that the
	 * rows to come are bounded: where they cannot bring it to `least` any more, −∞ is the answer.
	 */
	#fill(world: World, factor: Float64Array, whitened: Float64Array, least: number): number {
		const { count: n, size, amount, amountMean, scatter, shift, value } = this.model;
		const { covariance, lnDetFrom } = this.#fixedOf(world.put);
		const { factor: times, timesScatter, put, other } = world;
		const values = put?.value ?? value;
		const lnConstant = -0.5 * n * LN_2PI + (put?.lnJacobian ?? 0);
		const mostAllowed = timesScatter ? Number.POSITIVE_INFINITY : 2 * (lnConstant - least);
		if (lnDetFrom[0]! > mostAllowed) return Number.NEGATIVE_INFINITY;
		let lnDet = 0;
		let pivots = 1;
		let quadratic = 0;
		for (let i = 0; i < n; i++) {
			const own = times ? times[i]! : 1;
			const row = i * n;
			const inAmount = i * size;
			if (times)
				for (let j = 0; j <= i; j++)
					factor[row + j] = covariance[row + j]! + own * times[j]! * amount[inAmount + j]!;
			else
				for (let j = 0; j <= i; j++) factor[row + j] = covariance[row + j]! + amount[inAmount + j]!;
			if (other) for (let j = 0; j <= i; j++) factor[row + j]! += other.sd[i]! * other.sd[j]!;
			if (timesScatter) factor[row + i]! += scatter[i]! * (timesScatter[i]! ** 2 - 1);
			let pivot = factor[row + i]!;
			let off = values[i]! - shift[i]! - own * amountMean[i]! - (other ? other.mean[i]! : 0);
			for (let j = 0; j < i; j++) {
				const atJ = j * n;
				let sum = factor[row + j]!;
				for (let m = 0; m < j; m++) sum -= factor[row + m]! * factor[atJ + m]!;
				sum /= factor[atJ + j]!;
				factor[row + j] = sum;
				pivot -= sum * sum;
				off -= sum * whitened[j]!;
			}
			// Rounding may leave a trace below nothing where two rows say the same.
			if (pivot < LEAST_PIVOT) pivot = LEAST_PIVOT;
			const root = Math.sqrt(pivot);
			factor[row + i] = root;
			off /= root;
			whitened[i] = off;
			quadratic += off * off;
			pivots *= pivot;
			if (pivots < SMALL) {
				lnDet += Math.log(pivots);
				pivots = 1;
			}
			if (quadratic + lnDet + Math.log(pivots) + lnDetFrom[i + 1]! > mostAllowed)
				return Number.NEGATIVE_INFINITY;
		}
		return lnConstant - 0.5 * (lnDet + Math.log(pivots) + quadratic);
	}

	/**
	 * ln of the likelihood of the readings in a world to which nothing else happened.
	 *
	 * @param least where it is below this, −∞ may be answered instead
	 */
	lnLikelihood(world: World, least = Number.NEGATIVE_INFINITY): number {
		return this.#fill(world, this.#factor, this.#whitened, least);
	}

	/** The tank's value in the world whose readings were looked at last by `lnLikelihood`. */
	tankOfLast({ factor }: World): { tankMean: number; tankVariance: number } {
		return this.#tankOf(factor, this.#factor, this.#whitened, this.#withTank);
	}

	#tankOf(
		times: World['factor'],
		factor: Float64Array,
		whitened: Float64Array,
		withTank: Float64Array
	) {
		const { count: n, tankMean, tankVariance, withTank: shared } = this.model;
		for (let i = 0; i < n; i++) withTank[i] = (times ? times[i]! : 1) * shared[i]!;
		solveLower(factor, n, withTank);
		return {
			tankMean: tankMean + dot(withTank, whitened),
			tankVariance: tankVariance - dot(withTank, withTank)
		};
	}

	/** The whole account of a world, everything normal integrated out. */
	of(world: World): Account {
		const n = this.model.count;
		const factor = new Float64Array(n * n);
		const whitened = new Float64Array(n);
		const withTank = new Float64Array(n);
		const ln = this.#fill(world, factor, whitened, Number.NEGATIVE_INFINITY);
		const quadratic = dot(whitened, whitened);
		return {
			world,
			factor,
			lnScale: ln + 0.5 * quadratic,
			whitened,
			quadratic,
			withTank,
			...this.#tankOf(world.factor, factor, whitened, withTank)
		};
	}
}

/** ln of the likelihood of the readings in a world to which nothing else happened. */
export const lnLikelihood = (account: Account): number => account.lnScale - 0.5 * account.quadratic;

/** A direction in which something may have shifted the readings, as an account sees it. */
export type Seen = {
	/** L⁻¹ of the direction, and its products with itself, the readings and the tank's value. */
	whitened: Float64Array;
	self: number;
	withReadings: number;
	withTank: number;
};

/**
 * A direction seen by an account; one that is in the vial is stretched by the world's factors.
 *
 * @param into taken for the whitened direction, where only its products are wanted
 */
export function seenBy(
	account: Account,
	direction: { shift: Float64Array; isInVial: boolean },
	into?: Float64Array
): Seen {
	const n = account.whitened.length;
	const whitened = into ?? new Float64Array(n);
	const { shift } = direction;
	const factor = direction.isInVial ? account.world.factor : null;
	for (let i = 0; i < n; i++) whitened[i] = factor ? shift[i]! * factor[i]! : shift[i]!;
	solveLower(account.factor, n, whitened);
	return {
		whitened,
		self: dot(whitened, whitened),
		withReadings: dot(whitened, account.whitened),
		withTank: dot(whitened, account.withTank)
	};
}

export const productOf = (a: Seen, b: Seen): number => dot(a.whitened, b.whitened);

/**
 * ln of the most that the readings can have once something has shifted them along a direction, however
 * likely its size: at the size that fits them best.
 */
export const lnMostWith = (account: Account, { self, withReadings }: Seen): number =>
	account.lnScale - 0.5 * (account.quadratic - (self > 0 ? withReadings ** 2 / self : 0));
