import { resolve } from '$app/paths';
import type { CheckId } from '$lib/observation';

/**
 * Pages that help with a check; each gives what it finds back to the check it was opened from.
 *
 * @param isMade whether there is a recipe for what the check is about: else none is offered
 */
export function wayOf(
	checkId: string,
	isMade: boolean
): Partial<Record<CheckId, { href: string; words: string }>> {
	const href = `${resolve('/check/solution')}#check=${checkId}`;
	if (!isMade) {
		const serves = { href, words: 'What serves as a known solution' };
		return { reference: serves, referenceBySecondMethod: serves };
	}
	const solution = { href, words: 'How to make a known solution' };
	return {
		probeTitration: {
			href: `${resolve('/check/curve')}#check=${checkId}`,
			words: 'Work out the pH curve'
		},
		reference: solution,
		referenceBySecondMethod: solution,
		standardAddition: { href: solution.href, words: 'How much to add' }
	};
}

/** The check that an address names after '#', if it names one. */
export const checkInHash = (hash: string): string | null =>
	new URLSearchParams(hash.replace(/^#/, '')).get('check');
