import { chanceOf, type Chance } from '../chance';

/** One number out of several, so that each case has draws of its own, whoever works it out and when. */
export function seedOf(...parts: readonly (number | string)[]): number {
	// FNV-1a, 32 bits (Fowler, Noll and Vo; public domain).
	let hash = 0x811c9dc5;
	for (const char of parts.join('|')) {
		hash ^= char.charCodeAt(0);
		hash = Math.imul(hash, 0x01000193);
	}
	return hash >>> 0;
}

export const chanceAt = (...parts: readonly (number | string)[]): Chance => {
	const chance = chanceOf(seedOf(...parts));
	// Seeds that lie near each other begin alike; the first draws are thrown away.
	for (let i = 0; i < 4; i++) chance.uniform();
	return chance;
};

export const pick = <T>(chance: Chance, from: readonly T[]): T => {
	const found = from[Math.floor(chance.uniform() * from.length)];
	if (found === undefined) throw new RangeError('from must hold something; found nothing');
	return found;
};

/** One of many, by weights that need not sum to anything. */
export function pickWeighted<T>(
	chance: Chance,
	from: readonly T[],
	weightOf: (each: T) => number
): T {
	let left = chance.uniform() * from.reduce((sum, each) => sum + weightOf(each), 0);
	for (const each of from) if ((left -= weightOf(each)) < 0) return each;
	return pick(chance, from.slice(-1));
}

export function shuffled<T>(chance: Chance, from: readonly T[]): T[] {
	return from
		.map((each) => ({ each, at: chance.uniform() }))
		.sort((a, b) => a.at - b.at)
		.map(({ each }) => each);
}

export const between = ({ uniform }: Chance, low: number, high: number): number =>
	low + (high - low) * uniform();
export const sign = ({ uniform }: Chance): 1 | -1 => (uniform() < 0.5 ? -1 : 1);
