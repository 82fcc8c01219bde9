import { loadRunLog, type RunLog } from './run-log';
import { liveEntries } from '../observation';

/**
 * A run as text for a link: everything that decides it, and nothing that only this device knows.
 * Entries are numbered anew, so the text stays short; times stay as they were.
 */
export function encodeRun(log: RunLog): string {
	const entries = liveEntries(log.entries).map(({ at, event }, i) => ({
		id: i.toString(36),
		at,
		event
	}));
	return JSON.stringify({ ...log, entries });
}

/**
 * A run from such text.
 *
 * @throws RangeError when it is not one, or is damaged
 */
export function decodeRun(text: string): RunLog {
	let parsed: unknown;
	try {
		parsed = JSON.parse(text);
	} catch {
		throw new RangeError('the link is cut off or damaged: its run cannot be read');
	}
	return loadRunLog(parsed);
}
