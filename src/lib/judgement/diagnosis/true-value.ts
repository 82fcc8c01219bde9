import type { Hump, TrueValue } from './diagnosis';
import { cumulativeOf, densityOf, momentsOf, quantileOf, type Normal } from './mixture';

const POINTS = 121;
/** Two humps are two where the valley between them is this much lower than the lower one. */
const VALLEY = 0.75;
/** A hump that carries less is drawn, and not named. */
const LEAST_HUMP = 0.05;

/** Where one hump ends and the next begins, by the density at even steps. */
function valleysOf(density: readonly number[]): number[] {
	const tops: number[] = [];
	const valleys: number[] = [];
	let lowest = 0;
	for (let i = 1; i < density.length - 1; i++) {
		const here = density[i] ?? 0;
		if (here < (density[lowest] ?? 0)) lowest = i;
		if (here < (density[i - 1] ?? 0) || here < (density[i + 1] ?? 0)) continue;
		const before = tops.at(-1);
		if (before === undefined) {
			tops.push(i);
			lowest = i;
			continue;
		}
		const valley = density[lowest] ?? 0;
		if (valley < VALLEY * Math.min(here, density[before] ?? 0)) {
			valleys.push(lowest);
			tops.push(i);
		} else if (here > (density[before] ?? 0)) tops[tops.length - 1] = i;
		else continue;
		lowest = i;
	}
	return valleys;
}

/** What the true value may be, from a mixture; `explanationBetween` names what is under a hump. */
export function trueValueOf(
	mixture: readonly Normal[],
	explanationBetween: (low: number, high: number) => string
): TrueValue {
	const { mean, standardDeviation } = momentsOf(mixture);
	const interval95 = [quantileOf(mixture, 0.025), quantileOf(mixture, 0.975)] as const;
	const low = quantileOf(mixture, 0.0005);
	const high = quantileOf(mixture, 0.9995);
	const values = Array.from({ length: POINTS }, (_, i) => low + ((high - low) * i) / (POINTS - 1));
	const density = values.map((value) => ({ value, density: densityOf(mixture, value) }));
	const valleys = valleysOf(density.map((point) => point.density)).map((i) => values[i] ?? 0);
	const edges = [Number.NEGATIVE_INFINITY, ...valleys, Number.POSITIVE_INFINITY];
	const humps = edges.slice(1).flatMap((to, i): Hump[] => {
		const from = edges[i] ?? Number.NEGATIVE_INFINITY;
		const inside = within(mixture, from, to);
		if (inside.weight < LEAST_HUMP && valleys.length > 0) return [];
		return [
			{
				weight: inside.weight,
				mean: inside.mean,
				standardUncertainty: inside.standardDeviation,
				explanation: explanationBetween(from, to)
			}
		];
	});
	return {
		mean,
		median: quantileOf(mixture, 0.5),
		standardDeviation,
		interval95,
		humps: humps.sort((a, b) => b.weight - a.weight),
		density
	};
}

/** Weight, mean and spread of the part of a mixture between two values, summed in even steps. */
function within(mixture: readonly Normal[], from: number, to: number) {
	const whole = momentsOf(mixture);
	const low = Math.max(from, whole.mean - 9 * whole.standardDeviation);
	const high = Math.min(to, whole.mean + 9 * whole.standardDeviation);
	const steps = 200;
	let weight = 0;
	let sum = 0;
	let squares = 0;
	let below = cumulativeOf(mixture, low);
	for (let i = 0; i < steps; i++) {
		const value = low + ((high - low) * (i + 0.5)) / steps;
		const upTo = cumulativeOf(mixture, low + ((high - low) * (i + 1)) / steps);
		const mass = upTo - below;
		below = upTo;
		weight += mass;
		sum += mass * value;
		squares += mass * value * value;
	}
	if (!(weight > 0)) return { weight: 0, mean: whole.mean, standardDeviation: 0 };
	const mean = sum / weight;
	return { weight, mean, standardDeviation: Math.sqrt(Math.max(0, squares / weight - mean ** 2)) };
}
