import {
	blandAltman,
	enNumber,
	pairedDifferences,
	zetaScore,
	type BlandAltman,
	type DifferenceTest
} from '$lib/metrology';
import { lineThrough, type Scatter, type ThroughBoth } from './line';
import type { MeasuredPair, PairsTyped } from './pairs';

/** What two values of one sample that both have a ± say of each other. */
export type Score = { pair: MeasuredPair; en: number; zeta: number };
/** 8.4 − 8.1 is not 0.3 in binary: on the limit is within it. */
export const isWithinBoth = ({ en }: Score): boolean => Math.abs(en) <= 1 + 1e-9;
export type Comparison = {
	pairs: readonly MeasuredPair[];
	/** Finest step that a difference can have, as the values were typed. */
	step: number;
	/** From two samples on. */
	differences: DifferenceTest | null;
	/** From three on. */
	limits: BlandAltman | null;
	line: ThroughBoth | null;
	/** Of the samples that have both ±. */
	scores: readonly Score[];
};

/**
 * Two ways of measuring, held against each other: the differences are those of the own kit less the
 * other. What there are too few samples for is null.
 *
 * @param scatter standard deviation of each from test to test, where it is known
 */
export function comparisonOf(typed: PairsTyped, scatter: Scatter | null): Comparison {
	const { pairs, ownStep, otherStep } = typed;
	const both = pairs.map(({ own: a, other: b }) => ({ a, b }));
	// Rounding of both moves a difference.
	const step = Math.hypot(ownStep, otherStep);
	const resolution = { resolution: step };
	return {
		pairs,
		step,
		differences: pairs.length < 2 ? null : pairedDifferences(both, resolution),
		limits: pairs.length < 3 ? null : blandAltman(both, resolution),
		line: lineThrough(typed, scatter),
		scores: pairs.flatMap((pair) => {
			const { own, other, ownU, otherU } = pair;
			if (ownU === undefined || otherU === undefined) return [];
			const en = enNumber(own, ownU, other, otherU);
			return [{ pair, en, zeta: zetaScore(own, ownU / 2, other, otherU / 2) }];
		})
	};
}
