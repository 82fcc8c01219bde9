import type { BenchCheckId, Conclusion, BenchEvidence, Reading } from '../observation';
import { factsOf, type MatrixEffect } from './facts';
import { rules } from './rules';

/** Whether the evidence that was collected carries a conclusion. Being right by luck is not it. */
export type Support = {
	verdict: 'earned' | 'notYet' | 'against';
	/** One plain sentence. */
	why: string;
	/** The check that would have told more; null when nothing is missing or nothing more was to be had. */
	wouldTellMore: BenchCheckId | null;
};

export type SupportInput = {
	/** The reading in question. */
	reading: Reading;
	/** Whatever was collected; the reading itself may be among it. */
	evidence: readonly BenchEvidence[];
	conclusion: Conclusion;
	/** What a reference in this matrix is known to read over its content with a good kit, in the unit. */
	matrixEffect?: MatrixEffect;
	/** The checks that could be had; any of them when left out. */
	offered?: readonly BenchCheckId[];
};

/** Whether a conclusion was earned by the evidence. The order of the evidence does not matter. */
export function supportOf(input: SupportInput): Support {
	const { reading, evidence, conclusion, matrixEffect, offered } = input;
	const { verdict, why, next } = rules[conclusion](factsOf(reading, evidence, matrixEffect));
	const isToBeHad = (check: BenchCheckId) => offered === undefined || offered.includes(check);
	return { verdict, why, wouldTellMore: next.find(isToBeHad) ?? null };
}
