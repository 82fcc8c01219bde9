import { resolve } from '$app/paths';
import type { CheckId } from '$lib/observation';

/** Pages that help with a check; each gives what it finds back to the check it was opened from. */
export function wayOf(checkId: string): Partial<Record<CheckId, { href: string; words: string }>> {
	const solution = {
		href: `${resolve('/check/solution')}#check=${checkId}`,
		words: 'How to make a known solution'
	};
	return {
		reference: solution,
		referenceBySecondMethod: solution,
		standardAddition: { href: solution.href, words: 'How much to add' }
	};
}
