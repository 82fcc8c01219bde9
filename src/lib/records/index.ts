/** The records room: what is kept in this browser. It stores, and judges nothing. */
export type { CheckRecords } from './checks';
export type { DatedChoice, DatedPage } from './dated';
export type {
	CheckHeader,
	DatedHeader,
	KeptState,
	KitRow,
	LogHeader,
	LogOrigin,
	RunHeader,
	StoredLog,
	TestHeader,
	Whole
} from './headers';
export type { Kept, StorageTrouble } from './kept';
export type { KitRecords } from './kits';
export type { LogStore } from './log-store';
export { openRecords, type Records } from './open-records';
export { roomOfStorage } from './persistence';
export type { RunRecords } from './runs';
export type { TestChoice, TestPage, TestPoint, TestRecords } from './tests';
export * from './transfer';
