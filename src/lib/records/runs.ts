import { HalfdropDatabase, type RunHeader } from './database';

/** How a write went. Nothing is thrown at a screen: it says so and works on. */
export type Kept =
	| { kept: true }
	/** Another window has gone on with this run. */
	| { kept: false; because: 'elsewhere' }
	/** Storage is missing, blocked or full: the run lives in memory only. */
	| { kept: false; because: 'storage'; detail: string };

export type StoredRun = { header: RunHeader; entries: unknown[] };

/** Where practice runs are kept. */
export interface RunRecords {
	/** Whether what is kept will be there tomorrow. */
	readonly isLasting: boolean;
	begin(header: RunHeader): Promise<Kept>;
	/** Adds the entry with this number; numbers count from 0 without gaps. */
	append(runId: string, seq: number, entry: unknown, header: RunHeader): Promise<Kept>;
	load(runId: string): Promise<StoredRun | null>;
	/** Newest first. */
	list(): Promise<RunHeader[]>;
	remove(runId: string): Promise<void>;
}

function refusal(error: unknown): Kept {
	const name = error instanceof Error ? error.name : '';
	if (name === 'ConstraintError') return { kept: false, because: 'elsewhere' };
	return {
		kept: false,
		because: 'storage',
		detail: error instanceof Error ? error.message : String(error)
	};
}

class LastingRecords implements RunRecords {
	readonly isLasting = true;
	constructor(private readonly database: HalfdropDatabase) {}

	async begin(header: RunHeader): Promise<Kept> {
		try {
			await this.database.runs.add(header);
			return { kept: true };
		} catch (error) {
			return refusal(error);
		}
	}

	async append(runId: string, seq: number, entry: unknown, header: RunHeader): Promise<Kept> {
		const { database } = this;
		try {
			await database.transaction('rw', database.runs, database.entries, async () => {
				await database.entries.add({ runId, seq, entry });
				await database.runs.put(header);
			});
			return { kept: true };
		} catch (error) {
			return refusal(error);
		}
	}

	async load(runId: string): Promise<StoredRun | null> {
		const header = await this.database.runs.get(runId);
		if (!header) return null;
		const rows = await this.database.entries.where('runId').equals(runId).sortBy('seq');
		return { header, entries: rows.map((row) => row.entry) };
	}

	async list(): Promise<RunHeader[]> {
		return this.database.runs.orderBy('changedAtEpochMs').reverse().toArray();
	}

	async remove(runId: string): Promise<void> {
		const { database } = this;
		await database.transaction('rw', database.runs, database.entries, async () => {
			await database.entries.where('runId').equals(runId).delete();
			await database.runs.delete(runId);
		});
	}
}

class MemoryRecords implements RunRecords {
	readonly isLasting = false;
	private readonly runs = new Map<string, StoredRun>();

	begin(header: RunHeader): Promise<Kept> {
		this.runs.set(header.id, { header, entries: [] });
		return Promise.resolve({ kept: true });
	}

	append(runId: string, seq: number, entry: unknown, header: RunHeader): Promise<Kept> {
		const run = this.runs.get(runId) ?? { header, entries: [] };
		if (seq !== run.entries.length) return Promise.resolve({ kept: false, because: 'elsewhere' });
		this.runs.set(runId, { header, entries: [...run.entries, entry] });
		return Promise.resolve({ kept: true });
	}

	load(runId: string): Promise<StoredRun | null> {
		return Promise.resolve(this.runs.get(runId) ?? null);
	}

	list(): Promise<RunHeader[]> {
		const headers = [...this.runs.values()].map((run) => run.header);
		return Promise.resolve(headers.sort((a, b) => b.changedAtEpochMs - a.changedAtEpochMs));
	}

	remove(runId: string): Promise<void> {
		this.runs.delete(runId);
		return Promise.resolve();
	}
}

/**
 * Opens the records of this browser; where storage is missing or refused, records that last as long
 * as the page does, so that work goes on. `isLasting` says which.
 */
export async function openRecords(name?: string): Promise<RunRecords> {
	try {
		const database = new HalfdropDatabase(name);
		await database.open();
		return new LastingRecords(database);
	} catch {
		return new MemoryRecords();
	}
}
