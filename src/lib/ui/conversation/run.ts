import type { Kit, Unit } from '$lib/kits';
import type {
	CheckRanking,
	CorrectionPlan,
	Decision,
	Diagnosis,
	PlanRefused
} from '$lib/judgement';
import type { Evidence, LivestockLook, Means, Tank } from '$lib/observation';
import type { CheckLog, CheckState } from '$lib/procedure';

/** A stored test that can be evidence. */
export type LoggedLine = {
	id: string;
	value: string;
	band: string;
	unitName: string;
	when: string;
	kitName: string;
	isSameKit: boolean;
	/** What was in the vial is said to hold this: it was a known solution, and not the tank's water. */
	holds?: string;
};

/** What would be believed without one piece of evidence. */
export type WithoutPiece = {
	/** Its place in the evidence of the state. */
	at: number;
	/** Of the explanations, by their ids. */
	probabilities: Readonly<Record<string, number>>;
};

/** What the screens of a check need of it; `routes/check/check-run.svelte.ts` wires it. */
export interface CheckRun {
	readonly log: CheckLog;
	readonly state: CheckState;
	readonly storage: 'kept' | 'memory' | 'elsewhere';
	/** The leaflet of the kit in question; null where there is nothing but a number. */
	readonly kit: Kit | null;
	/** In which values are shown and, unless another is chosen, typed. */
	readonly unit: Unit;
	/** Null while there is no reading in question. The last answer stays while a new one is worked out. */
	readonly diagnosis: Diagnosis | null;
	/** What each piece of evidence does to the answer; null until that was worked out too. */
	readonly without: readonly WithoutPiece[] | null;
	/** Over all that is at hand: what was left out is not among it. */
	readonly ranking: CheckRanking | null;
	/** Evidence was given that the diagnosis does not know of yet. */
	readonly isThinking: boolean;
	/** Why there is no answer, in words; null while there is one or it is being worked out. */
	readonly trouble: string | null;
	/** Null until the animals were asked about; an emergency needs neither diagnosis nor animals. */
	readonly decision: Decision | null;
	/** Null unless the decision is to adjust and means were chosen. */
	readonly plan: CorrectionPlan | PlanRefused | null;
	/**
	 * Titrant that another test like the one in question will probably take, mL; before that is weighed, what
	 * that one took. Null where nobody knows.
	 */
	readonly usedMl: number | null;
	/** ms since 1970. */
	now(): number;
	/** Answers whether it was taken. */
	give(evidence: Evidence, testId?: string): boolean;
	/** Takes back what an entry said; it can be given again by undo. */
	takeBack(entryId: string): void;
	/** Checks and questions, by their ids, that the person cannot do or answer, beside those left out before. */
	leaveOut(ids: readonly string[]): void;
	/** All that was left out is at hand again. */
	putBack(): void;
	doubtUnit(isDoubted: boolean): void;
	describeTank(tank: Tank): void;
	seeLivestock(look: LivestockLook): void;
	seeEmergency(isSeen: boolean): void;
	/** Null while it is not all told by which means. */
	chooseMeans(means: Means | null): void;
	writeNote(text: string): void;
	close(): void;
	readonly canUndo: boolean;
	undo(): void;
}
