import type { CombinedRepeats } from '$lib/metrology';
import type { Shown } from './shown';

/** Do the repeats agree, in a sentence; null for a single titration. */
export function agreementWords({ spread, n, of }: CombinedRepeats, shown: Shown): string | null {
	if (!spread) return null;
	const lie = `${n === 2 ? 'The two lie' : `The ${n === 3 ? 'three' : n} lie at most`} ${shown.fine(spread.range)} ${shown.unitName} apart`;
	const limit = `chance alone stays within ${shown.fine(spread.criticalRange)} in 19 of 20 such cases`;
	if (spread.agrees) return `${lie}; ${limit}. They agree.`;
	const then =
		of === 'median'
			? ` The middle ${n % 2 === 1 ? 'one' : 'of them'} is taken, not the mean.`
			: ' Do one more before you trust it.';
	return `${lie}; ${limit}. They do not agree: something happened to one of them.${then}`;
}

/** What a test for an outlier says; null where there is none, or nothing in it. */
export function outlierWords({ outlier, n }: CombinedRepeats): string | null {
	if (!outlier) return null;
	if (outlier.saysLittle)
		return `An outlier test says next to nothing of ${n === 3 ? 'three' : n} results: two that happen to be equal make the third look odd.`;
	return outlier.isSuspect
		? 'One lies farther out than chance likes. That is a reason to look for a cause, and no reason to leave it out.'
		: null;
}

/** Is another repeat worth the reagent? */
export function nextWords(
	{ next, n, expandedUncertainty, spread }: CombinedRepeats,
	shown: Shown
): string {
	const both = shown.apart(next.expandedUncertainty, expandedUncertainty);
	const [after, now] = both.map((each) => `±\u00a0${each}`);
	const instead = `${after} instead of ${now}`;
	switch (next.why) {
		case 'disagree':
			return `Another is worth it: these do not agree.`;
		case 'shrinks':
			return n === 1
				? `A repeat is worth it: it would make ${instead}, and show a slip if there was one.`
				: `Another is worth it: it would make ${instead}.`;
		case 'sharedDominates':
			if (spread?.agrees === false)
				return `Another hardly helps: ${after} at best, ${now} now. Look first for what happened to the one that lies apart.`;
			return `Another is not worth the reagent: ${after} at best, ${now} now. What is left is the same in every repeat: ware, bottle, leaflet.`;
	}
}
