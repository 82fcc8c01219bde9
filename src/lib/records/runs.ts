import { LastingLogs } from './lasting-logs';
import type { LogStore } from './log-store';
import { withoutHead } from './log-store';
import { MemoryLogs } from './memory-logs';
import { isKept, type Kept } from './kept';
import type { RunHeader } from './headers';

/** Where practice runs are kept. */
export interface RunRecords extends LogStore<RunHeader> {
	/** Changed last first. */
	list(): Promise<RunHeader[]>;
	/** Runs that were left before their end, changed last first. */
	unfinished(): Promise<RunHeader[]>;
	/** Says whether it is gone. */
	remove(id: string): Promise<Kept>;
}

const isUnfinished = ({ state }: RunHeader) => state === 'unfinished';

export class MemoryRuns extends MemoryLogs<RunHeader> implements RunRecords {
	list(): Promise<RunHeader[]> {
		const newestFirst = this.headers().sort((a, b) => b.changedAtEpochMs - a.changedAtEpochMs);
		return Promise.resolve(newestFirst);
	}
	async unfinished(): Promise<RunHeader[]> {
		return (await this.list()).filter(isUnfinished);
	}
	remove(id: string): Promise<Kept> {
		this.logs.delete(id);
		return Promise.resolve(isKept);
	}
}

export class LastingRuns extends LastingLogs<RunHeader> implements RunRecords {
	async list(): Promise<RunHeader[]> {
		const rows = await this.health.reading(
			() => this.tables.headers.orderBy('changedAtEpochMs').reverse().toArray(),
			[]
		);
		return rows.map((row) => withoutHead(row));
	}
	async unfinished(): Promise<RunHeader[]> {
		return (await this.list()).filter(isUnfinished);
	}
	remove(id: string): Promise<Kept> {
		return this.writing(async () => {
			await this.entriesOf(id).delete();
			await this.tables.heads.delete(id);
			await this.tables.headers.delete(id);
			return isKept;
		});
	}
}
