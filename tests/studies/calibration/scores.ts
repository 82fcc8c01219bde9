import type { Chance } from '../chance';
import type { Judged } from './judge';

export const meanOf = (numbers: readonly number[]): number =>
	numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
export const shareOf = <T>(all: readonly T[], is: (each: T) => boolean): number =>
	all.filter(is).length / all.length;

/** No log score is worse than that of a thousandth of a thousandth. */
const LEAST = 1e-6;
export const logScore = (p: number): number => -Math.log(Math.max(LEAST, p));

export type Scores = {
	top1: number;
	/** Mean of −ln of the probability of what was right; smaller is better. */
	log: number;
	/** Mean squared distance over all verdicts, 0 to 2; smaller is better. */
	brier: number;
};

export const scoresOf = (judged: readonly Judged[]): Scores => ({
	top1: shareOf(judged, ({ isClass }) => isClass),
	log: meanOf(judged.map(({ pRight }) => logScore(pRight))),
	brier: meanOf(judged.map(({ brier }) => brier))
});

/**
 * A forecaster who knows how often each verdict is right, and nothing of any case.
 *
 * @param among the cases that the rates are counted in: these very ones when left out, which flatters
 *   the forecaster where they are few
 */
export function baseRateScores(
	judged: readonly Judged[],
	among: readonly Pick<Judged, 'right'>[] = judged
): Scores {
	const rates = new Map<string, number>();
	for (const { right } of among) {
		const [verdict = ''] = right;
		rates.set(verdict, (rates.get(verdict) ?? 0) + 1 / among.length);
	}
	const [commonest = ''] = [...rates].sort((a, b) => b[1] - a[1])[0] ?? [];
	const each = judged.map(({ right }) => {
		const p = right.reduce((sum, verdict) => sum + (rates.get(verdict) ?? 0), 0);
		let brier = (1 - p) ** 2;
		for (const [verdict, rate] of rates) if (!right.includes(verdict)) brier += rate ** 2;
		return { isClass: right.includes(commonest), log: logScore(p), brier };
	});
	return {
		top1: shareOf(each, ({ isClass }) => isClass),
		log: meanOf(each.map(({ log }) => log)),
		brier: meanOf(each.map(({ brier }) => brier))
	};
}

export const BINS = 10;
export type Bin = {
	count: number;
	/** Mean probability said, and share that was right; NaN where the bin is empty. */
	said: number;
	right: number;
	/** Where the share lies in 95 of 100 sets, had all that was said been exactly so. */
	band: readonly [number, number];
};
export type Reliability = {
	bins: readonly Bin[];
	/** Expected calibration error, and what a perfectly calibrated forecaster shows with as many cases. */
	ece: number;
	perfectEce: { mean: number; upper: number };
	/** Mean of what was said less the share that was right: above 0 is too sure. */
	tooSure: number;
};

type Said = { p: number; isRight: boolean };
const binOf = (p: number) => Math.min(BINS - 1, Math.floor(p * BINS));

function eceOf(said: readonly Said[], places: readonly number[]): { ece: number; right: number[] } {
	const count = new Float64Array(BINS);
	const sum = new Float64Array(BINS);
	const right = new Float64Array(BINS);
	said.forEach(({ p, isRight }, i) => {
		const b = places[i] ?? 0;
		count[b]! += 1;
		sum[b]! += p;
		if (isRight) right[b]! += 1;
	});
	let ece = 0;
	for (let b = 0; b < BINS; b++) ece += Math.abs(sum[b]! - right[b]!) / said.length;
	return { ece, right: Array.from(right, (each, b) => each / count[b]!) };
}

const quantile = (sorted: readonly number[], q: number) =>
	sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? Number.NaN;

/**
 * How often what is said with a probability comes true, in ten bins of it, with consistency bands:
 * the same cases with outcomes drawn by the probabilities themselves, again and again.
 *
 * Source: Bröcker and Smith 2007, Weather and Forecasting 22:651.
 */
export function reliabilityOf(said: readonly Said[], chance: Chance, draws = 1000): Reliability {
	const places = said.map(({ p }) => binOf(p));
	const { ece, right } = eceOf(said, places);
	const eces: number[] = [];
	const shares: number[][] = Array.from({ length: BINS }, () => []);
	for (let d = 0; d < draws; d++) {
		const drawn = eceOf(
			said.map(({ p }) => ({ p, isRight: chance.uniform() < p })),
			places
		);
		eces.push(drawn.ece);
		drawn.right.forEach((each, b) => shares[b]!.push(each));
	}
	eces.sort((a, b) => a - b);
	const bins = shares.map((drawn, b): Bin => {
		const own = said.filter((_, i) => places[i] === b);
		const sorted = drawn.sort((x, y) => x - y);
		return {
			count: own.length,
			said: meanOf(own.map(({ p }) => p)),
			right: right[b] ?? Number.NaN,
			band: [quantile(sorted, 0.025), quantile(sorted, 0.975)]
		};
	});
	return {
		bins,
		ece,
		perfectEce: { mean: meanOf(eces), upper: quantile(eces, 0.95) },
		tooSure: meanOf(said.map(({ p }) => p)) - shareOf(said, ({ isRight }) => isRight)
	};
}

/** Standard error of a share. */
export const shareError = (share: number, count: number): number =>
	Math.sqrt((share * (1 - share)) / count);
