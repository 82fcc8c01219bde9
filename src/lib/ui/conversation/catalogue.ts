import type { Cue, Fault } from '$lib/judgement';

/** The faults and questions that a diagnosis was made with, for their words. */
export type Catalogue = { faults: readonly Fault[]; cues: readonly Cue[] };

/** How a reading in question is called that was typed in. */
export const IN_QUESTION = 'The reading in question';

/** A phrase as it begins a line. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** A title as it goes on within a sentence: only its first letter is small, and none of 'pH' or 'EDTA'. */
export const midSentence = (words: string): string =>
	/^\p{Lu}{2}/u.test(words) ? words : words.charAt(0).toLowerCase() + words.slice(1);

/** What is wrong, as it stands in a sentence; an unknown fault keeps its id. */
export function faultName({ faults }: Catalogue, id: string): string {
	if (id === 'realChange') return 'a real change of the water';
	return faults.find((fault) => fault.id === id)?.name ?? id;
}

/** A question as it is asked; an unknown one keeps its id. */
export const questionOf = ({ cues }: Catalogue, id: string): string =>
	cues.find((cue) => cue.id === id)?.question ?? id;

/** 'a', 'a and b', 'a, b and c' */
export function listed(words: readonly string[], joint: 'and' | 'or' = 'and'): string {
	if (words.length < 2) return words[0] ?? '';
	return `${words.slice(0, -1).join(', ')} ${joint} ${words.at(-1)}`;
}
