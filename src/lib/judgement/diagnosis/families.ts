import type { FaultSize } from '../catalogue/fault';
import { ordinaryWorld, type Model, type World } from './model';
import { normalCdf } from './normal-cdf';

/**
 * Worlds that differ by one number, with that number on a grid: a factor, or a factor on the scatter.
 * Faults that touch the same readings share the worlds and differ in the weights alone.
 */
export type Family = {
	/** The number at each node, for singles, for a pair with a shift, and for a pair of two families. */
	levels: { fine: Float64Array; middle: Float64Array; coarse: Float64Array };
	/** World at a number, for the rows of a mask. */
	worldAt: (number: number, mask: Uint8Array) => World;
	/** Rows read that it touches. */
	mask: Uint8Array;
};
export type Level = keyof Family['levels'];
export const levelNames: readonly Level[] = ['fine', 'middle', 'coarse'];

/**
 * ln of the largest factor on the grid, and its steps. Ordinary spreads of ware and bottle keep any
 * likelihood of a factor wider than about 0.02, and a sum in steps of twice a normal distribution's
 * width is right to 2 in 100, in steps of its width to 1 in 10⁸.
 */
const REACH = 0.42;
const STEPS: Record<Level, number> = { fine: 0.01, middle: 0.02, coarse: 0.03 };

/** Steps are whole numbers of the finest one, so that coarser grids have nodes of the finer. */
const gridOf = (step: number) => {
	const [reach, stride] = [Math.round(REACH / STEPS.fine), Math.round(step / STEPS.fine)];
	const count = Math.floor((2 * reach) / stride) + 1;
	return Float64Array.from({ length: count }, (_, i) => (i * stride - reach) * STEPS.fine);
};
const grids = {
	fine: gridOf(STEPS.fine),
	middle: gridOf(STEPS.middle),
	coarse: gridOf(STEPS.coarse)
};
const factorsOf = (grid: Float64Array) => grid.map((each) => Math.exp(each));
const factorLevels = {
	fine: factorsOf(grids.fine),
	middle: factorsOf(grids.middle),
	coarse: factorsOf(grids.coarse)
};

const onMask = (number: number, mask: Uint8Array): Float64Array => {
	const row = new Float64Array(mask.length).fill(1);
	for (let i = 0; i < mask.length; i++) if (mask[i]) row[i] = number;
	return row;
};
const factorWorld = (number: number, mask: Uint8Array): World => ({
	...ordinaryWorld,
	factor: onMask(number, mask)
});
const scatterWorld = (number: number, mask: Uint8Array): World => ({
	...ordinaryWorld,
	timesScatter: onMask(number, mask)
});

const sameAtAll = (nodes: Float64Array) => ({ fine: nodes, middle: nodes, coarse: nodes });

export type Weights = Record<Level, Float64Array>;

/**
 * Weight of each node of the grid for a normal distribution of the factor less 1: its density times
 * the step, which sums up right while the distribution is wider than half a step; of a narrower one,
 * what falls to the node.
 */
function massesOn(level: Level, mean: number, sd: number): Float64Array {
	const step = STEPS[level];
	if (sd > step / 2)
		return grids[level].map((ln) => {
			const z = (Math.exp(ln) - 1 - mean) / sd;
			return (step * Math.exp(ln - 0.5 * z * z)) / (sd * Math.sqrt(2 * Math.PI));
		});
	const below = (ln: number) => normalCdf((Math.exp(ln) - 1 - mean) / Math.max(sd, 1e-6));
	return grids[level].map((ln) => below(ln + step / 2) - below(ln - step / 2));
}

const known = new WeakMap<FaultSize, Weights | null>();

