import {
	liveEntries,
	type CheckEvent,
	type CheckSummary,
	type CheckVerdict,
	type Entry,
	type TestEvent,
	type TestSummary
} from '../../observation';
import type {
	CheckHeader,
	DatedHeader,
	KeptState,
	KitRow,
	LogHeader,
	RunHeader,
	TestHeader
} from '../headers';
import type { WholeLog } from './merge';
import { readSummary, readVerdict } from './summary';

type Leaflet = { id: string; analyte: string };
export type ImportedTest = WholeLog & { kit: Leaflet; entries: readonly Entry<TestEvent>[] };
export type ImportedCheck = WholeLog & {
	kit: Leaflet | null;
	analyte: string;
	entries: readonly Entry<CheckEvent>[];
};
export type ImportedRun = WholeLog & { scenarioId: string };

/** What reads each sort of thing; each throws an error that names the damaged field. */
export type ImportReaders = {
	test: (raw: unknown) => ImportedTest;
	check: (raw: unknown) => ImportedCheck;
	run: (raw: unknown) => ImportedRun;
	kit: (raw: unknown) => KitRow;
	/**
	 * The summary of an imported test. Without it the summary in the file stands until it is made
	 * again.
	 */
	summarise?: (log: ImportedTest) => TestSummary | null;
	/** The summary of an imported check, with the advice that the file says it had come to. */
	summariseCheck?: (log: ImportedCheck, verdict: CheckVerdict | undefined) => CheckSummary | null;
};

/** The id of a header made of an imported log, and why it is not the log's own. */
type As = Pick<DatedHeader, 'id' | 'origin'>;

/** Header of an imported test, made of the log and of what the file's item says beside it. */
export function testHeader(
	log: ImportedTest,
	item: unknown,
	as: As,
	{ summarise }: Pick<ImportReaders, 'summarise'>
): TestHeader {
	const { summary } = fieldsOf(item);
	const said = liveEntries(log.entries).map(({ event }) =>
		event.in === 'test' ? event.event.type : ''
	);
	return {
		...common(log, item),
		...as,
		kitId: log.kit.id,
		analyte: log.kit.analyte,
		state: stateOf(said, 'test'),
		summary: summarise ? orNull(() => summarise(log)) : readSummary(summary)
	};
}

/** Header of an imported check. */
export function checkHeader(
	log: ImportedCheck,
	item: unknown,
	as: As,
	{ summariseCheck }: Pick<ImportReaders, 'summariseCheck'>
): CheckHeader {
	const { summary } = fieldsOf(item);
	const said = liveEntries(log.entries).map(({ event }) => event.type);
	return {
		...common(log, item),
		...as,
		kitId: log.kit?.id ?? null,
		analyte: log.analyte,
		state: stateOf(said, 'check'),
		summary: orNull(() => summariseCheck?.(log, readVerdict(summary)) ?? null)
	};
}

export function runHeader(log: ImportedRun, item: unknown, as: Pick<RunHeader, 'id'>): RunHeader {
	const { state } = fieldsOf(item);
	return {
		...common(log, item),
		id: as.id,
		scenarioId: log.scenarioId,
		state: state === 'finished' ? 'finished' : 'unfinished'
	};
}

function orNull<T>(make: () => T | null): T | null {
	try {
		return make();
	} catch {
		// The log is kept all the same, and says what is wrong when it is opened.
		return null;
	}
}

function common(log: WholeLog, item: unknown): LogHeader {
	const { changedAtEpochMs, where } = fieldsOf(item);
	return {
		id: log.id,
		startedAtEpochMs: log.startedAtEpochMs,
		changedAtEpochMs:
			typeof changedAtEpochMs === 'number' && Number.isFinite(changedAtEpochMs)
				? changedAtEpochMs
				: log.startedAtEpochMs,
		where: typeof where === 'string' ? where : 'from a file'
	};
}

function fieldsOf(item: unknown): Record<string, unknown> {
	return typeof item === 'object' && item !== null ? { ...item } : {};
}

/** What a log says of its own state by the things said last in it. */
function stateOf(said: readonly string[], what: 'test' | 'check'): KeptState {
	if (said.includes(`${what}.removed`)) return 'removed';
	return said.includes(`${what}.closed`) ? 'kept' : 'unfinished';
}
