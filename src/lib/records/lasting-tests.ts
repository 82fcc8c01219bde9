import Dexie from 'dexie';
import type { TestSummary } from '../observation';
import { isKept, standsAlone, type Kept } from './kept';
import { LastingLogs } from './lasting-logs';
import { askToLast } from './persistence';
import type { StoredLog, TestHeader } from './headers';
import {
	pointOf,
	type Moment,
	type TestChoice,
	type TestPage,
	type TestPoint,
	type TestRecords
} from './tests';

const { minKey, maxKey } = Dexie;

export class LastingTests extends LastingLogs<TestHeader> implements TestRecords {
	override async appendAll(
		id: string,
		fromSeq: number,
		entries: readonly unknown[],
		header: TestHeader
	): Promise<Kept> {
		const kept = await super.appendAll(id, fromSeq, entries, header);
		if (kept.kept && header.state === 'kept') void askToLast();
		return kept;
	}
	override async addAll(logs: readonly StoredLog<TestHeader>[]): Promise<Kept> {
		const kept = await super.addAll(logs);
		if (kept.kept && logs.some(({ header }) => header.state === 'kept')) void askToLast();
		return kept;
	}

	list(page: TestPage = {}): Promise<TestHeader[]> {
		return this.health.reading(() => {
			const chosen = this.chosen(page, page.before).reverse();
			return (page.limit === undefined ? chosen : chosen.limit(page.limit)).toArray();
		}, []);
	}
	count(choice: TestChoice = {}): Promise<number> {
		return this.health.reading(() => this.chosen(choice).count(), 0);
	}
	points(asked: { analyte: string; from: number; to: number }): Promise<TestPoint[]> {
		const start = ['kept', asked.analyte];
		return this.health.reading(async () => {
			const headers = await this.tables.headers
				.where('[state+analyte+startedAtEpochMs+id]')
				.between([...start, asked.from, minKey], [...start, asked.to, maxKey])
				.toArray();
			return headers.map(pointOf);
		}, []);
	}
	unfinished(): Promise<TestHeader[]> {
		return this.list({ state: 'unfinished' });
	}
	resummarise(id: string, summary: TestSummary | null): Promise<Kept> {
		return this.writing(async () =>
			(await this.tables.headers.update(id, { summary })) > 0 || (await this.tables.headers.get(id))
				? isKept
				: standsAlone
		);
	}
	async lastBefore(kitId: string, atEpochMs: number): Promise<TestHeader | null> {
		const start = ['kept', kitId];
		const found = await this.health.reading(
			() =>
				this.tables.headers
					.where('[state+kitId+startedAtEpochMs]')
					.between([...start, minKey], [...start, atEpochMs], true, false)
					.reverse()
					.filter(({ summary }) => summary !== null)
					.first(),
			undefined
		);
		return found ?? null;
	}

	/** Tests of a choice in the order in which they began, up to, without, a moment. */
	private chosen({ analyte, state = 'kept' }: TestChoice, before?: number | Moment) {
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