/** Weights of a factor on all grids; null where they do not hold it. The same sizes come again and again. */
function onGrids(size: FaultSize): Weights | null {
	const found = known.get(size);
	if (found !== undefined) return found;
	const { mean, sd } = size;
	const fine = massesOn('fine', mean, sd);
	const onGrid = fine.reduce((sum, each) => sum + each, 0);
	const weights =
		onGrid > 0.995
			? { fine, middle: massesOn('middle', mean, sd), coarse: massesOn('coarse', mean, sd) }
			: null;
	known.set(size, weights);
	return weights;
}

/** Nodes of a normal distribution in even steps over ±3 standard deviations. */
function nodesOf(mean: number, sd: number, count: number) {
	const steps = Float64Array.from({ length: count }, (_, i) => -3 + (6 * i) / (count - 1));
	const raw = steps.map((z) => Math.exp(-0.5 * z * z));
	const sum = raw.reduce((total, each) => total + each, 0);
	return { nodes: steps.map((z) => mean + z * sd), weights: raw.map((each) => each / sum) };
}

/** Families of one model, each kept once. */
export class Families {
	readonly all: Family[] = [];
	readonly #byKey = new Map<string, number>();

	constructor(readonly model: Model) {}

	#placeOf(key: string, make: () => Family): number {
		const known = this.#byKey.get(key);
		if (known !== undefined) return known;
		this.all.push(make());
		this.#byKey.set(key, this.all.length - 1);
		return this.all.length - 1;
	}

	/** A factor of 1 + share on the rows of a mask. */
	factor(mask: Uint8Array, size: FaultSize): { family: number; weights: Weights } {
		const { mean, sd } = size;
		const read = mask.slice(0, this.model.count);
		const weights = onGrids(size);
		if (weights)
			return {
				family: this.#placeOf(`factor ${read.join('')}`, () => ({
					levels: factorLevels,
					worldAt: factorWorld,
					mask: read
				})),
				weights
			};
		const far = nodesOf(mean, sd, 11);
		return {
			family: this.#placeOf(`far ${mean} ${sd} ${read.join('')}`, () => ({
				levels: sameAtAll(far.nodes.map((share) => Math.max(0, 1 + share))),
				worldAt: factorWorld,
				mask: read
			})),
			weights: sameAtAll(far.weights)
		};
	}

	/**
	 * Other water in the rows of a mask, of so much, give or take: nothing of the tank is in it, so that
	 * nothing of the tank follows from it.
	 */
	otherWater(mask: Uint8Array, mean: number, sd: number): { family: number; weights: Weights } {
		const read = mask.slice(0, this.model.count);
		return {
			family: this.#placeOf(`other ${mean} ${sd} ${read.join('')}`, () => ({
				levels: sameAtAll(Float64Array.of(1)),
				worldAt: (_, rows) => ({
					...factorWorld(0, rows),
					other: {
						mean: Float64Array.from(rows, (isIn) => (isIn ? mean : 0)),
						sd: Float64Array.from(rows, (isIn) => (isIn ? sd : 0))
					}
				}),
				mask: read
			})),
			weights: sameAtAll(Float64Array.of(1))
		};
	}

	/** Scatter so many times as wide on the rows of a mask. */
	scatter(mask: Uint8Array, mean: number, sd: number): { family: number; weights: Weights } {
		const read = mask.slice(0, this.model.count);
		const { nodes, weights } = nodesOf(mean, sd, 3);
		return {
			family: this.#placeOf(`scatter ${mean} ${sd} ${read.join('')}`, () => ({
				levels: sameAtAll(nodes.map((times) => Math.max(0.2, times))),
				worldAt: scatterWorld,
				mask: read
			})),
			weights: sameAtAll(weights)
		};
	}

	/** One world in which readings were worked out wrongly. */
	put(key: string, put: NonNullable<World['put']>): { family: number; weights: Weights } {
		return {
			family: this.#placeOf(`put ${key}`, () => ({
				levels: sameAtAll(Float64Array.of(1)),
				worldAt: () => ({ ...ordinaryWorld, put }),
				mask: new Uint8Array(this.model.count)
			})),
			weights: sameAtAll(Float64Array.of(1))
		};
	}
}
