import { normalCdf } from './normal-cdf';

/** A normal distribution with a weight; weights of a mixture sum to 1. */
export type Normal = { weight: number; mean: number; standardDeviation: number };

/** Probability that a mixture lies at or below a value. */
export function cumulativeOf(mixture: readonly Normal[], value: number): number {
	let sum = 0;
	for (const { weight, mean, standardDeviation } of mixture)
		sum += weight * normalCdf((value - mean) / standardDeviation);
	return sum;
}

export function densityOf(mixture: readonly Normal[], value: number): number {
	let sum = 0;
	for (const { weight, mean, standardDeviation: sd } of mixture) {
		const z = (value - mean) / sd;
		if (z > -9 && z < 9) sum += (weight * Math.exp(-0.5 * z * z)) / sd;
	}
	return sum / Math.sqrt(2 * Math.PI);
}

export function momentsOf(mixture: readonly Normal[]): { mean: number; standardDeviation: number } {
	const weight = mixture.reduce((sum, each) => sum + each.weight, 0);
	const mean = mixture.reduce((sum, each) => sum + each.weight * each.mean, 0) / weight;
	const variance =
		mixture.reduce(
			(sum, each) => sum + each.weight * (each.standardDeviation ** 2 + (each.mean - mean) ** 2),
			0
		) / weight;
	return { mean, standardDeviation: Math.sqrt(variance) };
}

/** Value below which a mixture lies with a probability, to a ten-thousandth of its spread. */
export function quantileOf(mixture: readonly Normal[], probability: number): number {
	const { mean, standardDeviation } = momentsOf(mixture);
	let low = mean - 12 * standardDeviation;
	let high = mean + 12 * standardDeviation;
	while (high - low > 1e-4 * standardDeviation) {
		const middle = (low + high) / 2;
		if (cumulativeOf(mixture, middle) < probability) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}

/**
 * Means nearer to each other than this share of a width, and widths that differ by less (in their
 * logarithm), are merged; what carries little more coarsely.
 */
const FINE = { place: 0.25, width: 0.2 };
const COARSE = { place: 1, width: 0.7 };
const LITTLE = 1e-4;

/** Merges what lies on top of each other; weight, mean and variance of the whole are kept. */
export function merged(mixture: readonly Normal[]): Normal[] {
	const heavy = bucketed(mixture, FINE);
	const light = heavy.filter(({ weight }) => weight < LITTLE);
	return [...heavy.filter(({ weight }) => weight >= LITTLE), ...bucketed(light, COARSE)].sort(
		(a, b) => a.mean - b.mean || a.standardDeviation - b.standardDeviation
	);
}

function bucketed(mixture: readonly Normal[], to: { place: number; width: number }): Normal[] {
	const buckets = new Map<number, { weight: number; sum: number; squares: number }>();
	for (const { weight, mean, standardDeviation } of mixture) {
		const width = Math.round(Math.log(standardDeviation) / to.width);
		const place = Math.round(mean / (to.place * Math.exp(width * to.width)));
		const key = place * 4096 + width;
		const bucket = buckets.get(key);
		const squares = weight * (standardDeviation ** 2 + mean ** 2);
		if (bucket) {
			bucket.weight += weight;
			bucket.sum += weight * mean;
			bucket.squares += squares;
		} else buckets.set(key, { weight, sum: weight * mean, squares });
	}
	return [...buckets.values()].map(({ weight, sum, squares }) => {
		const mean = sum / weight;
		const variance = Math.max(1e-12, squares / weight - mean ** 2);
		return { weight, mean, standardDeviation: Math.sqrt(variance) };
	});
}
