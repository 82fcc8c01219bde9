import type { Kept } from '$lib/records';

/** Where a log is kept: in this browser, in this page's memory only, or another window has gone on with it. */
export type Storage = 'kept' | 'memory' | 'elsewhere';

type Store<THeader> = {
	readonly isLasting: boolean;
	begin(header: THeader): Promise<Kept>;
	append(id: string, seq: number, entry: unknown, header: THeader): Promise<Kept>;
};

/**
 * Sends the entries of one log to their store, one after another in their order, and says how that
 * goes. The header is made at the moment of writing, so that it tells of the latest.
 */
export class KeptLog<THeader extends { id: string }> {
	storage: Storage = $state('kept');
	#isBegun: boolean;
	#writes: Promise<unknown> = Promise.resolve();

	constructor(
		private readonly store: Store<THeader>,
		isStored: boolean
	) {
		this.#isBegun = isStored;
		this.storage = store.isLasting ? 'kept' : 'memory';
	}

	/** @param first number of the first of these entries in the log */
	write(entries: readonly unknown[], first: number, header: THeader): void {
		const isFirst = !this.#isBegun;
		this.#isBegun = true;
		this.#writes = this.#writes.then(async () => {
			if (isFirst && !this.#isElsewhere) this.#note(await this.store.begin(header));
			for (const [i, entry] of entries.entries()) {
				if (this.#isElsewhere) return;
				this.#note(await this.store.append(header.id, first + i, entry, header));
			}
		});
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
