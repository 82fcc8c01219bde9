import type { Foreseen } from './foresee';
import { normalCdf } from '../diagnosis/normal-cdf';

/** What a check may show, in cells, and how likely each cell is under each account. */
export type Outcomes = {
	/** By account and cell; each account's row sums to 1. */
	likelihood: Float64Array;
	cells: number;
	/**
	 * The tank's value once the cell is known: its mean by account and cell, its standard deviation by
	 * account. Null where the outcome tells of the tank through the causes alone.
	 */
	tank: { mean: Float64Array; sd: Float64Array } | null;
};

/** Cells in one dimension; the widest distributions are cut where next to nothing lies. */
const CELLS = 14;
const CELLS_OF_TWO = 8;
const REACH = 2.6;

/** Middle and reach of what a test may show, over all accounts. */
function rangeOf({ weight, mean, covariance, tests }: Foreseen, test: number): [number, number] {
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	for (let c = 0; c < weight.length; c++) {
		if (weight[c]! < 2e-3) continue;
		const sd = Math.sqrt(covariance[(c * tests + test) * tests + test]!);
		low = Math.min(low, mean[c * tests + test]! - REACH * sd);
		high = Math.max(high, mean[c * tests + test]! + REACH * sd);
	}
	return [low, high];
}

/** Edges between cells: as finely as the narrowest account that matters needs, no finer. */
function edgesOf(foreseen: Foreseen, test: number, most: number): Float64Array {
	const [low, high] = rangeOf(foreseen, test);
	return Float64Array.from({ length: most - 1 }, (_, i) => low + ((high - low) * (i + 1)) / most);
}

function cellMasses(mean: number, sd: number, edges: Float64Array): Float64Array {
	const masses = new Float64Array(edges.length + 1);
	let below = 0;
	for (let k = 0; k < edges.length; k++) {
		const upTo = normalCdf((edges[k]! - mean) / sd);
		masses[k] = Math.max(0, upTo - below);
		below = upTo;
	}
	masses[edges.length] = Math.max(0, 1 - below);
	return masses;
}

const middleOf = (edges: Float64Array, cell: number): number => {
	const width = edges.length > 1 ? edges[1]! - edges[0]! : 0;
	return cell === 0 ? edges[0]! - width / 2 : edges[cell - 1]! + width / 2;
};

const known = new WeakMap<Foreseen, Outcomes[]>();

/** Outcomes of one test; worked out once for what is foreseen. */
export function outcomesOf(foreseen: Foreseen, test: number): Outcomes {
	const found = known.get(foreseen) ?? [];
	known.set(foreseen, found);
	return (found[test] ??= outcomesNow(foreseen, test));
}

function outcomesNow(foreseen: Foreseen, test: number): Outcomes {
	const { weight, mean, covariance, withTank, tests } = foreseen;
	const edges = edgesOf(foreseen, test, CELLS);
	const found = emptyOutcomes(weight.length, CELLS);
	for (let c = 0; c < weight.length; c++) {
		const at = c * tests + test;
		const variance = covariance[at * tests + test]!;
		const slope = withTank[at]! / variance;
		found.likelihood.set(cellMasses(mean[at]!, Math.sqrt(variance), edges), c * CELLS);
		for (let k = 0; k < CELLS; k++)
			found.tank.mean[c * CELLS + k] =
				foreseen.tankMean[c]! + slope * (middleOf(edges, k) - mean[at]!);
		found.tank.sd[c] = Math.sqrt(Math.max(0, foreseen.tankVariance[c]! - slope * withTank[at]!));
	}
	return found;
}

/** Outcomes of two tests together: the second by what the first leaves of it. */
export function outcomesOfTwo(foreseen: Foreseen, one: number, two: number): Outcomes {
	const { weight, mean, covariance, withTank, tests } = foreseen;
	const edges1 = edgesOf(foreseen, one, CELLS_OF_TWO);
	const edges2 = edgesOf(foreseen, two, CELLS_OF_TWO);
	const cells = CELLS_OF_TWO ** 2;
	const found = emptyOutcomes(weight.length, cells);
	for (let c = 0; c < weight.length; c++) {
		const [at1, at2] = [c * tests + one, c * tests + two];
		const v1 = covariance[at1 * tests + one]!;
		const v12 = covariance[at1 * tests + two]!;
		const slope = v12 / v1;
		const v2 = Math.max(1e-9, covariance[at2 * tests + two]! - slope * v12);
		const tank1 = withTank[at1]! / v1;
		const tank2 = (withTank[at2]! - slope * withTank[at1]!) / v2;
		const first = cellMasses(mean[at1]!, Math.sqrt(v1), edges1);
		found.tank.sd[c] = Math.sqrt(
			Math.max(0, foreseen.tankVariance[c]! - tank1 ** 2 * v1 - tank2 ** 2 * v2)
		);
		for (let k = 0; k < CELLS_OF_TWO; k++) {
			const off1 = middleOf(edges1, k) - mean[at1]!;
			const mean2 = mean[at2]! + slope * off1;
			const second = cellMasses(mean2, Math.sqrt(v2), edges2);
			for (let m = 0; m < CELLS_OF_TWO; m++) {
				const cell = c * cells + k * CELLS_OF_TWO + m;
				found.likelihood[cell] = first[k]! * second[m]!;
				found.tank.mean[cell] =
					foreseen.tankMean[c]! + tank1 * off1 + tank2 * (middleOf(edges2, m) - mean2);
			}
		}
	}
	return found;
}

type OfTank = Outcomes & { tank: NonNullable<Outcomes['tank']> };
const emptyOutcomes = (accounts: number, cells: number): OfTank => ({
	likelihood: new Float64Array(accounts * cells),
	cells,
	tank: { mean: new Float64Array(accounts * cells), sd: new Float64Array(accounts) }
});

/**
 * A check may go wrong itself, and then shows whatever such checks show, and tells nothing of the
 * tank.
 */
export function lessSure(outcomes: Outcomes, foreseen: Foreseen, goesWrong: number): Outcomes {
	const { likelihood, cells, tank } = outcomes;
	const { weight } = foreseen;
	const whole = new Float64Array(cells);
	for (let c = 0; c < weight.length; c++)
		for (let k = 0; k < cells; k++) whole[k]! += weight[c]! * likelihood[c * cells + k]!;
	const found = emptyOutcomes(weight.length, cells);
	if (tank) found.tank.sd.set(tank.sd);
	for (let c = 0; c < weight.length; c++) {
		const before = foreseen.tankMean[c]!;
		for (let k = 0; k < cells; k++) {
			const at = c * cells + k;
			const right = (1 - goesWrong) * likelihood[at]!;
			const all = right + goesWrong * whole[k]!;
			found.likelihood[at] = all;
			if (tank && all > 0) found.tank.mean[at] = before + (right / all) * (tank.mean[at]! - before);
		}
	}
	return tank ? found : { ...found, tank: null };
}
