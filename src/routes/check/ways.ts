import { resolve } from '$app/paths';
import type { Analyte } from '$lib/kits';
import type { CheckId } from '$lib/observation';
import { hasCurve, isAddedHere, isMadeHere } from './made-here';

/**
 * Pages that help with a check; each gives what it finds back to the check it was opened from.
 *
 * @param analyte what the check is about: without a recipe for it none is offered
 */
export function wayOf(
	checkId: string,
	analyte: Analyte
): Partial<Record<CheckId, { href: string; words: string }>> {
	const href = `${resolve('/check/solution')}#check=${checkId}`;
	if (!isMadeHere(analyte)) {
		const serves = { href, words: 'What serves as a known solution' };
		return { reference: serves, referenceBySecondMethod: serves };
	}
	const solution = { href, words: 'How to make a known solution' };
	return {
		...(hasCurve(analyte)
			? {
					probeTitration: {
						href: `${resolve('/check/curve')}#check=${checkId}`,
						words: 'Work out the pH curve'
					}
				}
			: {}),
		reference: solution,
		referenceBySecondMethod: solution,
		...(isAddedHere(analyte)
			? { standardAddition: { href: solution.href, words: 'How much to add' } }
			: {})
	};
}

/** The check that an address names after '#', if it names one. */
export const checkInHash = (hash: string): string | null =>
	new URLSearchParams(hash.replace(/^#/, '')).get('check');
