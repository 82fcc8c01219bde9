export { BenchClock } from './bench-clock';
export { everyFrame } from './frames';
export { Persisted } from './persisted.svelte';
