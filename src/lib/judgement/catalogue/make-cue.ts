import type { Cue } from './fault';

/** A cue with its rows of likelihoods written in the order of the answers. */
export type CueInRows = Omit<Cue, 'answers' | 'likelihoods'> & {
	answers: readonly (readonly [id: string, words: string])[];
	/** For every fault not named, and for none. */
	otherwise: readonly number[];
	byFault: Record<string, readonly number[]>;
};

/**
 * A cue from its rows.
 *
 * @throws RangeError naming cue and fault when a row is not as long as there are answers
 */
export function cueOf({ answers, otherwise, byFault, ...cue }: CueInRows): Cue {
	const row = (fault: string, numbers: readonly number[]): Record<string, number> => {
		if (numbers.length !== answers.length)
			throw new RangeError(
				`${cue.id}, ${fault} must hold ${answers.length} likelihoods; found ${numbers.length}`
			);
		return Object.fromEntries(answers.map(([id], i) => [id, numbers[i] ?? 0]));
	};
	return {
		...cue,
		answers: answers.map(([id, words]) => ({ id, words })),
		likelihoods: {
			otherwise: row('otherwise', otherwise),
			byFault: Object.fromEntries(
				Object.entries(byFault).map(([fault, numbers]) => [fault, row(fault, numbers)])
			)
		}
	};
}

/** The same row for a slip as a habit and as a single one. */
export const bothOf = (habitId: string, numbers: readonly number[]) => ({
	[habitId]: numbers,
	[`${habitId}Once`]: numbers
});

/** Everybody may say so; it tells nothing. */
export const unknown = ['unknown', 'I don’t know'] as const;
