export { BenchClock } from './bench-clock';
export { everyFrame } from './frames';
export { Persisted } from './persisted.svelte';
export {
	countingWays,
	Preferences,
	preferences,
	units,
	type CountingWay
} from './preferences.svelte';
