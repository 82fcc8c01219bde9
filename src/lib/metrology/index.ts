/** The metrology room: uncertainty, replicates, comparison. */
export type { BudgetKind, BudgetLineId, BudgetReading } from './budget-input';
export { tipSdMlOf } from './budget-figures';
export * from './combine-repeats';
export * from './compare';
export * from './compare-readings';
export * from './distributions';
export { degreesOfDoubt } from './judged';
export * from './mean-rate';
export type { MethodFigures } from './method-figures';
export * from './outliers';
export { ownRepeatability, type OwnRepeatability } from './own-scatter';
export { readingBudget, type BudgetLine, type ReadingBudget } from './reading-budget';
export * from './replicates';
export { roundingCorrelation } from './rounding';
export * from './shrinks';
export type { Spread } from './spread';
export * from './uncertainty';
export { buretteLimitMl, syringeLimitMl } from './ware-limits';
