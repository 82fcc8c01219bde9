import { HalfdropDatabase, type RunHeader } from './database';

/** How a write went. Nothing is thrown at a screen: it says so and works on. */
export type Kept =
	| { kept: true }
	/** Another window has gone on with this run. */
	| { kept: false; because: 'elsewhere' }
	/** Storage is missing, blocked or full: from here on the page alone remembers. */
	| { kept: false; because: 'storage'; detail: string };

export type StoredRun = { header: RunHeader; entries: unknown[] };

/** Where practice runs are kept. */
export interface RunRecords {
	/** Whether what is kept will be there tomorrow. False from the first failure of storage on. */
	readonly isLasting: boolean;
	/** Begins a run; its log without entries goes into the header. */
	begin(header: RunHeader): Promise<Kept>;
	/** Adds the entry with this number; numbers count from 0 without gaps. */
	append(runId: string, seq: number, entry: unknown, header: RunHeader): Promise<Kept>;
	/** Null when there is no such run, or storage cannot be read. */
	load(runId: string): Promise<StoredRun | null>;
	/** Newest first. */
	list(): Promise<RunHeader[]>;
	/** Runs that were left before their end, newest first. */
	unfinished(): Promise<RunHeader[]>;
	/** Says whether it is gone. */
	remove(runId: string): Promise<Kept>;
}

/** Records that last as long as the page. */
class MemoryRecords implements RunRecords {
	readonly isLasting: boolean = false;
	private readonly runs = new Map<string, StoredRun>();

	begin(header: RunHeader): Promise<Kept> {
		if (this.runs.has(header.id)) return Promise.resolve({ kept: false, because: 'elsewhere' });
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

	async unfinished(): Promise<RunHeader[]> {
		return (await this.list()).filter((header) => header.state === 'unfinished');
	}

	remove(runId: string): Promise<Kept> {
		this.runs.delete(runId);
		return Promise.resolve({ kept: true });
	}
}

/** Records in the browser's database. */
class LastingRecords implements RunRecords {
	private lasts = true;
	constructor(private readonly database: HalfdropDatabase) {}

	get isLasting(): boolean {
		return this.lasts;
	}

	/** Does a write and says how it went. */
	private async keeping(write: () => Promise<unknown>): Promise<Kept> {
		try {
			await write();
			return { kept: true };
		} catch (error) {
			if (error instanceof Error && error.name === 'ConstraintError')
				return { kept: false, because: 'elsewhere' };
			this.lasts = false;
			const detail = error instanceof Error ? error.message : String(error);
			return { kept: false, because: 'storage', detail };
		}
	}

	private async reading<T>(read: () => Promise<T>, otherwise: T): Promise<T> {
		try {
			return await read();
		} catch {
			this.lasts = false;
			return otherwise;
		}
	}

	begin(header: RunHeader): Promise<Kept> {
		return this.keeping(() => this.database.runs.add(header));
	}

	append(runId: string, seq: number, entry: unknown, header: RunHeader): Promise<Kept> {
		const { database } = this;
		return this.keeping(() =>
			database.transaction('rw', database.runs, database.entries, async () => {
				await database.entries.add({ runId, seq, entry });
				await database.runs.put(header);
			})
		);
	}

	load(runId: string): Promise<StoredRun | null> {
		return this.reading(async () => {
			const header = await this.database.runs.get(runId);
			if (!header) return null;
			const rows = await this.database.entries.where('runId').equals(runId).sortBy('seq');
			return { header, entries: rows.map((row) => row.entry) };
		}, null);
	}

	list(): Promise<RunHeader[]> {
		return this.reading(
			() => this.database.runs.orderBy('changedAtEpochMs').reverse().toArray(),
			[]
		);
	}

	async unfinished(): Promise<RunHeader[]> {
		return (await this.list()).filter((header) => header.state === 'unfinished');
	}

	remove(runId: string): Promise<Kept> {
		const { database } = this;
		return this.keeping(() =>
			database.transaction('rw', database.runs, database.entries, async () => {
				await database.entries.where('runId').equals(runId).delete();
				await database.runs.delete(runId);
			})
		);
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
