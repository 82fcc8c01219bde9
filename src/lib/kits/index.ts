export * from './kit';
export * from './step';
