export { default as BenchStage } from './BenchStage.svelte';
export type { BenchRun } from './run';
export { asLeft, placeOf } from './as-left';
export { default as Opening } from './Opening.svelte';
