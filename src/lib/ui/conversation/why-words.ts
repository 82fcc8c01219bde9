import { checkWords } from './check-words';
import type { ExplanationRow } from './explanation-rows';
import { listed, midSentence } from './catalogue';
import type { WithoutPiece } from './run';

/** What changes the odds by less than this is not spoken of. */
const SPEAKS = 1.5;
/** What sets it apart from nothing wrong by so much speaks clearly for it, whatever else it speaks for; judgement. */
const SPEAKS_CLEARLY = 3;
/** So many pieces are named on each side. */
const MOST = 2;

const odds = (probability: number) => {
	const p = Math.min(1 - 1e-9, Math.max(1e-9, probability));
	return p / (1 - p);
};

/** Pieces of evidence, by their place in the list, with the factor by which each changes the odds. */
function factors(
	{ probability, explanations }: Pick<ExplanationRow, 'probability' | 'explanations'>,
	without: readonly WithoutPiece[]
) {
	return without.map(({ at, probabilities }) => {
		const before = explanations.reduce((sum, id) => sum + (probabilities[id] ?? 0), 0);
		return { at, factor: odds(probability) / odds(before) };
	});
}

/**
 * Pieces that speak clearly of what a group names first, while the group as a whole hides it: what makes
 * one of them less likely makes the others more so.
 */
function ofTheFirst({ leading }: ExplanationRow, without: readonly WithoutPiece[]) {
	if (!leading) return [];
	const { explanation, probability } = leading;
	return factors({ probability, explanations: [explanation] }, without);
}

/** What is known beside the row and its pieces. */
export type Beside = {
	/** Places of pieces that agree with the reading in question within the ± of both. */
	agreeing?: ReadonlySet<number>;
	/** How likely it is that nothing is wrong, with all pieces. */
	nothingWrong?: number;
};

/**
 * Pieces that speak clearly for a row against there being nothing wrong, though they change its chance
 * little: they speak as much for others beside it, which share that chance with it.
 */
function forOthersToo(
	{ id, probability, explanations }: ExplanationRow,
	without: readonly WithoutPiece[],
	nothingWrong: number
) {
	if (id === 'none' || id === 'noneOfThese') return [];
	const least = 1e-9;
	return without
		.map(({ at, probabilities }) => {
			const before = explanations.reduce((sum, each) => sum + (probabilities[each] ?? 0), 0);
			const ratioBefore = Math.max(least, before) / Math.max(least, probabilities.none ?? 0);
			return { at, factor: probability / Math.max(least, nothingWrong) / ratioBefore };
		})
		.filter(({ factor }) => factor >= SPEAKS_CLEARLY)
		.sort((a, b) => b.factor - a.factor);
}

/**
 * Why an explanation stands where it stands: which pieces of evidence speak for it and which against
 * it, by what would be believed without each.
 *
 * @param without null until that was worked out
 * @param titles of the pieces, in the order of the list
 * @param beside what agrees, and how likely it is that nothing is wrong
 */
export function whyWords(
	row: ExplanationRow,
	without: readonly WithoutPiece[] | null,
	titles: readonly string[],
	{ agreeing = new Set(), nothingWrong }: Beside = {}
): string {
	// Nothing is said of what was not worked out yet.
	if (!without) return '';
	const found = factors(row, without);
	const named = (pieces: typeof found) =>
		listed(pieces.slice(0, MOST).map(({ at }) => `${at + 1} (${titles[at] ?? ''})`));
	const speaksFor = found.filter(({ factor }) => factor >= SPEAKS);
	const isOfNone = row.id === 'none';
	// What agrees within its ± may make nothing wrong less likely than it was; it is no evidence of a fault.
	const against = found.filter(
		({ factor, at }) => factor <= 1 / SPEAKS && !(isOfNone && agreeing.has(at))
	);
	speaksFor.sort((a, b) => b.factor - a.factor);
	against.sort((a, b) => a.factor - b.factor);
	const hidden = ofTheFirst(row, without)
		.filter(({ factor, at }) => factor <= 1 / SPEAKS && !against.some((each) => each.at === at))
		.sort((a, b) => a.factor - b.factor);
	const parts = [
		speaksFor.length > 0 ? `For it: ${named(speaksFor)}.` : '',
		against.length > 0 ? `Against it: ${named(against)}.` : '',
		hidden.length > 0 ? `Against the first of these: ${named(hidden)}.` : ''
	].filter(Boolean);
	if (parts.length > 0) return parts.join(' ');
	const shared = nothingWrong === undefined ? [] : forOthersToo(row, without, nothingWrong);
	if (shared.length > 0)
		return `For it, and as much for others that come to the same: ${named(shared)}.`;
	if (row.isGroup) return noneAlone(found, titles);
	if (isOfNone) return 'Chance and the usual spread of kits and hands would do.';
	if (row.id === 'noneOfThese') return 'Something that stands in no list here.';
	return noneAlone(found, titles);
}

/** What changes the odds by less than this is as good as nothing. */
const WHISPERS = 1.05;

/** Where no piece alone decides it: the weightiest, or two that pull against each other. */
function noneAlone(found: ReturnType<typeof factors>, titles: readonly string[]): string {
	const name = ({ at }: { at: number }) => `${at + 1} (${titles[at] ?? ''})`;
	const sorted = [...found].sort((a, b) => b.factor - a.factor);
	const most = sorted.at(0);
	const least = sorted.at(-1);
	const up = most && most.factor >= WHISPERS ? most : null;
	const down = least && least.factor <= 1 / WHISPERS ? least : null;
	if (up && down)
		return `No piece decides it alone: ${name(up)} pulls a little for it, ${name(down)} a little against it.`;
	if (up) return `No piece decides it alone. The weightiest: ${name(up)}, a little for it.`;
	if (down) return `No piece decides it alone. The weightiest: ${name(down)}, a little against it.`;
	return 'No single piece of what is known changes how likely it is.';
}

/**
 * Of a row for several causes: which question or check would tell them apart, what costs least first, or that
 * none of those known would.
 */
export function apartWords({ splitBy, askFirst }: ExplanationRow): string {
	const check = splitBy && midSentence(checkWords[splitBy].title);
	if (askFirst)
		return `Nothing known so far tells these apart. What may: the question “${askFirst}”${check ? ` After that: ${check}.` : ''}`;
	return check
		? `Nothing known so far tells these apart. What would: ${check}.`
		: 'Nothing known so far tells these apart, and no check listed here would tell much.';
}
