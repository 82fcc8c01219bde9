/** The metrology room: uncertainty, replicates, comparison of methods, control charts, decisions. */
export * from './acceptance';
export * from './bland-altman';
export { tipSdMlOf } from './budget-figures';
export type { BudgetKind, BudgetLineId, BudgetReading } from './budget-input';
export * from './chart-by-lot';
export * from './chart-cusum';
export * from './chart-ewma';
export * from './chart-individuals';
export type { ChartBasis, ChartOptions } from './chart-limits';
export * from './combine-repeats';
export * from './compare';
export * from './compare-readings';
export * from './conformity';
export * from './deming';
export * from './difference';
export { differenceFiguresOf } from './difference-figures';
export * from './distributions';
export type { Interval } from './interval';
export * from './joint-test';
export { degreesOfDoubt } from './judged';
export * from './least-squares';
export type { LotCheck, LotSummary, ReferenceCheck } from './lot-summary';
export * from './mean-rate';
export * from './measurement-equation';
export {
	methodFiguresOf,
	usualMethodFigures,
	type FiguresAt,
	type MethodFigures
} from './method-figures';
export * from './outliers';
export { methodFiguresFor, usualMethodFiguresOf, usualTakenOff } from './usual-figures';
export { ownRepeatability, type OwnRepeatability } from './own-scatter';
export {
	pairedDifferences,
	testOfDifferences,
	type DifferenceOptions,
	type DifferenceTest,
	type MethodPair
} from './paired';
export type { Point } from './points';
export { readingBudget, type BudgetLine, type ReadingBudget } from './reading-budget';
export * from './recovery-of-addition';
export * from './replicates';
export * from './robust';
export { roundingCorrelation } from './rounding';
export { runRules, type RunRule } from './run-rules';
export * from './shrinks';
export type { Spread } from './spread';
export * from './standard-addition';
export * from './uncertainty';
export * from './value-of-repeats';
export { buretteLimitMl, syringeLimitMl } from './ware-limits';
export { millilitresOfWater } from './weighed-water';
export * from './york';
export * from './youden';
