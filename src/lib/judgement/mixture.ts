import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/** A normal distribution with a weight; weights of a mixture sum to 1. */
export type Normal = { weight: number; mean: number; standardDeviation: number };

/** Probability that a mixture lies at or below a value. */
export function cumulativeOf(mixture: readonly Normal[], value: number): number {
	let sum = 0;
	for (const { weight, mean, standardDeviation } of mixture)
		sum += weight * normalCdf(value, mean, standardDeviation);
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

/** Means nearer to each other than this share of a width, and widths that differ by less, are merged. */
const SAME_PLACE = 0.2;
const SAME_WIDTH = 0.15;

/**
 * Merges what lies on top of each other; weight, mean and variance of the whole are kept. What is
 * merged differs by less than a fifth of its own width.
 */
export function merged(mixture: Iterable<Normal>): Normal[] {
	const buckets = new Map<string, { weight: number; sum: number; squares: number }>();
	for (const { weight, mean, standardDeviation } of mixture) {
		const width = Math.round(Math.log(standardDeviation) / SAME_WIDTH);
		const place = Math.round(mean / (SAME_PLACE * Math.exp(width * SAME_WIDTH)));
		const key = `${width} ${place}`;
		const bucket = buckets.get(key) ?? { weight: 0, sum: 0, squares: 0 };
		bucket.weight += weight;
		bucket.sum += weight * mean;
		bucket.squares += weight * (standardDeviation ** 2 + mean ** 2);
		buckets.set(key, bucket);
	}
	return [...buckets.values()]
		.map(({ weight, sum, squares }) => {
			const mean = sum / weight;
			return {
				weight,
				mean,
				standardDeviation: Math.sqrt(Math.max(1e-12, squares / weight - mean ** 2))
			};
		})
		.sort((a, b) => a.mean - b.mean || a.standardDeviation - b.standardDeviation);
}
