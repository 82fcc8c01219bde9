/** The procedure room: the walk, its log, and what is made of it. */
export * from './inquiry';
export * from './run';
export * from './run-log';
export * from './walk';
export * from './walk-helpers';
export * from './walk-log';
export * from './witness';
export * from './filling-trap';
export { natureOf, slipsIn } from './slips';
export * from './coach';
export * from './debrief';
export * from './evidence';
export * from './instructions';
export * from './share';
