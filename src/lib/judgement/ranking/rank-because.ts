import type { Analysis } from '../diagnosis/analysis';
import type { Kinds } from './account-kinds';
import type { Outcomes } from './outcomes';
import { REAL_CHANGE } from '../catalogue/water-causes';

/** An explanation in plain words. */
export function explanationWords({ places, faults }: Analysis, place: number): string {
	if (place === places.noneOfThese) return 'something that is in no list';
	const present = places.faultsAt(place).map((fault) => faults[fault]!);
	if (present.length === 0) return 'nothing wrong';
	return present
		.map(({ id, name }) => (id === REAL_CHANGE ? 'a real change of the water' : name))
		.join(' with ');
}

/** Kinds that are named at most; those below are too light to be worth a word. */
const LOOKED_AT = 7;

/** The heaviest kinds, and by account its place among them (−1: none). */
export type LookedAt = { kinds: Kinds; heaviest: number[]; of: Int32Array };

export function lookedAt(kinds: Kinds): LookedAt {
	const heaviest = kinds.weight
		.map((_, kind) => kind)
		.sort((a, b) => kinds.weight[b]! - kinds.weight[a]!)
		.slice(0, LOOKED_AT);
	return { kinds, heaviest, of: kinds.of.map((kind) => heaviest.indexOf(kind)) };
}

/** What a kind of account would show, cell by cell. */
function shownBy(
	{ likelihood, cells }: Outcomes,
	weight: Float64Array,
	{ kinds, heaviest, of }: LookedAt
): Float64Array[] {
	const rows = heaviest.map(() => new Float64Array(cells));
	for (let c = 0; c < weight.length; c++) {
		const place = of[c]!;
		if (place < 0) continue;
		const share = weight[c]! / kinds.weight[heaviest[place]!]!;
		const row = rows[place]!;
		for (let k = 0; k < cells; k++) row[k]! += share * likelihood[c * cells + k]!;
	}
	return rows;
}

/** How far two distributions lie apart, 0 to 1: half the sum of differences. */
function apart(one: Float64Array, two: Float64Array): number {
	let sum = 0;
	for (let k = 0; k < one.length; k++) sum += Math.abs(one[k]! - two[k]!);
	return sum / 2;
}

/** Differences below this are rounding: of two that are alike the heavier kinds are named. */
const ALIKE = 1e-9;

/** One sentence: the two or three explanations that a check would part best. */
export function becauseOf(
	analysis: Analysis,
	outcomes: Outcomes,
	weight: Float64Array,
	looked: LookedAt
): string {
	const { kinds, heaviest } = looked;
	const shown = shownBy(outcomes, weight, looked);
	const scored = heaviest
		.flatMap((a, i) =>
			heaviest.slice(0, i).map((b, j) => {
				const score = Math.sqrt(kinds.weight[a]! * kinds.weight[b]!) * apart(shown[i]!, shown[j]!);
				return { a, b, score: Math.round(score / ALIKE) };
			})
		)
		.sort((x, y) => y.score - x.score);
	const [best] = scored;
	if (!best) return 'It looks at the same water once more.';
	const wordsOf = (kind: number) => explanationWords(analysis, kinds.explanation[kind]!);
	const names = [best.b, best.a];
	const third = scored.find(
		({ a, b, score }) => score > best.score / 2 && names.includes(a) !== names.includes(b)
	);
	if (third) names.push(names.includes(third.a) ? third.b : third.a);
	const words = [...new Set(names.map(wordsOf))].map((each) => `‘${each}’`);
	if (words.length === 1) return `It tells how large the effect is of ${words[0]}.`;
	return words.length === 2
		? `It tells ${words[0]} from ${words[1]}.`
		: `It tells ${words[0]}, ${words[1]} and ${words[2]} from each other.`;
}
