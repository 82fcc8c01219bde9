import type { Records } from '../open-records';
import type { ImportReaders } from './headers-of';
import type { ImportReport } from './report';

/** Records to a file and back. */
export { exportOne, exportOneCheck, exportRecords } from './export';
export type { ImportedCheck, ImportedTest, ImportReaders } from './headers-of';
export type { Damage } from './read-file';
export type { ImportReport } from './report';

/** As in `import.ts`; what it needs is loaded when a file is brought in, which is seldom. */
export async function importRecords(
	text: string,
	records: Records,
	readers: ImportReaders
): Promise<ImportReport> {
	const { importRecords: take } = await import('./import');
	return take(text, records, readers);
}
