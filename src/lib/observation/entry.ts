import * as z from 'zod/mini';

/**
 * The log is the truth: entries are appended and never changed. An entry says what happened, takes
 * an earlier one back, or puts another in its place; the old one stays readable.
 */
export type Entry<TEvent> =
	| { id: string; at: number; event: TEvent }
	| { id: string; at: number; undoes: string }
	| { id: string; at: number; amends: string; event: TEvent };

/**
 * Validator of one entry around the validator of its events.
 *
 * `at` is in whole milliseconds: since 1970 for a test at the tank, since the run began on the
 * practice bench (whose clock stands still while nobody is there).
 */
export function entrySchemaOf<TEvent>(event: z.ZodMiniType<TEvent>) {
	const id = z.string().check(z.minLength(1));
	const at = z.int().check(z.nonnegative());
	return z.union([
		z.strictObject({ id, at, event }),
		z.strictObject({ id, at, undoes: id }),
		z.strictObject({ id, at, amends: id, event })
	]);
}

/** The entries that still hold, in order, with amendments in the place of what they amend. */
export function liveEntries<TEvent>(
	entries: readonly Entry<TEvent>[]
): { id: string; at: number; event: TEvent }[] {
	const undone = new Set<string>();
	// Later entries rule: an undo that was itself undone does not count.
	for (const entry of [...entries].reverse()) {
		if ('undoes' in entry && !undone.has(entry.id)) undone.add(entry.undoes);
	}
	const amendedBy = new Map<string, TEvent>();
	for (const entry of entries) {
		if ('amends' in entry && !undone.has(entry.id)) amendedBy.set(entry.amends, entry.event);
	}
	const live: { id: string; at: number; event: TEvent }[] = [];
	for (const entry of entries) {
		if (!('event' in entry) || 'amends' in entry || undone.has(entry.id)) continue;
		live.push({ id: entry.id, at: entry.at, event: amendedBy.get(entry.id) ?? entry.event });
	}
	return live;
}
