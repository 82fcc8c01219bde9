/** The judgement room: faults, what evidence says of them, what to check next, what to do. */
export * from './advice-loss';
export { cues, cuesFor, faultById, faults, faultsFor, type MethodKind } from './catalogue';
export * from './correction';
export * from './decision';
export * from './diagnosis';
export { factsOf, type Facts, type MatrixEffect } from './facts';
export * from './fault';
export * from './limits';
export * from './ranked-check';
export * from './slip-cues';
export * from './support';
export * from './water-causes';
