import type { DatedRecords } from './dated';
import type { CheckHeader } from './headers';
import { LastingDated } from './lasting-dated';
import { MemoryDated } from './memory-dated';

/** Where checks of a reading are kept. */
export type CheckRecords = DatedRecords<CheckHeader>;

export class LastingChecks extends LastingDated<CheckHeader> implements CheckRecords {}
export class MemoryChecks extends MemoryDated<CheckHeader> implements CheckRecords {}
