import type { Analysis } from '../diagnosis/analysis';
import { UNFORESEEN, type Part } from '../diagnosis/parts';
import {
	dot,
	effectOf,
	possibleIn,
	worldOfAccount,
	type Effect,
	type PossibleSeen
} from '../diagnosis/possible-in-world';
import { blankShifted, integrate } from '../diagnosis/shifts';
import { unforeseenWorld } from '../diagnosis/unforeseen';

/**
 * What the heaviest accounts foresee of tests that could be had: for each account and each of those
 * tests, a normal distribution, and how it goes together with the tank's value.
 */
export type Foreseen = {
	/** Of the accounts, summing to 1. */
	weight: Float64Array;
	explanation: Int32Array;
	tankMean: Float64Array;
	tankVariance: Float64Array;
	/** Tests that could be had. */
	tests: number;
	/** By account and test. */
	mean: Float64Array;
	withTank: Float64Array;
	/** By account, test and test. */
	covariance: Float64Array;
};

/** So much of all weight is looked at, in no more accounts than this. */
const ENOUGH_WEIGHT = 0.99;
const MOST_ACCOUNTS = 200;

/** Places of the heaviest accounts. */
function heaviest({ components, weights }: Analysis): number[] {
	const least = components.length > 4000 ? 1e-5 : 0;
	const places: number[] = [];
	for (let i = 0; i < components.length; i++) if (weights[i]! >= least) places.push(i);
	places.sort((a, b) => weights[b]! - weights[a]! || a - b);
	let sum = 0;
	const end = places.findIndex((place) => (sum += weights[place]!) >= ENOUGH_WEIGHT);
	return places.slice(0, Math.min(MOST_ACCOUNTS, end < 0 ? places.length : end + 1));
}

const known = new WeakMap<Analysis, Foreseen>();

/** What the accounts that matter foresee; worked out once for an analysis. */
export function foresee(analysis: Analysis): Foreseen {
	const found = known.get(analysis) ?? foreseeNow(analysis);
	known.set(analysis, found);
	return found;
}

function foreseeNow(analysis: Analysis): Foreseen {
	const { model, components, weights, parts } = analysis;
	const places = heaviest(analysis);
	const tests = model.size - model.count;
	const whole = places.reduce((sum, place) => sum + weights[place]!, 0);
	const found: Foreseen = {
		weight: Float64Array.from(places, (place) => weights[place]! / whole),
		explanation: Int32Array.from(places, (place) => components.explanation[place]!),
		tankMean: Float64Array.from(places, (place) => components.tankMean[place]!),
		tankVariance: Float64Array.from(places, (place) => components.tankVariance[place]!),
		tests,
		mean: new Float64Array(places.length * tests),
		withTank: new Float64Array(places.length * tests),
		covariance: new Float64Array(places.length * tests * tests)
	};
	const worlds = new Map<string, PossibleSeen>();
	const into = blankShifted();
	places.forEach((place, row) => {
		const [one, two] = [parts[components.part1[place]!], parts[components.part2[place]!]];
		const isUnforeseen = one?.fault === UNFORESEEN;
		const key = [
			isUnforeseen,
			components.behind[place],
			components.node1[place]! < 0 ? '' : components.part1[place],
			components.node1[place],
			components.node2[place]! < 0 ? '' : components.part2[place],
			components.node2[place]
		].join(' ');
		let possible = worlds.get(key);
		if (!possible) {
			possible = possibleIn(
				analysis,
				isUnforeseen ? unforeseenWorld(model) : worldOfAccount(analysis, place)
			);
			worlds.set(key, possible);
		}
		const effects = [one, two].flatMap((part) => effectOf(analysis, part, possible) ?? []);
		const [first, second] = effects;
		const sizes = first
			? integrate(
					possible.account,
					first.sized,
					second?.sized ?? null,
					second ? dot(first.sized.seen.whitened, second.sized.seen.whitened) : 0,
					into
				)
			: null;
		fill(found, row, possible, sizes ? { first: first!, second, sizes } : null);
		for (const part of [one, two]) misread(found, row, analysis, part);
	});
	return found;
}

function fill(
	found: Foreseen,
	row: number,
	possible: PossibleSeen,
	shifted: {
		first: Effect;
		second: Effect | undefined;
		sizes: ReturnType<typeof blankShifted>;
	} | null
): void {
	const { tests } = found;
	const start = row * tests;
	const s = shifted?.sizes;
	const first = shifted?.first.on;
	const second = shifted?.second?.on;
	const h1 = shifted?.first.sized.seen.withTank ?? 0;
	const h2 = shifted?.second?.sized.seen.withTank ?? 0;
	for (let g = 0; g < tests; g++) {
		const a = first ? first[g]! : 0;
		const b = second ? second[g]! : 0;
		found.mean[start + g] = possible.mean[g]! + (s ? s.size1 * a + s.size2 * b : 0);
		found.withTank[start + g] =
			possible.withTank[g]! - (s ? h1 * (s.c11 * a + s.c12 * b) + h2 * (s.c12 * a + s.c22 * b) : 0);
		for (let k = 0; k <= g; k++) {
			const c = first ? first[k]! : 0;
			const d = second ? second[k]! : 0;
			const covariance =
				possible.covariance[g * tests + k]! +
				(s ? s.c11 * a * c + s.c12 * (a * d + b * c) + s.c22 * b * d : 0);
			found.covariance[(start + g) * tests + k] = covariance;
			found.covariance[(start + k) * tests + g] = covariance;
		}
	}
}

/** A habit of working values out wrongly would be in the tests that could be had as well. */
function misread(found: Foreseen, row: number, { model }: Analysis, part: Part | undefined): void {
	if (part?.piece.kind !== 'worlds' || !part.piece.reads) return;
	const { tests } = found;
	const { times, plus } = part.piece.reads;
	for (let g = 0; g < tests; g++) {
		const by = times[model.count + g]!;
		const at = row * tests + g;
		found.mean[at] = by * found.mean[at]! + plus[model.count + g]!;
		found.withTank[at]! *= by;
		for (let k = 0; k < tests; k++) {
			found.covariance[at * tests + k]! *= by;
			found.covariance[(row * tests + k) * tests + g]! *= by;
		}
	}
}
