import type { TestSummary } from '../observation';
import type { DatedChoice, DatedPage, DatedRecords } from './dated';
import type { Kept } from './kept';
import type { TestHeader } from './headers';

export type TestChoice = DatedChoice;
export type TestPage = DatedPage;

/** One test in a picture. */
export type TestPoint = Pick<TestHeader, 'id' | 'kitId' | 'startedAtEpochMs' | 'summary'>;

/** Where tests beside the tank are kept. */
export interface TestRecords extends DatedRecords<TestHeader> {
	/** Kept tests of one analyte that began between two times (ms since 1970, both included), in order. */
	points(asked: { analyte: string; from: number; to: number }): Promise<TestPoint[]>;
	/** Writes the summary anew; the log stays as it is. */
	resummarise(id: string, summary: TestSummary | null): Promise<Kept>;
	/** The last kept test with this kit that began before a time (ms since 1970) and has a value. */
	lastBefore(kitId: string, atEpochMs: number): Promise<TestHeader | null>;
}

export function pointOf({ id, kitId, startedAtEpochMs, summary }: TestHeader): TestPoint {
	return { id, kitId, startedAtEpochMs, summary };
}
