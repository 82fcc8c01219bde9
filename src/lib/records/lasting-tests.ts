import Dexie from 'dexie';
import type { TestSummary } from '../observation';
import { isKept, standsAlone, type Kept } from './kept';
import { LastingDated } from './lasting-dated';
import type { TestHeader } from './headers';
import { pointOf, type TestPoint, type TestRecords } from './tests';

const { minKey, maxKey } = Dexie;

export class LastingTests extends LastingDated<TestHeader> implements TestRecords {
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
}
