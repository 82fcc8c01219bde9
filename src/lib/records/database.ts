import Dexie, { type EntityTable, type Table } from 'dexie';

/** What a list needs to know of a run, without playing its log. */
export type RunHeader = {
	id: string;
	scenarioId: string;
	startedAtEpochMs: number;
	changedAtEpochMs: number;
	state: 'unfinished' | 'finished';
	/** A line for the list: 'step 5, drop'. */
	where: string;
	/** The log without its entries, as it is to be written back. */
	head: unknown;
};

/** One entry of a run's log: added, never overwritten. */
export type RunRow = { runId: string; seq: number; entry: unknown };

export class HalfdropDatabase extends Dexie {
	runs!: EntityTable<RunHeader, 'id'>;
	entries!: Table<RunRow, [string, number]>;

	constructor(name = 'halfdrop') {
		super(name);
		this.version(1).stores({
			runs: 'id, scenarioId, state, changedAtEpochMs',
			// Two windows that write the same run meet here: the second to add a number is refused.
			entries: '[runId+seq], runId'
		});
	}
}
