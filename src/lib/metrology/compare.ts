function requireNumber(field: string, value: number): void {
	if (!Number.isFinite(value)) throw new RangeError(`${field} must be a number; found ${value}`);
}

function requireUncertainty(field: string, value: number): void {
	if (!(value >= 0 && Number.isFinite(value)))
		throw new RangeError(`${field} must be 0 or above; found ${value}`);
}

/** Difference of two results over their joint uncertainty. */
function ratio(
	value: number,
	reference: number,
	u1: number,
	u2: number,
	names: [string, string]
): number {
	requireNumber('value', value);
	requireNumber('reference', reference);
	requireUncertainty(names[0], u1);
	requireUncertainty(names[1], u2);
	const joint = Math.hypot(u1, u2);
	if (joint === 0) throw new RangeError(`${names[0]} and ${names[1]} must not both be 0`);
	return (value - reference) / joint;
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
	return ratio(value, reference, expandedUncertainty, referenceExpandedUncertainty, [
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
	return ratio(value, reference, standardUncertainty, referenceStandardUncertainty, [
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

/**
 * What was found of a known content, with its uncertainty from those of both.
 *
 * @throws RangeError naming the field that is no number, or out of its range
 */
export function recoveryOf(
	found: number,
	foundStandardUncertainty: number,
	expected: number,
	expectedStandardUncertainty: number
): Recovery {
	requireNumber('found', found);
	if (!(expected > 0 && Number.isFinite(expected)))
		throw new RangeError(`expected must be above 0; found ${expected}`);
	requireUncertainty('foundStandardUncertainty', foundStandardUncertainty);
	requireUncertainty('expectedStandardUncertainty', expectedStandardUncertainty);
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
