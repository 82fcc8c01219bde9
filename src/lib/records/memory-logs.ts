import { withoutHead, type LogShelf } from './log-store';
import { isElsewhere, isKept, standsAlone, type Kept } from './kept';
import type { LogHeader, StoredLog, Whole } from './headers';

/** Logs that last as long as the page. */
export class MemoryLogs<THeader extends LogHeader> implements LogShelf<THeader> {
	readonly isLasting: boolean = false;
	protected readonly logs = new Map<string, StoredLog<THeader>>();

	begin(header: Whole<THeader>): Promise<Kept> {
		return this.addAll([{ header, entries: [] }]);
	}

	append(id: string, seq: number, entry: unknown, header: THeader): Promise<Kept> {
		return this.appendAll(id, seq, [entry], header);
	}

	appendAll(
		id: string,
		fromSeq: number,
		entries: readonly unknown[],
		header: THeader
	): Promise<Kept> {
		const log = this.logs.get(id);
		if (!log || fromSeq > log.entries.length) return Promise.resolve(standsAlone);
		if (fromSeq < log.entries.length) return Promise.resolve(isElsewhere);
		const { head } = log.header;
		this.logs.set(id, {
			header: { ...withoutHead(header), head },
			entries: [...log.entries, ...entries]
		});
		return Promise.resolve(isKept);
	}

	load(id: string): Promise<StoredLog<THeader> | null> {
		return Promise.resolve(this.logs.get(id) ?? null);
	}

	ids(): Promise<string[]> {
		return Promise.resolve([...this.logs.keys()]);
	}

	loadMany(ids: readonly string[]): Promise<StoredLog<THeader>[]> {
		return Promise.resolve(ids.flatMap((id) => this.logs.get(id) ?? []));
	}

	addAll(logs: readonly StoredLog<THeader>[]): Promise<Kept> {
		const isOneTaken = logs.some(({ header }) => this.logs.has(header.id));
		if (isOneTaken) return Promise.resolve(isElsewhere);
		for (const log of logs) this.logs.set(log.header.id, log);
		return Promise.resolve(isKept);
	}

	protected headers(): THeader[] {
		return [...this.logs.values()].map(({ header }) => withoutHead(header));
	}
}
