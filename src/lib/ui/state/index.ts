export { BenchClock } from './bench-clock';
export { everyFrame } from './frames';
export { Persisted } from './persisted.svelte';
export {
	countingWays,
	Preferences,
	preferences,
	unitsShown,
	type CountingWay
} from './preferences.svelte';
