import type { TestEntry, TestLog } from '$lib/procedure';
import { testEventWords } from './event-words';

/** One entry of a test's log, in words. */
export type SaidLine = {
	id: string;
	/** ms since 1970. */
	at: number;
	words: string;
	/** Which titration it belongs to, counted from 1; null for the test as a whole. */
	titration: number | null;
	/** It holds, it was taken back, or other words stand in its place now. */
	state: 'holds' | 'takenBack' | 'replaced';
};

/**
 * Every entry of a test's log in the order in which it was made, also those that were taken back or
 * corrected, with the words that they had then.
 */
export function saidLines({ entries, kit }: TestLog): SaidLine[] {
	const wordsOf = (entry: TestEntry | undefined): string =>
		entry === undefined
			? 'an entry that is missing'
			: 'event' in entry
				? testEventWords(entry.event, kit)
				: wordsOf(byId.get(entry.undoes));
	const byId = new Map(entries.map((entry) => [entry.id, entry]));
	const undone = undoneIn(entries);
	const replaced = new Set(
		entries.flatMap((entry) => ('amends' in entry && !undone.has(entry.id) ? [entry.amends] : []))
	);
	return entries.map((entry): SaidLine => {
		const words =
			'undoes' in entry
				? `Taken back: ${wordsOf(byId.get(entry.undoes))}`
				: 'amends' in entry
					? `Corrected to: ${wordsOf(entry)}`
					: wordsOf(entry);
		return {
			id: entry.id,
			at: entry.at,
			words,
			titration: titrationOf(entry),
			state: undone.has(entry.id) ? 'takenBack' : replaced.has(entry.id) ? 'replaced' : 'holds'
		};
	});
}

const titrationOf = (entry: TestEntry): number | null =>
	'event' in entry && entry.event.in === 'walk' ? entry.event.titration + 1 : null;

/** Entries that were taken back; a taking back that was itself taken back does not count. */
function undoneIn(entries: readonly TestEntry[]): Set<string> {
	const undone = new Set<string>();
	for (const entry of [...entries].reverse()) {
		if ('undoes' in entry && !undone.has(entry.id)) undone.add(entry.undoes);
	}
	return undone;
}
