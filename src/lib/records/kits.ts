import type { Table } from 'dexie';
import type { Health } from './health';
import { isElsewhere, isKept, type Kept } from './kept';
import type { KitRow } from './headers';

/** Where versions of kits are kept: added, never overwritten. */
export interface KitRecords {
	readonly isLasting: boolean;
	/** Refused as 'elsewhere' when the kit has a version of this number already. */
	add(row: KitRow): Promise<Kept>;
	/** Every version of every kit, by kit and number. */
	all(): Promise<KitRow[]>;
}

export class MemoryKits implements KitRecords {
	readonly isLasting: boolean = false;
	private readonly rows: KitRow[] = [];

	add(row: KitRow): Promise<Kept> {
		const isNumberTaken = this.rows.some(
			({ kitId, version }) => kitId === row.kitId && version === row.version
		);
		if (isNumberTaken) return Promise.resolve(isElsewhere);
		this.rows.push(row);
		return Promise.resolve(isKept);
	}
	all(): Promise<KitRow[]> {
		const order = (a: KitRow, b: KitRow) =>
			a.kitId < b.kitId ? -1 : a.kitId > b.kitId ? 1 : a.version - b.version;
		return Promise.resolve([...this.rows].sort(order));
	}
}

export class LastingKits implements KitRecords {
	constructor(
		private readonly table: Table<KitRow, [string, number]>,
		private readonly health: Health
	) {}

	get isLasting(): boolean {
		return this.health.trouble === null;
	}
	add(row: KitRow): Promise<Kept> {
		return this.health.keeping(async () => {
			await this.table.add(row);
		});
	}
	all(): Promise<KitRow[]> {
		return this.health.reading(() => this.table.toArray(), []);
	}
}
