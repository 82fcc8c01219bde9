import { liveEntries, type Entry, type TestEvent, type TestSummary } from '../../observation';
import type { KitRow, LogHeader, RunHeader, TestHeader } from '../headers';
import type { Records } from '../open-records';
import { importKits } from './import-kits';
import { importLogs } from './import-logs';
import type { WholeLog } from './merge';
import { readFile, type FileItem } from './read-file';
import type { ImportReport } from './report';
import { readSummary } from './summary';

type Leaflet = { id: string; analyte: string };
export type ImportedTest = WholeLog & { kit: Leaflet; entries: readonly Entry<TestEvent>[] };
export type ImportedRun = WholeLog & { scenarioId: string };

/** What reads each sort of thing; each throws an error that names the damaged field. */
export type ImportReaders = {
	test: (raw: unknown) => ImportedTest;
	run: (raw: unknown) => ImportedRun;
	kit: (raw: unknown) => KitRow;
	/**
	 * The summary of an imported test. Without it the summary in the file stands until it is made
	 * again.
	 */
	summarise?: (log: ImportedTest) => TestSummary | null;
};

/**
 * Brings the records of a file into those of this browser, without loss and without duplicates.
 * Nothing that is damaged keeps the rest from being read.
 *
 * @param text of the file
 * @throws RangeError for a file that holds no records, or records of a later format
 * @throws Error when storage cannot be read
 */
export async function importRecords(
	text: string,
	records: Records,
	readers: ImportReaders
): Promise<ImportReport> {
	const { items, damaged } = readFile(text);
	const report: ImportReport = {
		added: 0,
		grown: 0,
		already: 0,
		keptApart: [],
		damaged,
		refused: []
	};
	const of = (section: FileItem['section']) => items.filter((item) => item.section === section);
	await importKits(of('kits'), records.kits, readers.kit, report);
	await importLogs(
		of('tests'),
		records.tests,
		{
			read: readers.test,
			headerOf: (log, item, as) => testHeader(log as ImportedTest, item, as, readers.summarise)
		},
		report
	);
	await importLogs(
		of('runs'),
		records.runs,
		{ read: readers.run, headerOf: (log, item, as) => runHeader(log as ImportedRun, item, as) },
		report
	);
	return report;
}

function testHeader(
	log: ImportedTest,
	item: unknown,
	as: Pick<TestHeader, 'id' | 'origin'>,
	summarise: ImportReaders['summarise']
): TestHeader {
	const { summary } = fieldsOf(item);
	return {
		...common(log, item),
		...as,
		kitId: log.kit.id,
		analyte: log.kit.analyte,
		state: stateOf(log.entries),
		summary: summarise ? summarised(log, summarise) : readSummary(summary)
	};
}

function summarised(
	log: ImportedTest,
	summarise: (log: ImportedTest) => TestSummary | null
): TestSummary | null {
	try {
		return summarise(log);
	} catch {
		// The log is kept all the same, and says what is wrong when it is opened.
		return null;
	}
}

function runHeader(log: ImportedRun, item: unknown, as: Pick<RunHeader, 'id'>): RunHeader {
	const { state } = fieldsOf(item);
	return {
		...common(log, item),
		id: as.id,
		scenarioId: log.scenarioId,
		state: state === 'finished' ? 'finished' : 'unfinished'
	};
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

/** What a test's own log says of its state. */
function stateOf(entries: readonly Entry<TestEvent>[]): TestHeader['state'] {
	const said = liveEntries(entries).map(({ event }) =>
		event.in === 'test' ? event.event.type : ''
	);
	if (said.includes('test.removed')) return 'removed';
	return said.includes('test.closed') ? 'kept' : 'unfinished';
}
