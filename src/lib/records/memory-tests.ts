import type { TestSummary } from '../observation';
import { isKept, standsAlone, type Kept } from './kept';
import { MemoryDated } from './memory-dated';
import type { TestHeader } from './headers';
import { pointOf, type TestPoint, type TestRecords } from './tests';

export class MemoryTests extends MemoryDated<TestHeader> implements TestRecords {
	async points(asked: { analyte: string; from: number; to: number }): Promise<TestPoint[]> {
		return (await this.list({ analyte: asked.analyte }))
			.filter(({ startedAtEpochMs: at }) => at >= asked.from && at <= asked.to)
			.map(pointOf)
			.reverse();
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
