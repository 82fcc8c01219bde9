export * from './action';
export * from './scenario';
export * from './seen';
export * from './world';
