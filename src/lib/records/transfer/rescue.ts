import type { WholeLog } from './merge';
import type { Damage } from './read-file';

/** Reads a log from outside; throws an error that says which field is damaged. */
export type ReadLog = (raw: unknown) => WholeLog;

/** A log as far as it could be read, and what could not. */
export type Rescued = { log: WholeLog | null; isWhole: boolean; damaged: Damage[] };

/**
 * A log of which damaged entries are left out, each of them named. Without its head nothing of it can
 * be read, since the leaflet stands there.
 *
 * @param where its place in the file: 'tests.17'
 */
export function rescue(raw: unknown, where: string, read: ReadLog): Rescued {
	const damage = (error: unknown, what: unknown = raw): Damage => ({
		where: placeOf(raw, where),
		problem: error instanceof Error ? error.message : String(error),
		raw: what
	});
	try {
		return { log: read(raw), isWhole: true, damaged: [] };
	} catch (error) {
		const { entries, ...head } = (raw ?? {}) as { entries?: unknown };
		if (!Array.isArray(entries) || !isReadable(read, { ...head, entries: [] }))
			return { log: null, isWhole: false, damaged: [damage(error)] };
		const damaged: Damage[] = [];
		const sound = entries.filter((entry: unknown, i) => {
			try {
				read({ ...head, entries: [entry] });
				return true;
			} catch (at) {
				const said = at instanceof Error ? at.message : String(at);
				const problem = said.replace('entries.0', `entries.${i}`);
				damaged.push(damage(new Error(problem), entry));
				return false;
			}
		});
		// Each entry can be read, but not together: the fault is nowhere in particular.
		if (damaged.length === 0) return { log: null, isWhole: false, damaged: [damage(error)] };
		return { log: read({ ...head, entries: sound }), isWhole: false, damaged };
	}
}

function isReadable(read: ReadLog, raw: unknown): boolean {
	try {
		read(raw);
		return true;
	} catch {
		return false;
	}
}

/** 'tests.17 (id 3f…)', as far as there is an id. */
function placeOf(raw: unknown, where: string): string {
	const id = typeof raw === 'object' && raw !== null && 'id' in raw ? raw.id : undefined;
	return typeof id === 'string' ? `${where} (id ${id})` : where;
}
