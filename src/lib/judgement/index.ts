/** The judgement room: what slips look like, and what evidence carries. */
export { factsOf, type Facts, type MatrixEffect } from './facts';
export * from './slip-cues';
export * from './support';
