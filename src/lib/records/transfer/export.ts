import type { LogHeader, StoredLog } from '../headers';
import type { Records } from '../open-records';
import { fileText, type CheckItem, type RunItem, type TestItem } from './file-form';

/** So many logs are read at once: the page can breathe in between. */
const batch = 500;

/**
 * Everything that is kept in this browser as one JSON text: kits, tests and checks (removed ones
 * too) and practice runs, as they are stored, damaged ones included.
 *
 * @param exportedAtEpochMs ms since 1970
 * @throws Error when storage cannot be read: a file with only a part would pass for the whole
 */
export async function exportRecords(records: Records, exportedAtEpochMs: number): Promise<string> {
	const tests: TestItem[] = [];
	for await (const stored of allOf(records.tests)) {
		const { changedAtEpochMs, where, summary, origin } = stored.header;
		tests.push({ log: logOf(stored), changedAtEpochMs, where, summary, origin });
	}
	const checks: CheckItem[] = [];
	for await (const stored of allOf(records.checks)) {
		const { changedAtEpochMs, where, summary, origin } = stored.header;
		checks.push({ log: logOf(stored), changedAtEpochMs, where, summary, origin });
	}
	const runs: RunItem[] = [];
	for await (const stored of allOf(records.runs)) {
		const { changedAtEpochMs, where, state } = stored.header;
		runs.push({ log: logOf(stored), changedAtEpochMs, where, state });
	}
	const troubleBefore = records.trouble;
	const kits = await records.kits.all();
	if (records.trouble && records.trouble !== troubleBefore) throw new Error(records.trouble.detail);
	return fileText(exportedAtEpochMs, { kits, tests, checks, runs });
}

/** The file of one test, for when it cannot be kept here. */
export function exportOne(log: unknown, exportedAtEpochMs: number): string {
	return fileText(exportedAtEpochMs, { tests: [{ log }] });
}

/** The file of one check, for when it cannot be kept here. */
export function exportOneCheck(log: unknown, exportedAtEpochMs: number): string {
	return fileText(exportedAtEpochMs, { checks: [{ log }] });
}

/** A stored log in one piece. */
export function logOf<THeader extends LogHeader>({ header, entries }: StoredLog<THeader>): object {
	return { ...(header.head as object | undefined), entries };
}

async function* allOf<THeader extends LogHeader>(shelf: {
	ids(): Promise<string[]>;
	loadMany(ids: readonly string[]): Promise<StoredLog<THeader>[]>;
}): AsyncGenerator<StoredLog<THeader>> {
	const ids = await shelf.ids();
	for (let i = 0; i < ids.length; i += batch) yield* await shelf.loadMany(ids.slice(i, i + batch));
}
