import type { Analysis } from './analysis';
import type { Normal } from './mixture';
import { merged } from './mixture';

/** What an explanation carries: its weight and, under it, the tank's value. */
export type Belief = { place: number; probability: number; mean: number; variance: number };

/** Nothing is ever certain: no probability is nearer to 0 or 1 than this. */
export const LEAST_PROBABILITY = 1e-6;
export const notCertain = (probability: number): number =>
	Math.min(1 - LEAST_PROBABILITY, Math.max(LEAST_PROBABILITY, probability));

const knownBeliefs = new WeakMap<Analysis, Belief[]>();
const knownMixtures = new WeakMap<Analysis, Normal[]>();

/** What was made of an analysis before, or is made of it now. */
function once<T>(known: WeakMap<Analysis, T>, analysis: Analysis, make: (of: Analysis) => T): T {
	const found = known.get(analysis) ?? make(analysis);
	known.set(analysis, found);
	return found;
}

/** Weight and value by explanation, those without weight left out. */
export const beliefsOf = (analysis: Analysis): readonly Belief[] =>
	once(knownBeliefs, analysis, beliefsNow);

function beliefsNow({ components, weights, places }: Analysis): Belief[] {
	const probability = new Float64Array(places.count);
	const first = new Float64Array(places.count);
	const second = new Float64Array(places.count);
	for (let i = 0; i < components.length; i++) {
		const at = components.explanation[i]!;
		const weight = weights[i]!;
		const mean = components.tankMean[i]!;
		probability[at]! += weight;
		first[at]! += weight * mean;
		second[at]! += weight * (components.tankVariance[i]! + mean * mean);
	}
	const found: Belief[] = [];
	probability.forEach((each, place) => {
		if (!(each > 0)) return;
		const mean = first[place]! / each;
		found.push({
			place,
			probability: each,
			mean,
			variance: Math.max(0, second[place]! / each - mean * mean)
		});
	});
	return found.sort((a, b) => b.probability - a.probability || a.place - b.place);
}

/** Id of an explanation: those of its faults, in order of the alphabet. */
export function idOf({ places, faults }: Analysis, place: number): string {
	if (place === places.noneOfThese) return 'noneOfThese';
	const ids = places.faultsAt(place).map((fault) => faults[fault]!.id);
	return ids.length === 0 ? 'none' : ids.sort().join('+');
}

/** The tank's value over all accounts, as few normal distributions. */
export const tankMixture = (analysis: Analysis): readonly Normal[] =>
	once(knownMixtures, analysis, mixtureNow);

function mixtureNow({ components, weights }: Analysis): Normal[] {
	const normals: Normal[] = [];
	for (let i = 0; i < components.length; i++)
		if (weights[i]! > 1e-8)
			normals.push({
				weight: weights[i]!,
				mean: components.tankMean[i]!,
				standardDeviation: Math.sqrt(Math.max(1e-9, components.tankVariance[i]!))
			});
	const found = merged(normals);
	const whole = found.reduce((sum, { weight }) => sum + weight, 0);
	return found.map((each) => ({ ...each, weight: each.weight / whole }));
}

/** The explanation that carries most between two values of the tank. */
export function explanationBetween(
	analysis: Analysis,
	beliefs: readonly Belief[],
	low: number,
	high: number
): string {
	const { components, weights, places } = analysis;
	const inside = new Float64Array(places.count);
	for (let i = 0; i < components.length; i++) {
		const mean = components.tankMean[i]!;
		if (mean >= low && mean < high) inside[components.explanation[i]!]! += weights[i]!;
	}
	let best = beliefs[0]?.place ?? places.none;
	inside.forEach((weight, place) => {
		if (weight > inside[best]!) best = place;
	});
	return idOf(analysis, best);
}
