import { randomNormal, randomUniform } from '../metrology/seeded';

/** Draws of a seeded study. */
export type Chance = {
	uniform: () => number;
	normal: () => number;
	/** Even, or triangular, between minus and plus a half-width. */
	even: (halfWidth: number) => number;
	triangular: (halfWidth: number) => number;
};

export function chanceOf(seed: number): Chance {
	const uniform = randomUniform(seed);
	return {
		uniform,
		normal: randomNormal(uniform),
		even: (halfWidth) => (2 * uniform() - 1) * halfWidth,
		triangular: (halfWidth) => (uniform() - uniform()) * halfWidth
	};
}
