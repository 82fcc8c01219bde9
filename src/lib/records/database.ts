import Dexie, { type Table } from 'dexie';
import type { CheckHeader, KitRow, RunHeader, TestHeader } from './headers';

export type HeadRow = { id: string; head: unknown };
/** One entry of a log, under the log's id and its number: added, never overwritten. */
export type EntryRow = { seq: number; entry: unknown } & Partial<Record<LogIdField, string>>;
/** The field of an entry's row that bears the id of its log. */
export type LogIdField = 'runId' | 'testId' | 'checkId';

/**
 * The database of this browser. A list must stay quick with twenty thousand tests, so headers are
 * small and heads, each with a whole leaflet, lie in tables of their own.
 */
export class HalfdropDatabase extends Dexie {
	runs!: Table<RunHeader, string>;
	runHeads!: Table<HeadRow, string>;
	entries!: Table<EntryRow, [string, number]>;
	tests!: Table<TestHeader, string>;
	testHeads!: Table<HeadRow, string>;
	testEntries!: Table<EntryRow, [string, number]>;
	kits!: Table<KitRow, [string, number]>;
	checks!: Table<CheckHeader, string>;
	checkHeads!: Table<HeadRow, string>;
	checkEntries!: Table<EntryRow, [string, number]>;

	constructor(name = 'halfdrop') {
		super(name);
		this.version(1).stores({
			runs: 'id, scenarioId, state, changedAtEpochMs',
			// Two windows that write the same log meet here: the second to add a number is refused.
			entries: '[runId+seq], runId'
		});
		// Runs of version 1 stay as they are and are read as they are: a window of the older version
		// may still be open and go on with one.
		this.version(2).stores({
			runHeads: 'id',
			// The id at the end orders tests that began in the same moment, so that pages neither skip
			// nor repeat one.
			tests:
				'id, [state+startedAtEpochMs+id], [state+analyte+startedAtEpochMs+id], ' +
				'[state+kitId+startedAtEpochMs]',
			testHeads: 'id',
			testEntries: '[testId+seq]',
			kits: '[kitId+version]'
		});
		// Adds tables and touches none: a browser that has read much must not wait.
		this.version(3).stores({
			checks: 'id, [state+startedAtEpochMs+id], [state+analyte+startedAtEpochMs+id]',
			checkHeads: 'id',
			checkEntries: '[checkId+seq]'
		});
	}
}
