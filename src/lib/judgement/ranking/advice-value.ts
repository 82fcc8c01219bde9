import type { Analyte } from '../../kits';
import { adviceLoss, type Act } from '../decision/advice-loss';
import type { Band } from '../decision/decision';
import type { Foreseen } from './foresee';
import type { Outcomes } from './outcomes';

const acts: readonly Act[] = ['leave', 'raise', 'lower'];

/** Nodes and weights of the normal distribution, exact for polynomials up to degree 5. Source: Abramowitz and Stegun 1964, table 25.10, rescaled. */
const nodes = [-Math.sqrt(3), 0, Math.sqrt(3)];
const nodeWeights = [1 / 6, 2 / 3, 1 / 6];

const STEPS = 240;

/** What each act costs over the values a tank may have, looked up instead of worked out each time. */
export class AdviceLosses {
	readonly #low: number;
	readonly #step: number;
	/** By value and act. */
	readonly #table: Float64Array;

	constructor(low: number, high: number, band: Band, analyte: Analyte) {
		this.#low = low;
		this.#step = (high - low) / STEPS;
		this.#table = Float64Array.from({ length: (STEPS + 1) * acts.length }, (_, at) =>
			adviceLoss(
				acts[at % acts.length]!,
				low + Math.floor(at / acts.length) * this.#step,
				band,
				analyte
			)
		);
	}

	/** What the best act for each value is expected to cost if the value is normal. */
	leastIfKnown(mean: number, sd: number): number {
		let sum = 0;
		const own = new Float64Array(acts.length);
		for (let n = 0; n < nodes.length; n++) {
			own.fill(0);
			this.addTo(own, 1, mean + sd * nodes[n]!, 0);
			sum += nodeWeights[n]! * own[leastOf(own)]!;
		}
		return sum;
	}

	/** Adds what each act is expected to cost if the value is normal, times a weight. */
	addTo(sums: Float64Array, weight: number, mean: number, sd: number): void {
		const table = this.#table;
		const width = acts.length;
		for (let n = 0; n < nodes.length; n++) {
			const place = Math.min(
				STEPS - 1e-9,
				Math.max(0, (mean + sd * nodes[n]! - this.#low) / this.#step)
			);
			const at = Math.floor(place);
			const times = weight * nodeWeights[n]!;
			const above = times * (place - at);
			const below = times - above;
			const row = at * width;
			for (let a = 0; a < width; a++)
				sums[a]! += below * table[row + a]! + above * table[row + width + a]!;
		}
	}
}

const leastOf = (sums: Float64Array): number => {
	let best = 0;
	for (let a = 1; a < sums.length; a++) if (sums[a]! < sums[best]!) best = a;
	return best;
};

/** The act that is expected to cost least as things stand, and what each costs under each account. */
export type AdviceNow = {
	act: Act;
	loss: number;
	byAccount: Float64Array;
	/** Minutes that knowing the tank's true value would be expected to save: more than any check can. */
	mostToSave: number;
};

/** Advice changes where the other act is better by at least so many minutes; less is a toss-up. Judgement. */
const TOSS_UP = 1;

export function adviceNow(
	{ weight, tankMean, tankVariance }: Foreseen,
	losses: AdviceLosses
): AdviceNow {
	const width = acts.length;
	const byAccount = new Float64Array(weight.length * width);
	const sums = new Float64Array(width);
	let ifKnown = 0;
	for (let c = 0; c < weight.length; c++) {
		const own = byAccount.subarray(c * width, (c + 1) * width);
		losses.addTo(own, 1, tankMean[c]!, Math.sqrt(tankVariance[c]!));
		for (let a = 0; a < width; a++) sums[a]! += weight[c]! * own[a]!;
		ifKnown += weight[c]! * losses.leastIfKnown(tankMean[c]!, Math.sqrt(tankVariance[c]!));
	}
	const best = leastOf(sums);
	const mostToSave = Math.max(0, sums[best]! - ifKnown);
	return { act: acts[best]!, loss: sums[best]!, byAccount, mostToSave };
}

/**
 * What a check is worth by the advice: minutes that it is expected to save, its cost not taken off,
 * and the chance that it changes the advice.
 *
 * Source: expected value of sample information, Raiffa and Schlaifer 1961.
 */
export function adviceValue(
	outcomes: Outcomes,
	weight: Float64Array,
	losses: AdviceLosses,
	now: AdviceNow
): { minutes: number; changes: number } {
	const { cells, likelihood, tank } = outcomes;
	const width = acts.length;
	let after = 0;
	let changes = 0;
	const sums = new Float64Array(width);
	for (let k = 0; k < cells; k++) {
		sums.fill(0);
		let ofCell = 0;
		for (let c = 0; c < weight.length; c++) {
			const p = weight[c]! * likelihood[c * cells + k]!;
			if (p < 1e-6) continue;
			ofCell += p;
			if (tank) losses.addTo(sums, p, tank.mean[c * cells + k]!, tank.sd[c]!);
			else for (let a = 0; a < width; a++) sums[a]! += p * now.byAccount[c * width + a]!;
		}
		const best = leastOf(sums);
		after += sums[best]!;
		const stays = sums[acts.indexOf(now.act)]!;
		if (stays - sums[best]! > TOSS_UP * ofCell) changes += ofCell;
	}
	return { minutes: Math.max(0, now.loss - after), changes };
}
