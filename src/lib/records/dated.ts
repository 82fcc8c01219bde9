import type { LogStore } from './log-store';
import type { DatedHeader, KeptState } from './headers';

/** The place of a log in time. */
export type Moment = Pick<DatedHeader, 'startedAtEpochMs' | 'id'>;

/** Which logs a list asks for. */
export type DatedChoice = {
	/** All that is measured, where not said. */
	analyte?: string;
	/** 'kept' where not said. */
	state?: KeptState;
};
export type DatedPage = DatedChoice & {
	/** At most so many; all where not said. */
	limit?: number;
	/** Begun before this time, ms since 1970; or the last of the page before. */
	before?: number | Moment;
};

/** Where logs are kept that are listed by the time at which they began. */
export interface DatedRecords<THeader extends DatedHeader> extends LogStore<THeader> {
	/** Begun last first; one whose log cannot be read is there like any other. */
	list(page?: DatedPage): Promise<THeader[]>;
	count(choice?: DatedChoice): Promise<number>;
	/** Those that were left before their end, begun last first. */
	unfinished(): Promise<THeader[]>;
}
