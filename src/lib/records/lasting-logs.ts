import Dexie, { type Table } from 'dexie';
import type { EntryRow, HeadRow, HalfdropDatabase, LogIdField } from './database';
import type { Health } from './health';
import { isElsewhere, isKept, standsAlone, type Kept } from './kept';
import { inTheirPlaces, withoutHead, type LogShelf } from './log-store';
import type { LogHeader, StoredLog, Whole } from './headers';

/** The three tables in which logs of one sort lie. */
export type LogTables<THeader extends LogHeader> = {
	headers: Table<THeader, string>;
	heads: Table<HeadRow, string>;
	entries: Table<EntryRow, [string, number]>;
	idField: LogIdField;
};

/** Logs in the browser's database. */
export class LastingLogs<THeader extends LogHeader> implements LogShelf<THeader> {
	/** @param announce tells other windows that a log has gone on here */
	constructor(
		protected readonly database: HalfdropDatabase,
		protected readonly tables: LogTables<THeader>,
		protected readonly health: Health,
		private readonly announce: (id: string) => void
	) {}

	get isLasting(): boolean {
		return this.health.trouble === null;
	}

	begin(header: Whole<THeader>): Promise<Kept> {
		return this.addAll([{ header, entries: [] }]);
	}

	append(id: string, seq: number, entry: unknown, header: THeader): Promise<Kept> {
		return this.appendAll(id, seq, [entry], header);
	}

	async appendAll(
		id: string,
		fromSeq: number,
		entries: readonly unknown[],
		header: THeader
	): Promise<Kept> {
		const kept = await this.writing(async () => {
			if (!(await this.reaches(id, fromSeq))) return standsAlone;
			await this.tables.entries.bulkAdd(this.rowsOf(id, fromSeq, entries));
			await this.tables.headers.put(withoutHead(header));
			return isKept;
		});
		if (kept.kept || kept.because === 'elsewhere') this.announce(id);
		return kept;
	}

	addAll(logs: readonly StoredLog<THeader>[]): Promise<Kept> {
		const { headers, heads, entries } = this.tables;
		return this.writing(async () => {
			const ids = logs.map(({ header }) => header.id);
			if ((await headers.bulkGet(ids)).some(Boolean)) return isElsewhere;
			await headers.bulkAdd(logs.map(({ header }) => withoutHead(header)));
			await heads.bulkAdd(logs.map(({ header }) => ({ id: header.id, head: header.head })));
			await entries.bulkAdd(logs.flatMap((log) => this.rowsOf(log.header.id, 0, log.entries)));
			return isKept;
		});
	}

	load(id: string): Promise<StoredLog<THeader> | null> {
		return this.health.reading(() => this.find(id), null);
	}

	ids(): Promise<string[]> {
		return this.tables.headers.toCollection().primaryKeys();
	}

	loadMany(ids: readonly string[]): Promise<StoredLog<THeader>[]> {
		const { headers, heads, entries } = this.tables;
		return this.database.transaction('r', headers, heads, entries, async () =>
			(await Promise.all(ids.map((id) => this.find(id)))).filter((log) => log !== null)
		);
	}

	protected entriesOf(id: string) {
		const key = `[${this.tables.idField}+seq]`;
		return this.tables.entries.where(key).between([id, Dexie.minKey], [id, Dexie.maxKey]);
	}

	protected writing(write: () => Promise<Kept>): Promise<Kept> {
		const { headers, heads, entries } = this.tables;
		return this.health.keeping(() =>
			this.database.transaction('rw', headers, heads, entries, write)
		);
	}

	private async find(id: string): Promise<StoredLog<THeader> | null> {
		const [header, head, rows] = await Promise.all([
			this.tables.headers.get(id),
			this.tables.heads.get(id),
			this.entriesOf(id).toArray()
		]);
		if (!header) return null;
		// A run of the first version holds its head in the header.
		const whole = { ...header, head: head ? head.head : header.head };
		return { header: whole, entries: inTheirPlaces(rows) };
	}

	/** Whether all before this number is there. */
	private async reaches(id: string, seq: number): Promise<boolean> {
		const header = await this.tables.headers.get(id);
		if (!header) return false;
		// A run of the first version holds its head in the header, which is about to be replaced.
		if (header.head !== undefined) await this.tables.heads.put({ id, head: header.head });
		return seq === 0 || (await this.tables.entries.get([id, seq - 1])) !== undefined;
	}

	private rowsOf(id: string, fromSeq: number, entries: readonly unknown[]): EntryRow[] {
		return entries.map((entry, i) => ({ [this.tables.idField]: id, seq: fromSeq + i, entry }));
	}
}
