import Dexie from 'dexie';
import type { Kept } from './kept';
import { LastingLogs } from './lasting-logs';
import { askToLast } from './persistence';
import type { DatedChoice, DatedPage, DatedRecords, Moment } from './dated';
import type { DatedHeader, StoredLog } from './headers';

const { minKey, maxKey } = Dexie;

/** Logs in the browser's database, listed by the time at which they began. */
export class LastingDated<THeader extends DatedHeader>
	extends LastingLogs<THeader>
	implements DatedRecords<THeader>
{
	override async appendAll(
		id: string,
		fromSeq: number,
		entries: readonly unknown[],
		header: THeader
	): Promise<Kept> {
		const kept = await super.appendAll(id, fromSeq, entries, header);
		if (kept.kept && header.state === 'kept') void askToLast();
		return kept;
	}
	override async addAll(logs: readonly StoredLog<THeader>[]): Promise<Kept> {
		const kept = await super.addAll(logs);
		if (kept.kept && logs.some(({ header }) => header.state === 'kept')) void askToLast();
		return kept;
	}

	list(page: DatedPage = {}): Promise<THeader[]> {
		return this.health.reading(() => {
			const chosen = this.chosen(page, page.before).reverse();
			return (page.limit === undefined ? chosen : chosen.limit(page.limit)).toArray();
		}, []);
	}
	count(choice: DatedChoice = {}): Promise<number> {
		return this.health.reading(() => this.chosen(choice).count(), 0);
	}
	unfinished(): Promise<THeader[]> {
		return this.list({ state: 'unfinished' });
	}

	/** Logs of a choice in the order in which they began, up to, without, a moment. */
	private chosen({ analyte, state = 'kept' }: DatedChoice, before?: number | Moment) {
		const start = analyte === undefined ? [state] : [state, analyte];
		const index =
			analyte === undefined ? '[state+startedAtEpochMs+id]' : '[state+analyte+startedAtEpochMs+id]';
		return this.tables.headers
			.where(index)
			.between([...start, minKey, minKey], [...start, ...endOf(before)], true, false);
	}
}

function endOf(before: number | Moment | undefined): unknown[] {
	// Once only: one and the same list twice within a key makes it no key (Indexed Database API).
	if (before === undefined) return [maxKey];
	if (typeof before === 'number') return [before, minKey];
	return [before.startedAtEpochMs, before.id];
}
