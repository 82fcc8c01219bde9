import type { Marks } from '$lib/observation';
import type { TestLog } from '$lib/procedure';

type Entries = TestLog['entries'];

/** Marks of a filling at the start, or of the reading at the end. */
type Which = 'titrant.drawn' | 'marks.read';

const marksAt = (entry: Entries[number], titration: number, which: Which): Marks | null => {
	if (!('event' in entry) || entry.event.in !== 'walk' || entry.event.titration !== titration)
		return null;
	const { event } = entry.event;
	if (event.type === 'marks.read') return which === event.type ? event.marks : null;
	if (event.type !== 'titrant.drawn' || which !== event.type) return null;
	const { sealMl, lineMl, levelMl } = event;
	return { sealMl, lineMl, levelMl };
};

/**
 * What was given in the place of an entry before it was corrected, oldest first.
 *
 * @param entryId of the entry that was corrected
 */
export function earlierMarks(
	{ entries }: TestLog,
	{ titration, which, entryId }: { titration: number; which: Which; entryId: string | undefined }
): Marks[] {
	const given = entries.flatMap((entry) => {
		const marks = marksAt(entry, titration, which);
		const isOfThis = entry.id === entryId || ('amends' in entry && entry.amends === entryId);
		return marks && isOfThis ? [marks] : [];
	});
	return given.slice(0, -1);
}
