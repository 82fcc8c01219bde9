import { resolve } from '$app/paths';
import type { CheckId } from '$lib/observation';

/** Pages that help with a check; each gives what it finds back to the check it was opened from. */
export function wayOf(checkId: string): Partial<Record<CheckId, { href: string; words: string }>> {
	const solution = {
		href: `${resolve('/check/solution')}#check=${checkId}`,
		words: 'How to make a known solution'
	};
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
