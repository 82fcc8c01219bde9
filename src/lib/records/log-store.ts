import type { Kept } from './kept';
import type { LogHeader, StoredLog, Whole } from './headers';

/** Where logs of one sort are kept, entry by entry. */
export interface LogStore<THeader extends LogHeader> {
	/** Whether what is kept will be there tomorrow. False from the first failure of storage on. */
	readonly isLasting: boolean;
	/** Begins a log. Its head is kept now and never written again. */
	begin(header: Whole<THeader>): Promise<Kept>;
	/**
	 * Adds the entry with this number; numbers count from 0 without gaps. The header, but for the
	 * head, takes the place of the one before.
	 */
	append(id: string, seq: number, entry: unknown, header: THeader): Promise<Kept>;
	/** Adds entries from this number on, all or none. */
	appendAll(
		id: string,
		fromSeq: number,
		entries: readonly unknown[],
		header: THeader
	): Promise<Kept>;
	/**
	 * Null when there is no such log, or storage cannot be read. An entry whose row is missing is
	 * null in its place, so that reading the log says where it is damaged.
	 */
	load(id: string): Promise<StoredLog<THeader> | null>;
}

/** Whole logs in and out, for export and import. What cannot be read is an error here. */
export interface LogShelf<THeader extends LogHeader> extends LogStore<THeader> {
	/** @throws Error when storage cannot be read */
	ids(): Promise<string[]>;
	/**
	 * In the order asked for, without those that are not there.
	 *
	 * @throws Error when storage cannot be read
	 */
	loadMany(ids: readonly string[]): Promise<StoredLog<THeader>[]>;
	/** Adds whole logs, all or none. */
	addAll(logs: readonly StoredLog<THeader>[]): Promise<Kept>;
}

/** Entries in a row by their numbers, with null where one is missing. */
export function inTheirPlaces(rows: readonly { seq: number; entry: unknown }[]): unknown[] {
	const entries: unknown[] = [];
	for (const { seq, entry } of rows) {
		// A number from nowhere must not make a list of millions.
		if (seq - entries.length < 1000) while (entries.length < seq) entries.push(null);
		entries.push(entry);
	}
	return entries;
}

/** A header without the head it may carry. */
export function withoutHead<THeader extends LogHeader>(header: THeader): THeader {
	const row = { ...header };
	delete row.head;
	return row;
}
