import type { CheckEntry } from '$lib/procedure';

/** How an entry came about stands in its id, so that undoing never undoes an undoing. */
export const UNDO = 'undo';

/** Ids of entries that no longer hold; taking back the taking back restores them. */
function undoneIn(entries: readonly CheckEntry[]): Set<string> {
	const undone = new Set<string>();
	for (const entry of [...entries].reverse())
		if ('undoes' in entry && !undone.has(entry.id)) undone.add(entry.undoes);
	return undone;
}

/**
 * What one tap said, or took back, last, as far as it still holds: it shares one time. What the check
 * began with stays, and can be taken back piece by piece.
 */
export function lastSaid(entries: readonly CheckEntry[]): readonly CheckEntry[] {
	const undone = undoneIn(entries);
	const beginning = entries[0]?.at;
	const said = entries.filter(
		({ id, at }) => !undone.has(id) && !id.startsWith(UNDO) && at !== beginning
	);
	const last = said.at(-1);
	return said.filter(({ at }) => at === last?.at);
}
