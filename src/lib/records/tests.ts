import type { TestSummary } from '../observation';
import type { Kept } from './kept';
import type { LogStore } from './log-store';
import type { TestHeader } from './headers';

/** The place of a test in time. */
export type Moment = Pick<TestHeader, 'startedAtEpochMs' | 'id'>;

/** Which tests a list asks for. */
export type TestChoice = {
	/** All that is measured, where not said. */
	analyte?: string;
	/** 'kept' where not said. */
	state?: TestHeader['state'];
};
export type TestPage = TestChoice & {
	/** At most so many; all where not said. */
	limit?: number;
	/** Begun before this time, ms since 1970; or the last of the page before. */
	before?: number | Moment;
};

/** One test in a picture. */
export type TestPoint = Pick<TestHeader, 'id' | 'kitId' | 'startedAtEpochMs' | 'summary'>;

/** Where tests beside the tank are kept. */
export interface TestRecords extends LogStore<TestHeader> {
	/** Begun last first; a test whose log cannot be read is there like any other. */
	list(page?: TestPage): Promise<TestHeader[]>;
	count(choice?: TestChoice): Promise<number>;
	/** Kept tests of one analyte that began between two times (ms since 1970, both included), in order. */
	points(asked: { analyte: string; from: number; to: number }): Promise<TestPoint[]>;
	/** Tests that were left before their end, begun last first. */
	unfinished(): Promise<TestHeader[]>;
	/** Writes the summary anew; the log stays as it is. */
	resummarise(id: string, summary: TestSummary | null): Promise<Kept>;
	/** The last kept test with this kit that began before a time (ms since 1970) and has a value. */
	lastBefore(kitId: string, atEpochMs: number): Promise<TestHeader | null>;
}

export function pointOf({ id, kitId, startedAtEpochMs, summary }: TestHeader): TestPoint {
	return { id, kitId, startedAtEpochMs, summary };
}
