import type { Kept, LogHeader, LogStore, Whole } from '$lib/records';

/** Where a log is kept: in this browser, in this page's memory only, or another window has gone on with it. */
export type Storage = 'kept' | 'memory' | 'elsewhere';

type Store<THeader extends LogHeader> = Pick<
	LogStore<THeader>,
	'isLasting' | 'begin' | 'appendAll'
>;

/**
 * Sends the entries of one log to their store, in their order, and says how that goes.
 */
export class KeptLog<THeader extends LogHeader> {
	storage: Storage = $state('kept');
	#isBegun: boolean;
	#writes: Promise<unknown> = Promise.resolve();
	#waiting: { entries: unknown[]; first: number; header: Whole<THeader> } | null = null;

	constructor(
		private readonly store: Store<THeader>,
		isStored: boolean
	) {
		this.#isBegun = isStored;
		this.storage = store.isLasting ? 'kept' : 'memory';
	}

	/**
	 * What is sent in one turn, or while an earlier write is under way, is kept whole or not at all: a
	 * tap that says three things is never found as one or two of them.
	 *
	 * @param first number of the first of these entries in the log
	 */
	write(entries: readonly unknown[], first: number, header: Whole<THeader>): void {
		if (this.#waiting) {
			this.#waiting.entries.push(...entries);
			this.#waiting.header = header;
			return;
		}
		this.#waiting = { entries: [...entries], first, header };
		this.#writes = this.#writes.then(() => this.#send());
	}

	async #send(): Promise<void> {
		const waiting = this.#waiting;
		this.#waiting = null;
		if (!waiting || this.#isElsewhere) return;
		const { entries, first, header } = waiting;
		if (!this.#isBegun) {
			this.#isBegun = true;
			this.#note(await this.store.begin(header));
			if (this.#isElsewhere) return;
		}
		this.#note(await this.store.appendAll(header.id, first, entries, header));
	}

	get #isElsewhere(): boolean {
		return this.storage === 'elsewhere';
	}

	/** Another window says that it has gone on with this log. */
	leave(): void {
		this.storage = 'elsewhere';
	}

	/** When all that was sent so far has arrived, or was refused. */
	settled(): Promise<unknown> {
		return this.#writes;
	}

	#note(kept: Kept): void {
		if (!kept.kept) this.storage = kept.because === 'elsewhere' ? 'elsewhere' : 'memory';
	}
}
