/** The records room: what is kept in this browser. It stores, and judges nothing. */
export type { RunHeader } from './database';
export { openRecords, type Kept, type RunRecords, type StoredRun } from './runs';
