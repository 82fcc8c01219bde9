/** The metrology room: uncertainty, replicates, comparison. */
export * from './compare';
export * from './distributions';
export * from './outliers';
export * from './reading-budget';
export * from './replicates';
export * from './uncertainty';
