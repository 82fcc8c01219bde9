export * from './entry';
export * from './evidence';
export * from './marks';
export * from './slip';
export * from './walk-event';
export * from './circumstances';
export * from './test-event';
export * from './test-summary';
