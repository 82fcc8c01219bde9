import type { Analyte, Unit } from '../../kits';
import type { LivestockLook } from '../../observation';
import type { Diagnosis } from '../diagnosis/diagnosis';
import type { RankedCheck } from '../ranking/ranked-check';

/** Between which values the person wants the tank. */
export type Band = { low: number; high: number; unit: Unit };

export type DecideInput = {
	/** Null only in an emergency, which needs no number. */
	diagnosis: Diagnosis | null;
	/** Alkalinity when left out. */
	analyte?: Analyte;
	band: Band;
	livestock: LivestockLook;
	/**
	 * What `rankChecks` says of the same evidence with the same band and look of the animals: the check that
	 * comes next, if any; all that are left, the best first (`next` alone when left out); and whether checking
	 * has told enough. Told otherwise, nothing is adjusted that is not verified all the same.
	 */
	next: RankedCheck | null;
	ranked?: readonly RankedCheck[];
	isEnough: boolean;
	/** Change per day as far as earlier readings tell, in the band's unit, with its expanded uncertainty. */
	rate?: { perDay: number; expandedUncertainty: number } | null;
	/** What the animals use a day, in the band's unit, as far as it is known: how often to test. */
	consumptionPerDay?: number | null;
	/** Things that make any plan wrong until they are cleared up. */
	isUnitSure?: boolean;
	/** True where it is known to be near that of the sea and stands nowhere as a number; false where it is not known. */
	isSalinityKnown?: boolean;
	/**
	 * PSU or g/kg, within `possibleSalinity`; null where it is not known. Left out, with nothing said by
	 * `isSalinityKnown` either, it is not known: nothing is adjusted then.
	 */
	salinity?: number | null;
	/** Who is asking: a sitter or a child reads and tells, and never doses. */
	who?: 'keeper' | 'sitter' | 'child';
	/** Something is happening that needs no number: haze, gasping, a stuck doser. */
	isEmergency?: boolean;
	/** A new tank without stony corals needs no correction. */
	hasStonyCorals?: boolean;
};

export type Decision = {
	verdict: 'leave' | 'check' | 'adjust' | 'emergency';
	/** Which way an adjustment would go; null unless 'adjust'. */
	direction: 'raise' | 'lower' | null;
	/** That the true value lies below, within and above the band; null where nothing was measured. */
	probabilities: { below: number; within: number; above: number } | null;
	/** Each one sentence, the weightiest first. */
	because: readonly string[];
	/** What would make the advice another. */
	wouldChange: readonly string[];
	/** The check to make first; null unless 'check', and where something else lacks. */
	check: RankedCheck | null;
	/**
	 * What comes first and stands in no ranking of checks: a number that a tank can hold, the same water
	 * tested again, to know the unit or the salinity, to put a salinity right that is off, or anything that
	 * is independent of the kit. Null where nothing does.
	 */
	lacks: 'reading' | 'repeat' | 'unit' | 'salinity' | 'salinityRight' | 'independent' | null;
	/** Verified by something independent: a known solution or a second method. */
	isVerified: boolean;
	/**
	 * Since the last reading: a change that the test cannot resolve is called so; one that a fault may have
	 * made as well as the water is not settled.
	 */
	change: 'tooSmallToTell' | 'notSettled' | 'likelyReal' | null;
	/** Days until the next test; 0 is today. */
	retestInDays: number;
};
