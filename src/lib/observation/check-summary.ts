import type { Unit } from '../kits';

/** What a check may come to, in a word. */
export const checkVerdicts = ['leave', 'check', 'adjust', 'emergency'] as const;
export type CheckVerdict = (typeof checkVerdicts)[number];

/** What a list needs to know of a check, without playing its log. It follows from the log. */
export type CheckSummary = {
	/** Of the reading in question. */
	value: number;
	unit: Unit;
	/** About 95 %. */
	expandedUncertainty: number;
	/** Nobody gave the uncertainty: it was taken as is usual. */
	isUncertaintyTaken?: boolean;
	/** What was advised last; left out where it had not come to that. */
	verdict?: CheckVerdict;
};
