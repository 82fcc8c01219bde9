import type { Analyte, Unit } from '../../kits';
import type { MethodFigures } from '../../metrology';
import type { CheckId } from '../../observation';
import type { Cue, Fault, FaultClass } from '../catalogue/fault';
import type { Normal } from './mixture';

/** One account of what happened: no fault, one, or two; or a real change of the water; or none of these. */
export type Explanation = {
	/** Ids joined by '+', in order of the alphabet; 'none' and 'noneOfThese' by those names. */
	id: string;
	/** Ids of its faults; `realChange` stands for a change of the water itself. */
	faults: readonly string[];
	/** Between 0 and 1, neither included. */
	probability: number;
	/** True value if this is how it was, with its standard uncertainty, in the diagnosis' unit. */
	trueValue: { mean: number; standardUncertainty: number };
};

/** Causes that nothing known so far can tell apart, and what would. */
export type FaultGroup = {
	faults: readonly string[];
	/** That one of them is there. */
	probability: number;
	/** The check that would split them best; null when none of those known does. */
	splitBy: CheckId | null;
	/** A question still open that goes before it: it costs seconds, and tells a good part of as much. */
	askFirst?: string;
};

/**
 * Evidence that does not fit together unless something is wrong or the water has changed: two pieces
 * that lie too far apart, or one known solution that reads off what it holds.
 */
export type Contradiction = {
	/** Places in the evidence, in order: two pieces, or one known solution. */
	at: readonly number[];
	/**
	 * What lies apart: two tests of today's water by the kit, two methods on today's water, readings of
	 * different days (the water may have changed between them), or a known solution.
	 */
	between?: 'tests' | 'methods' | 'days' | 'solution';
	/** The second less the first, or the reading less what is held; differences to be expected taken off. */
	difference: number;
	/** Expanded uncertainty (k = 2) of that difference if nothing is wrong. */
	ordinary: number;
};

/** A hump of the posterior of the true value. */
export type Hump = {
	weight: number;
	mean: number;
	standardUncertainty: number;
	/** Id of the most probable explanation under it. */
	explanation: string;
};

/** The true value of the tank's water, as far as the evidence tells; in the diagnosis' unit. */
export type TrueValue = {
	mean: number;
	median: number;
	standardDeviation: number;
	/** 2.5 and 97.5 % quantiles. */
	interval95: readonly [number, number];
	/** Largest first; more than one where the values lie apart. */
	humps: readonly Hump[];
	/** For drawing: values in order, with probability densities. */
	density: readonly { value: number; density: number }[];
};

/** Why something independent of the kit that was asked speaks for nothing. */
export type SilentWitness =
	/** The known solution vouches for kit and hands, and the one test in question may well have slipped. */
	| 'readingDoubted'
	/** The known solution read off what it holds: the kit or the solution is off. */
	| 'solutionOff'
	/** The known solution, or the other method, may well be what is wrong itself. */
	| 'solutionDoubted'
	| 'methodDoubted'
	/** The ± of the other method is too wide to bear anything out. */
	| 'methodTooWide';

/** The test in question, as it stands among the evidence. */
export type InQuestion = {
	value: number;
	/** About 95 %, by the figures of the kit or what the reading claims. */
	expandedUncertainty: number;
	unit: Unit;
	analyte: Analyte;
	/** Something else read today's water as well: the kit once more, or another method. */
	isRepeated: boolean;
	/** Further from an earlier reading than tests scatter and water drifts. */
	isFarFromBefore: boolean;
	/** What was dosed and used up since let a change be expected from an earlier reading. */
	isChangeExpected?: boolean;
	/** An answer names what likely made it read so. */
	isExplained: boolean;
};

export type Diagnosis = {
	unit: Unit;
	/** All that carry weight, the most probable first; with `noneOfThese` they sum to 1. */
	explanations: readonly Explanation[];
	/** Probability that each fault is there, alone or with another, by its id. */
	faults: Readonly<Record<string, number>>;
	/** Probability that something of the class is wrong; a pair counts for both of its classes. */
	classes: Readonly<Record<FaultClass, number>>;
	/** Nothing is wrong and the water has not changed out of the ordinary. */
	nothingWrong: number;
	/** The water of the tank has really changed. */
	waterChanged: number;
	/** What is wrong stands in no list. */
	noneOfThese: number;
	groups: readonly FaultGroup[];
	trueValue: TrueValue;
	/**
	 * The distribution of the true value as normal distributions with weights that sum to 1: plain data,
	 * from which `withCumulative` makes `cumulative` again where a diagnosis was sent or stored.
	 */
	mixture?: readonly Normal[];
	/** Probability that the true value lies at or below a value, in the diagnosis' unit. */
	cumulative(value: number): number;
	/**
	 * Something independent holds the true value, and is not itself what is probably wrong: the kit in
	 * question was given a known solution, or another method measured the tank. A known solution vouches
	 * for kit and hands alone: it holds nothing while the one test in question may well have slipped and
	 * was not repeated. Without it nothing is ever more than 'probably'.
	 */
	isIndependent: boolean;
	/** A known solution is among what holds it. */
	isKitVouched?: boolean;
	/** What is independent of the kit, was asked, and speaks for nothing yet: why. */
	silentWitnesses?: readonly SilentWitness[];
	/** Pieces of evidence that do not fit together, the worst first; in the diagnosis' unit. */
	contradictions?: readonly Contradiction[];
	/** The test in question reads what no tank holds, and no other reading of that water stands beside it. */
	isBeyondAnyTank?: boolean;
	/** Probably nothing that was read bears on the tank: `trueValue` is then what was thought of tanks beforehand. */
	isTankUnread?: boolean;
	/** Null where no test is in question. */
	inQuestion?: InQuestion | null;
	/**
	 * Among what was not used is a number beside the one in question that can hardly have been read: it is to
	 * be looked at before anything else.
	 */
	hasSetAside?: boolean;
	/** Evidence that could not be used, with the reason; nothing is dropped silently. */
	unused: readonly { at: number; why: string }[];
};

export type DiagnoseOptions = {
	/** The kit in question; the invented kit of the project for the analyte when left out. */
	method?: MethodFigures;
	/** What is measured, where no kit is known; alkalinity when left out. */
	analyte?: Analyte;
	/** Unit of the answer; that of the test in question when left out. */
	unit?: Unit;
	/** Probabilities in place of those of the catalogue, by fault id (any other name is refused); 0 takes a fault out. */
	priors?: Readonly<Record<string, number>>;
	/** Another catalogue, or more faults. */
	faults?: readonly Fault[];
	cues?: readonly Cue[];
	/** How much rarer two faults at once are than chance would have it; within 0 to 1. */
	pairFactor?: number;
	/** Probability that the water has changed out of the ordinary since the last reading. */
	realChangePrior?: number;
	/** Probability that what is wrong stands in no list. */
	noneOfThesePrior?: number;
	/** What is known of the tank's value without any reading: mean and standard deviation. */
	priorValue?: { mean: number; standardDeviation: number; unit: Unit };
};
