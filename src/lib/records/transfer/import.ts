import type { Records } from '../open-records';
import {
	checkHeader,
	runHeader,
	testHeader,
	type ImportedCheck,
	type ImportedRun,
	type ImportedTest,
	type ImportReaders
} from './headers-of';
import { importKits } from './import-kits';
import { importLogs } from './import-logs';
import { readFile, type FileItem } from './read-file';
import type { ImportReport } from './report';

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
			headerOf: (log, item, as) => testHeader(log as ImportedTest, item, as, readers)
		},
		report
	);
	await importLogs(
		of('checks'),
		records.checks,
		{
			read: readers.check,
			headerOf: (log, item, as) => checkHeader(log as ImportedCheck, item, as, readers)
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
