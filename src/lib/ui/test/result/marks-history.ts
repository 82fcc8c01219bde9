import { liveEntries, type Marks } from '$lib/observation';
import type { TestLog } from '$lib/procedure';

type Entries = TestLog['entries'];

const readIn = (entry: Entries[number], titration: number): Marks | null =>
	'event' in entry &&
	entry.event.in === 'walk' &&
	entry.event.titration === titration &&
	entry.event.event.type === 'marks.read'
		? entry.event.event.marks
		: null;

/** What was given as the marks of a titration before it was corrected, oldest first. */
export function earlierMarks({ entries }: TestLog, titration: number): Marks[] {
	const now = liveEntries(entries).findLast(
		({ event }) =>
			event.in === 'walk' && event.titration === titration && event.event.type === 'marks.read'
	);
	if (!now) return [];
	const given = entries.flatMap((entry) => {
		const marks = readIn(entry, titration);
		const isOfThis = entry.id === now.id || ('amends' in entry && entry.amends === now.id);
		return marks && isOfThis ? [marks] : [];
	});
	return given.slice(0, -1);
}
