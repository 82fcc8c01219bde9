/** The procedure room: the walk, its log, and what is made of it. */
export { doneByOf, type DoneBy } from './check-done-by';
export { earlierEvidence, type EarlierTest } from './check-earlier';
export {
	evidenceOfTest,
	whyNoEvidence,
	type TestEvidenceOptions,
	type TestRole
} from './check-evidence';
export * from './check-log';
export { readingOfNumber, type NumberAsReading } from './check-reading';
export { referenceChecksOf, UNNAMED_LOT, type KeptReference } from './check-references';
export * from './check-replay';
export * from './check-state';
export { checkSummaryOf } from './check-summary';
export * from './inquiry';
export { withAmendment, withEvent, withUndo } from './log';
export * from './run';
export * from './run-log';
export { stepsFor, truthFor, type TitrationRun } from './titration-run';
export * from './walk';
export * from './walk-helpers';
export * from './walk-log';
export * from './witness';
export * from './filling-trap';
export { natureOf, slipsIn } from './slips';
export * from './coach';
export * from './debrief';
export * from './drill-for';
export type { NextThing } from './next-thing';
export * from './evidence';
export { differenceOfReading, relatedValues, type ReadingDifference } from './related';
export { earlierReadings, readingOfTitration, readingOfValue } from './readings';
export * from './instructions';
export { offeredConclusions } from './offered-conclusions';
export * from './share';
export * from './test-log';
export * from './tank-test';
export * from './titration-value';
export * from './test-difference';
export * from './test-difference-remarks';
export * from './test-result';
export { remarkOffers, type Remark, type RemarkOffer, type RemarkOptions } from './tank-remark';
export { remarksOn } from './tank-remarks';
export { reagentCaution, titrantWordsOf } from './tank-titrant-words';
export { spokenInstruction, tankInstruction, type TankInstruction } from './tank-words';
export { spoken } from './spoken-words';
export { slipsAtTank } from './tank-slips';
export { interruptionIn, INTERRUPTED_AFTER_MIN, type Interruption } from './interruption';
export * from './expected-use';
export {
	dropCauseWords,
	dropCheckOf,
	dropsAgainstTravel,
	dropsCountedIn,
	fromOtherEnd,
	otherEndMlOf,
	talliedDropsIn,
	type DropCause,
	type DropCheck
} from './drop-check';
export { refilledMlIn, refillsIn, startFillingOf, withMarks, type Refill } from './refills';
export { endTravelOf, type EndTravel } from './end-travel';
