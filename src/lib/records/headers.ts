import type { CheckSummary, TestSummary } from '../observation';

/** What every log has in a list. */
export type LogHeader = {
	id: string;
	startedAtEpochMs: number;
	changedAtEpochMs: number;
	/** A line for the list: 'step 5, drop'. */
	where: string;
	/**
	 * The log without its entries, frozen when it begins. It comes with the log and is left out of
	 * lists: each head holds a whole leaflet.
	 */
	head?: unknown;
};

/** A header that brings its log's head. */
export type Whole<THeader extends LogHeader> = THeader & { head: unknown };

/** Of a log that is kept until it is removed. Removed ones stay stored: removing can be taken back. */
export type KeptState = 'unfinished' | 'kept' | 'removed';

/** What a list needs to know of a practice run, without playing its log. */
export type RunHeader = LogHeader & {
	scenarioId: string;
	state: 'unfinished' | 'finished';
};

/** What logs have in common that are listed by the time at which they began. */
export type DatedHeader = LogHeader & {
	analyte: string;
	state: KeptState;
	/** Said of a log that an import kept beside another, or saved from a damaged one. */
	origin?: LogOrigin;
};

/** What a list needs to know of a test beside the tank, without playing its log. */
export type TestHeader = DatedHeader & {
	kitId: string;
	summary: TestSummary | null;
};

/** What a list needs to know of a check of a reading, without playing its log. */
export type CheckHeader = DatedHeader & {
	/** Of the kit in question; null where there was nothing but a number. */
	kitId: string | null;
	summary: CheckSummary | null;
};

/** Where a log came from that has an id of its own only because of how it came here. */
export type LogOrigin = { of: string; because: 'diverged' | 'damaged' };

/** One version of a kit's leaflet; the kits room says what stands in it. */
export type KitRow = {
	kitId: string;
	/** Counted up; a row is added and never overwritten. */
	version: number;
	savedAtEpochMs: number;
	kind: string;
	kit: unknown;
};

/** A log as it is stored. */
export type StoredLog<THeader extends LogHeader> = { header: THeader; entries: unknown[] };
