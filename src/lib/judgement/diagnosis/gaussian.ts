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

/** Solves L x = b in place for a lower triangle of n rows. */
export function solveLower(factor: Float64Array, n: number, b: Float64Array): Float64Array {
	for (let i = 0; i < n; i++) {
		let sum = b[i]!;
		const at = i * n;
		for (let k = 0; k < i; k++) sum -= factor[at + k]! * b[k]!;
		b[i] = sum / factor[at + i]!;
	}
	return b;
}

/** Smaller products of pivots are taken to their logarithm before they come to nothing. */
const SMALL = 1e-200;

/** Cholesky factor in place of the lower triangle; answers ln det. */
function factorise(k: Float64Array, n: number): number {
	let lnDet = 0;
	let pivots = 1;
	for (let i = 0; i < n; i++) {
		const atI = i * n;
		for (let j = 0; j < i; j++) {
			const atJ = j * n;
			let sum = k[atI + j]!;
			for (let m = 0; m < j; m++) sum -= k[atI + m]! * k[atJ + m]!;
			k[atI + j] = sum / k[atJ + j]!;
		}
		let own = k[atI + i]!;
		for (let m = 0; m < i; m++) own -= k[atI + m]! * k[atI + m]!;
		// Rounding may leave a trace below nothing where two rows say the same.
		if (own < 1e-12) own = 1e-12;
		k[atI + i] = Math.sqrt(own);
		pivots *= own;
		if (pivots < SMALL) {
			lnDet += Math.log(pivots);
			pivots = 1;
		}
	}
	return lnDet + Math.log(pivots);
}

const dot = (a: Float64Array, b: Float64Array) => {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
	return sum;
};

/** Accounts of one model in any number of worlds; what worlds have in common is worked out once. */
export class Accounts {
	readonly #fixed = new Map<World['put'], Float64Array>();
	readonly #factor: Float64Array;
	readonly #whitened: Float64Array;

	constructor(readonly model: Model) {
		this.#factor = new Float64Array(model.count ** 2);
		this.#whitened = new Float64Array(model.count);
	}

	/** Covariance of the rows read without what factors stretch, lower triangle. */
	#fixedOf(put: World['put']): Float64Array {
		const known = this.#fixed.get(put);
		if (known) return known;
		const { count: n, size, added, share, scatter, value } = this.model;
		const values = put?.value ?? value;
		const fixed = new Float64Array(n * n);
		for (let i = 0; i < n; i++) {
			for (let j = 0; j <= i; j++)
				fixed[i * n + j] = added[i * size + j]! + values[i]! * values[j]! * share[i * size + j]!;
			fixed[i * n + i]! += scatter[i]! + (put?.variance[i] ?? 0);
		}
		this.#fixed.set(put, fixed);
		return fixed;
	}

	/** Factor and whitened readings of a world, in place; answers ln det. */
	#fill(world: World, factor: Float64Array, whitened: Float64Array): number {
		const { count: n, size, amount, amountMean, scatter, shift, value } = this.model;
		const fixed = this.#fixedOf(world.put);
		const { factor: times, timesScatter, put } = world;
		const values = put?.value ?? value;
		for (let i = 0; i < n; i++) {
			const own = times ? times[i]! : 1;
			const row = i * n;
			const inAmount = i * size;
			if (times)
				for (let j = 0; j <= i; j++)
					factor[row + j] = fixed[row + j]! + own * times[j]! * amount[inAmount + j]!;
			else for (let j = 0; j <= i; j++) factor[row + j] = fixed[row + j]! + amount[inAmount + j]!;
			if (timesScatter) factor[i * n + i]! += scatter[i]! * (timesScatter[i]! ** 2 - 1);
			whitened[i] = values[i]! - shift[i]! - own * amountMean[i]!;
		}
		const lnDet = factorise(factor, n);
		solveLower(factor, n, whitened);
		return lnDet;
	}

	/** ln of the likelihood of the readings in a world to which nothing else happened. */
	lnLikelihood(world: World): number {
		const lnDet = this.#fill(world, this.#factor, this.#whitened);
		return lnScaleOf(this.model.count, lnDet, world) - 0.5 * dot(this.#whitened, this.#whitened);
	}

	/** The whole account of a world, everything normal integrated out. */
	of(world: World): Account {
		const { count: n, tankMean, tankVariance, withTank: shared } = this.model;
		const factor = new Float64Array(n * n);
		const whitened = new Float64Array(n);
		const lnDet = this.#fill(world, factor, whitened);
		const withTank = shared.slice(0, n);
		if (world.factor) for (let i = 0; i < n; i++) withTank[i]! *= world.factor[i]!;
		solveLower(factor, n, withTank);
		return {
			world,
			factor,
			lnScale: lnScaleOf(n, lnDet, world),
			whitened,
			quadratic: dot(whitened, whitened),
			withTank,
			tankMean: tankMean + dot(withTank, whitened),
			tankVariance: tankVariance - dot(withTank, withTank)
		};
	}
}

const lnScaleOf = (n: number, lnDet: number, world: World) =>
	-0.5 * (n * LN_2PI + lnDet) + (world.put?.lnJacobian ?? 0);

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
