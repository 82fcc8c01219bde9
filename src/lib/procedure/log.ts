import type * as z from 'zod/mini';
import { loadAs } from '../kits';
import type { Entry } from '../observation';

/** By number of a form: what makes the next form of it. */
export type Upcasts = Record<number, (old: Record<string, unknown>) => Record<string, unknown>>;

/**
 * A stored thing brought up to date step by step, then validated.
 *
 * @param name for the error: 'the log'
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadLog<TLog>(
	unknownLog: unknown,
	upcasts: Upcasts,
	schema: z.ZodMiniType<TLog>,
	name: string
): TLog {
	let raw = unknownLog;
	while (typeof raw === 'object' && raw !== null && 'format' in raw) {
		const upcast = upcasts[Number(raw.format)];
		if (!upcast) break;
		raw = upcast(raw as Record<string, unknown>);
	}
	return loadAs(raw, schema, name);
}

type LogOf<TEvent> = { entries: readonly Entry<TEvent>[] };
/** What a log says happens in it. */
type EventIn<TLog> = TLog extends LogOf<infer TEvent> ? TEvent : never;

/** The log with one more thing that happened. */
export function withEvent<TLog extends LogOf<unknown>>(
	log: TLog,
	entry: { id: string; at: number; event: EventIn<TLog> }
): TLog {
	return { ...log, entries: [...log.entries, entry] };
}

/**
 * The log with an earlier entry taken back; taking back the taking back restores it.
 *
 * @throws RangeError when there is no such entry
 */
export function withUndo<TLog extends LogOf<unknown>>(
	log: TLog,
	entry: { id: string; at: number; undoes: string }
): TLog {
	requireEntry(log, entry.undoes);
	return { ...log, entries: [...log.entries, entry] };
}

/**
 * The log with another event in the place of an earlier one; the old one stays in it.
 *
 * @throws RangeError when there is no such entry
 */
export function withAmendment<TLog extends LogOf<unknown>>(
	log: TLog,
	entry: { id: string; at: number; amends: string; event: EventIn<TLog> }
): TLog {
	requireEntry(log, entry.amends);
	return { ...log, entries: [...log.entries, entry] };
}

function requireEntry(log: LogOf<unknown>, id: string): void {
	if (!log.entries.some((entry) => entry.id === id))
		throw new RangeError(`there is no entry ${id} in this log`);
}
