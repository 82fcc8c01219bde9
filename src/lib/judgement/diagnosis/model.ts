import type { Loading, Row } from './row';
import { TANK } from './tank-amount';

/**
 * Rows as numbers: what they share, as covariances. The first `count` rows were read; those behind
 * them are readings that could be had, which nothing is known of yet.
 */
export type Model = {
	rows: readonly Row[];
	/** Rows read, and all rows. */
	count: number;
	size: number;
	value: Float64Array;
	shift: Float64Array;
	amountMean: Float64Array;
	/** Covariance of what was in the vials, row by row. */
	amount: Float64Array;
	/** Covariance of all that adds to a reading, the scatter not among it. */
	added: Float64Array;
	/** Covariance of shares of the value. */
	share: Float64Array;
	scatter: Float64Array;
	/** Covariance of what was in the vials with the tank's true value. */
	withTank: Float64Array;
	tankMean: number;
	tankVariance: number;
};

/** Sum over shared names of the products of what two rows have of them. */
function covarianceOf(loadings: readonly (readonly Loading[])[]): Float64Array {
	const size = loadings.length;
	const found = new Float64Array(size * size);
	const byName = new Map<string, { row: number; amount: number }[]>();
	loadings.forEach((each, row) => {
		for (const { of, amount } of each) byName.set(of, [...(byName.get(of) ?? []), { row, amount }]);
	});
	for (const members of byName.values())
		for (const a of members)
			for (const b of members) {
				const at = a.row * size + b.row;
				found[at] = (found[at] ?? 0) + a.amount * b.amount;
			}
	return found;
}

/** The model of rows that were read and rows that could be. */
export function modelOf(
	read: readonly Row[],
	possible: readonly Row[],
	prior: { mean: number; standardDeviation: number }
): Model {
	const rows = [...read, ...possible];
	const of = (pick: (row: Row) => number) => Float64Array.from(rows, pick);
	const tankLoading = (row: Row) =>
		row.amountLoadings.reduce((sum, { of: name, amount }) => sum + (name === TANK ? amount : 0), 0);
	return {
		rows,
		count: read.length,
		size: rows.length,
		value: of((row) => row.value),
		shift: of((row) => row.shift),
		amountMean: of((row) => row.amountMean),
		amount: covarianceOf(rows.map((row) => row.amountLoadings)),
		added: covarianceOf(rows.map((row) => row.loadings)),
		share: covarianceOf(rows.map((row) => row.shares)),
		scatter: of((row) => row.scatterVariance),
		withTank: of((row) => tankLoading(row) * prior.standardDeviation),
		tankMean: prior.mean,
		tankVariance: prior.standardDeviation ** 2
	};
}

/**
 * How a world differs from the ordinary in a way that is no shift: factors on what was in the vials,
 * factors on the scatter, and readings that were worked out wrongly, put right.
 */
export type World = {
	factor: Float64Array | null;
	timesScatter: Float64Array | null;
	/** Readings put right, what is uncertain about that, and ln of the Jacobian. */
	put: { value: Float64Array; variance: Float64Array; lnJacobian: number } | null;
	/** What the vials hold that is not of the tank: one unknown content, its mean and standard deviation row by row. */
	other: { mean: Float64Array; sd: Float64Array } | null;
};
export const ordinaryWorld: World = { factor: null, timesScatter: null, put: null, other: null };

const product = (
	a: Float64Array | null,
	b: Float64Array | null,
	into: Float64Array | undefined
): Float64Array | null => {
	if (!a || !b) return a ?? b;
	const both = into ?? new Float64Array(a.length);
	for (let i = 0; i < a.length; i++) both[i] = a[i]! * b[i]!;
	return both;
};

/** What a world's other water comes to where the factors of a second world stretch it too. */
const stretched = ({ other }: World, { factor }: World): World['other'] =>
	other && factor
		? { mean: product(other.mean, factor, undefined)!, sd: product(other.sd, factor, undefined)! }
		: other;

/**
 * Both at once; null when both would put readings right, or both fill the vials with other water.
 *
 * @param into taken for their factor, for a world that is looked at once and not kept
 */
export function bothWorlds(a: World, b: World, into?: Float64Array): World | null {
	if ((a.put && b.put) || (a.other && b.other)) return null;
	return {
		factor: product(a.factor, b.factor, into),
		timesScatter: product(a.timesScatter, b.timesScatter, undefined),
		put: a.put ?? b.put,
		other: stretched(a, b) ?? stretched(b, a)
	};
}

/** Covariance of readings i and j in a world, of tests that could be had too. */
export function readingCovariance(model: Model, world: World, i: number, j: number): number {
	const { size, amount, added, share, scatter } = model;
	const at = i * size + j;
	const values = world.put?.value ?? model.value;
	const factor = (world.factor?.[i] ?? 1) * (world.factor?.[j] ?? 1);
	const ofShares = values[i]! * values[j]! * share[at]!;
	const own =
		i === j ? scatter[i]! * (world.timesScatter?.[i] ?? 1) ** 2 + (world.put?.variance[i] ?? 0) : 0;
	const ofOther = world.other ? world.other.sd[i]! * world.other.sd[j]! : 0;
	return factor * amount[at]! + added[at]! + ofShares + ofOther + own;
}
