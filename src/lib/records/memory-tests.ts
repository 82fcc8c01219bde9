import type { TestSummary } from '../observation';
import { isKept, standsAlone, type Kept } from './kept';
import { MemoryLogs } from './memory-logs';
import type { TestHeader } from './headers';
import {
	pointOf,
	type Moment,
	type TestChoice,
	type TestPage,
	type TestPoint,
	type TestRecords
} from './tests';

/** Begun last first; in the same moment by id, as the database orders them. */
function newestFirst(a: Moment, b: Moment): number {
	return b.startedAtEpochMs - a.startedAtEpochMs || (a.id < b.id ? 1 : a.id > b.id ? -1 : 0);
}

function isEarlier(header: TestHeader, before: number | Moment): boolean {
	return typeof before === 'number'
		? header.startedAtEpochMs < before
		: newestFirst(before, header) < 0;
}

export class MemoryTests extends MemoryLogs<TestHeader> implements TestRecords {
	list({ analyte, state = 'kept', limit, before }: TestPage = {}): Promise<TestHeader[]> {
		const chosen = this.headers()
			.filter((header) => header.state === state)
			.filter((header) => analyte === undefined || header.analyte === analyte)
			.filter((header) => before === undefined || isEarlier(header, before))
			.sort(newestFirst);
		return Promise.resolve(chosen.slice(0, limit));
	}
	async count(choice: TestChoice = {}): Promise<number> {
		return (await this.list(choice)).length;
	}
	async points(asked: { analyte: string; from: number; to: number }): Promise<TestPoint[]> {
		return (await this.list({ analyte: asked.analyte }))
			.filter(({ startedAtEpochMs: at }) => at >= asked.from && at <= asked.to)
			.map(pointOf)
			.reverse();
	}
	unfinished(): Promise<TestHeader[]> {
		return this.list({ state: 'unfinished' });
	}
	resummarise(id: string, summary: TestSummary | null): Promise<Kept> {
		const log = this.logs.get(id);
		if (!log) return Promise.resolve(standsAlone);
		this.logs.set(id, { ...log, header: { ...log.header, summary } });
		return Promise.resolve(isKept);
	}
	async lastBefore(kitId: string, atEpochMs: number): Promise<TestHeader | null> {
		const found = (await this.list()).find(
			(header) =>
				header.kitId === kitId && header.startedAtEpochMs < atEpochMs && header.summary !== null
		);
		return found ?? null;
	}
}
