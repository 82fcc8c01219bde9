/** One source of uncertainty in a result. */
export type UncertaintyInput = {
	/** Short name, for the budget. */
	name: string;
	/** Standard uncertainty of the input, in its own unit. */
	standardUncertainty: number;
	/** By how much the result changes per unit of the input. */
	sensitivity: number;
	/** Infinite when left out. */
	degreesOfFreedom?: number;
};

export type CombinedUncertainty = {
	standardUncertainty: number;
	/** Each input's own share, |c| u, in the unit of the result. */
	contributions: { name: string; contribution: number }[];
};

/**
 * Combined standard uncertainty by the law of propagation. Source: JCGM 100:2008 (GUM), eq. 10 and,
 * with correlations, eq. 16.
 *
 * @param correlations coefficient between inputs i and j, −1 to 1; those left out are 0
 */
export function combineUncertainty(
	inputs: readonly UncertaintyInput[],
	correlations: readonly { i: number; j: number; r: number }[] = []
): CombinedUncertainty {
	const signed = inputs.map((input) => {
		if (!(input.standardUncertainty >= 0))
			throw new RangeError(
				`standardUncertainty of ${input.name} must be 0 or above; found ${input.standardUncertainty}`
			);
		return input.sensitivity * input.standardUncertainty;
	});
	let variance = signed.reduce((sum, value) => sum + value * value, 0);
	for (const { i, j, r } of correlations) {
		const a = signed[i];
		const b = signed[j];
		if (a === undefined || b === undefined || i === j)
			throw new RangeError(`i and j must be two of the inputs; found ${i} and ${j}`);
		if (!(r >= -1 && r <= 1)) throw new RangeError(`r must be between -1 and 1; found ${r}`);
		variance += 2 * r * a * b;
	}
	return {
		standardUncertainty: Math.sqrt(Math.max(0, variance)),
		contributions: inputs.map((input, i) => ({
			name: input.name,
			contribution: Math.abs(signed[i] ?? 0)
		}))
	};
}

/**
 * Effective degrees of freedom of a combined standard uncertainty of independent inputs.
 * Source: Welch–Satterthwaite, JCGM 100:2008, eq. G.2b.
 */
export function effectiveDegreesOfFreedom(inputs: readonly UncertaintyInput[]): number {
	const { standardUncertainty } = combineUncertainty(inputs);
	const sum = inputs.reduce((total, input) => {
		const contribution = input.sensitivity * input.standardUncertainty;
		return total + contribution ** 4 / (input.degreesOfFreedom ?? Number.POSITIVE_INFINITY);
	}, 0);
	return sum === 0 ? Number.POSITIVE_INFINITY : standardUncertainty ** 4 / sum;
}
