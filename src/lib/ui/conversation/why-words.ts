import type { ExplanationRow } from './explanation-rows';
import { listed } from './catalogue';
import type { WithoutPiece } from './run';

/** What changes the odds by less than this is not spoken of. */
const SPEAKS = 1.5;
/** So many pieces are named on each side. */
const MOST = 2;

const odds = (probability: number) => {
	const p = Math.min(1 - 1e-9, Math.max(1e-9, probability));
	return p / (1 - p);
};

/** Pieces of evidence, by their place in the list, with the factor by which each changes the odds. */
function factors(row: ExplanationRow, without: readonly WithoutPiece[]) {
	return without.map(({ at, probabilities }) => {
		const before = row.explanations.reduce((sum, id) => sum + (probabilities[id] ?? 0), 0);
		return { at, factor: odds(row.probability) / odds(before) };
	});
}

/**
 * Why an explanation stands where it stands: which pieces of evidence speak for it and which against
 * it, by what would be believed without each.
 *
 * @param without null until that was worked out
 * @param titles of the pieces, in the order of the list
 */
export function whyWords(
	row: ExplanationRow,
	without: readonly WithoutPiece[] | null,
	titles: readonly string[]
): string {
	// Nothing is said of what was not worked out yet.
	if (!without) return '';
	const found = factors(row, without);
	const named = (pieces: typeof found) =>
		listed(pieces.slice(0, MOST).map(({ at }) => `${at + 1} (${titles[at] ?? ''})`));
	const speaksFor = found.filter(({ factor }) => factor >= SPEAKS);
	const against = found.filter(({ factor }) => factor <= 1 / SPEAKS);
	speaksFor.sort((a, b) => b.factor - a.factor);
	against.sort((a, b) => a.factor - b.factor);
	const parts = [
		speaksFor.length > 0 ? `For it: ${named(speaksFor)}.` : '',
		against.length > 0 ? `Against it: ${named(against)}.` : ''
	].filter(Boolean);
	if (parts.length > 0) return parts.join(' ');
	if (row.isGroup) return '';
	if (row.id === 'none') return 'Chance and the usual spread of kits and hands would do.';
	if (row.id === 'noneOfThese') return 'Something that stands in no list here.';
	return 'Nothing known speaks clearly for or against it.';
}
