import type { Unit } from '../../kits';
import type { CheckId, LivestockLook } from '../../observation';
import type { Band } from '../decision/decision';
import type { DiagnoseOptions } from '../diagnosis/diagnosis';

/** What a check costs the person. */
export type CheckCost = {
	minutes: number;
	/** Price and risk, each as the minutes somebody would give to be spared it. */
	priceMinutes: number;
	riskMinutes: number;
};

/** A check, or a question, or two checks that tell more together. */
export type Candidate =
	{ kind: 'checks'; checks: readonly CheckId[] } | { kind: 'cue'; cue: string };

export type RankedCheck = Candidate & {
	/** Expected information about what is wrong, in bits. */
	information: number;
	cost: CheckCost;
	/** Bits per minute of cost; the ranking. */
	score: number;
	/** Chance that it changes the advice. */
	changesAdvice: number;
	/** Why this one, in one sentence: which explanations it would part. */
	because: string;
};

export type CheckRanking = {
	/** The best first. */
	ranked: readonly RankedCheck[];
	/**
	 * The one to be made next: it need not be the best, as a reading far off that was made once is repeated
	 * first. Null where it is enough, and where nothing that is left can be made.
	 */
	next: RankedCheck | null;
	/** Nothing of the reading is to be checked before the advice: it will name no further check of it. */
	isEnough: boolean;
	/** A number beside the one in question is to be looked at before any check. */
	isNumberFirst?: boolean;
	/** Why it is enough, or why it is not, in one sentence. */
	because: string;
	/**
	 * What the same test of the same water would probably read, in the customary unit, by which its cost in
	 * titrant goes: a reading in doubt does not tell it. Null where there is no test in question.
	 */
	repeatReads?: { value: number; unit: Unit } | null;
};

export type RankOptions = DiagnoseOptions & {
	/** The checks that can be had; all that make sense when left out. */
	available?: readonly CheckId[];
	/** Costs in place of the usual ones. */
	costs?: Partial<Record<CheckId, Partial<CheckCost>>>;
	/** The person's own band; the default one when left out. */
	band?: Band;
	/** How the animals look, which counts a little in the advice; 'notLooked' when left out. */
	livestock?: LivestockLook;
};
