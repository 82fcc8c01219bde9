/** The procedure room: the walk, its log, and what is made of it. */
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
export * from './evidence';
export { earlierReadings, readingOfTitration, readingOfValue } from './readings';
export * from './instructions';
export * from './share';
