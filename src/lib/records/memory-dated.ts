import { MemoryLogs } from './memory-logs';
import type { DatedChoice, DatedPage, DatedRecords, Moment } from './dated';
import type { DatedHeader } from './headers';

/** Begun last first; in the same moment by id, as the database orders them. */
function newestFirst(a: Moment, b: Moment): number {
	return b.startedAtEpochMs - a.startedAtEpochMs || (a.id < b.id ? 1 : a.id > b.id ? -1 : 0);
}

function isEarlier(header: DatedHeader, before: number | Moment): boolean {
	return typeof before === 'number'
		? header.startedAtEpochMs < before
		: newestFirst(before, header) < 0;
}

/** Logs that last as long as the page, listed by the time at which they began. */
export class MemoryDated<THeader extends DatedHeader>
	extends MemoryLogs<THeader>
	implements DatedRecords<THeader>
{
	list({ analyte, state = 'kept', limit, before }: DatedPage = {}): Promise<THeader[]> {
		const chosen = this.headers()
			.filter((header) => header.state === state)
			.filter((header) => analyte === undefined || header.analyte === analyte)
			.filter((header) => before === undefined || isEarlier(header, before))
			.sort(newestFirst);
		return Promise.resolve(chosen.slice(0, limit));
	}
	async count(choice: DatedChoice = {}): Promise<number> {
		return (await this.list(choice)).length;
	}
	unfinished(): Promise<THeader[]> {
		return this.list({ state: 'unfinished' });
	}
}
