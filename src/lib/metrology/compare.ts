/** Difference of two results over their joint uncertainty. */
function ratio(difference: number, u1: number, u2: number, names: [string, string]): number {
	if (!(u1 >= 0)) throw new RangeError(`${names[0]} must be 0 or above; found ${u1}`);
	if (!(u2 >= 0)) throw new RangeError(`${names[1]} must be 0 or above; found ${u2}`);
	const joint = Math.hypot(u1, u2);
	if (joint === 0) throw new RangeError(`${names[0]} and ${names[1]} must not both be 0`);
	return difference / joint;
}

/**
 * E_n number: difference of two results over the root sum of squares of their expanded
 * uncertainties (k = 2). Up to 1 either way, they agree within what both claim. Source: ISO 13528.
 */
export function enNumber(
	value: number,
	expandedUncertainty: number,
	reference: number,
	referenceExpandedUncertainty: number
): number {
	return ratio(value - reference, expandedUncertainty, referenceExpandedUncertainty, [
		'expandedUncertainty',
		'referenceExpandedUncertainty'
	]);
}

/** Zeta score: the same with standard uncertainties; up to 2 in agreement, from 3 on not. Source: ISO 13528. */
export function zetaScore(
	value: number,
	standardUncertainty: number,
	reference: number,
	referenceStandardUncertainty: number
): number {
	return ratio(value - reference, standardUncertainty, referenceStandardUncertainty, [
		'standardUncertainty',
		'referenceStandardUncertainty'
	]);
}

export type Recovery = {
	/** Found over expected; 1 is all of it. */
	recovery: number;
	standardUncertainty: number;
	/** It differs from 1 by more than twice its standard uncertainty. */
	isOff: boolean;
};

/** What was found of a known content, with its uncertainty from those of both. */
export function recoveryOf(
	found: number,
	foundStandardUncertainty: number,
	expected: number,
	expectedStandardUncertainty: number
): Recovery {
	if (!(expected > 0)) throw new RangeError(`expected must be above 0; found ${expected}`);
	const recovery = found / expected;
	const standardUncertainty = Math.hypot(
		foundStandardUncertainty / expected,
		(recovery * expectedStandardUncertainty) / expected
	);
	return {
		recovery,
		standardUncertainty,
		isOff: Math.abs(recovery - 1) > 2 * standardUncertainty
	};
}
