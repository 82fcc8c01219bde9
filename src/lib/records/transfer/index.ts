/** Records to a file and back. */
export { exportOne, exportRecords } from './export';
export { importRecords, type ImportedTest, type ImportReaders } from './import';
export type { Damage } from './read-file';
export type { ImportReport } from './report';
