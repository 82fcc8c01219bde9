import type { Analysis } from '../diagnosis/analysis';
import type { Kinds } from './account-kinds';
import type { Foreseen } from './foresee';
import { informationOf } from './information';
import type { Outcomes } from './outcomes';
import { reasonOfSize, reasonOfThree, reasonOfTwo, type Together } from './reason-words';
import { REAL_CHANGE } from '../catalogue/water-causes';

/** The causes of an explanation, in plain words. */
function causesOf({ places, faults }: Analysis, place: number): Together {
	if (place === places.noneOfThese) return ['something that is in no list'];
	return places
		.faultsAt(place)
		.map((fault) => faults[fault]!)
		.map(({ id, name }) => (id === REAL_CHANGE ? 'a real change of the water' : name));
}

/** Kinds that are set against each other; a lighter one is named only beside the heaviest, where no other is. */
const LOOKED_AT = 7;

/**
 * The kinds, the heaviest first, each by the explanation that is named for it: by account its place among them (−1:
 * none, as of accounts that bear another name than their kind), and the weight of what is named.
 */
export type LookedAt = { kinds: Kinds; heaviest: number[]; of: Int32Array; named: number[] };

export function lookedAt(kinds: Kinds, { explanation, weight }: Foreseen): LookedAt {
	const heaviest = kinds.weight
		.map((_, kind) => kind)
		.sort((a, b) => kinds.weight[b]! - kinds.weight[a]!);
	const of = kinds.of.map((kind, c) =>
		kinds.explanation[kind] === explanation[c] ? heaviest.indexOf(kind) : -1
	);
	const named = heaviest.map((_, place) =>
		of.reduce((sum, at, c) => (at === place ? sum + weight[c]! : sum), 0)
	);
	return { kinds, heaviest, of, named };
}

/** What each that is named would show, cell by cell. */
function shownBy(
	{ likelihood, cells }: Outcomes,
	weight: Float64Array,
	{ heaviest, of, named }: LookedAt
): Float64Array[] {
	const rows = heaviest.map(() => new Float64Array(cells));
	for (let c = 0; c < weight.length; c++) {
		const place = of[c]!;
		if (place < 0) continue;
		const share = weight[c]! / named[place]!;
		const row = rows[place]!;
		for (let k = 0; k < cells; k++) row[k]! += share * likelihood[c * cells + k]!;
	}
	return rows;
}

/** Bits from here on, of the one that even chances hold, are told apart; two readings one standard deviation apart make 0.16. Judgement. */
const TOLD_APART = 0.1;

const EVEN = Float64Array.of(0.5, 0.5);
const TWO = Int32Array.of(0, 1);

/** What an outcome would tell of which of two it is, were they alike in chance: 0 to 1 bit. */
function toldApart(one: Float64Array, two: Float64Array): number {
	const likelihood = Float64Array.of(...one, ...two);
	return informationOf({ likelihood, cells: one.length }, EVEN, TWO);
}

type Pair = { a: number; b: number; score: number };

/** Pairs of places that a check parts, the one that is worth most first. */
function partedPairs(outcomes: Outcomes, weight: Float64Array, looked: LookedAt): Pair[] {
	const { kinds, heaviest } = looked;
	const shown = shownBy(outcomes, weight, looked);
	const weightOf = (place: number) => kinds.weight[heaviest[place]!]!;
	const parted = (a: number, b: number): Pair[] => {
		const bits = toldApart(shown[a]!, shown[b]!);
		const score = Math.sqrt(weightOf(a) * weightOf(b)) * bits;
		return bits >= TOLD_APART ? [{ a, b, score }] : [];
	};
	const likely = shown.slice(0, LOOKED_AT);
	const pairs = likely.flatMap((_, a) => likely.slice(0, a).flatMap((__, b) => parted(a, b)));
	const found = pairs.length > 0 ? pairs : shown.flatMap((_, a) => (a > 0 ? parted(a, 0) : []));
	return found.sort((x, y) => y.score - x.score);
}

/** One short sentence: the two or three explanations that a check would part best. */
export function becauseOf(
	analysis: Analysis,
	outcomes: Outcomes,
	weight: Float64Array,
	looked: LookedAt
): string {
	const pairs = partedPairs(outcomes, weight, looked);
	const [best] = pairs;
	if (!best) return 'It tells little of what is likely here.';
	const at = (place: number) =>
		causesOf(analysis, looked.kinds.explanation[looked.heaviest[place]!]!);
	const isSame = (one: Together, two: Together) => one.join() === two.join();
	const [one, two] = [at(best.b), at(best.a)];
	if (isSame(one, two)) return reasonOfSize(one);
	const isBeside = ({ a, b }: Pair, place: number) => a === place || b === place;
	const otherOf = ({ a, b }: Pair) => [a, b].find((each) => each !== best.a && each !== best.b);
	const third = pairs.find((pair) => {
		const other = otherOf(pair);
		return (
			pair.score > best.score / 2 &&
			other !== undefined &&
			(isBeside(pair, best.a) || isBeside(pair, best.b)) &&
			![one, two].some((each) => isSame(each, at(other)))
		);
	});
	const place = third && otherOf(third);
	if (!third || place === undefined) return reasonOfTwo(one, two);
	const isOfFirst = isBeside(third, best.b);
	const [parted, rest] = isOfFirst ? [one, two] : [two, one];
	const areAllParted = pairs.some(
		(pair) => isBeside(pair, place) && isBeside(pair, isOfFirst ? best.a : best.b)
	);
	const three = areAllParted
		? ([one, two, at(place)] as const)
		: ([parted, rest, at(place)] as const);
	return reasonOfThree(three, areAllParted) ?? reasonOfTwo(one, two);
}
