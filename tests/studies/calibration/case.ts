import type { Band, FaultClass } from '../../../src/lib/judgement';
import type { Analyte } from '../../../src/lib/kits';
import type { MethodFigures } from '../../../src/lib/metrology';
import type { CheckId, Evidence } from '../../../src/lib/observation';

/** A cause as the truth has it. `ids`: what the catalogue may rightly call it; empty where it has no name there. */
export type TrueCause = {
	ids: readonly string[];
	/** Its class, and others that a fair judge would take as well. */
	classes: readonly FaultClass[];
	/** Stands in no catalogue: 'none of these' is a right answer too. */
	isOdd?: boolean;
};

/**
 * Something to be diagnosed, with the truth to judge by. Values in the customary unit of the method's
 * analyte (dKH, mg/L) unless a reading says otherwise.
 */
export type CalibrationCase = {
	/** What kind of evidence it has, and what was done to it. */
	set: string;
	evidence: readonly Evidence[];
	method: MethodFigures;
	band: Band;
	truth: { trueValue: number; causes: readonly TrueCause[] };
	/** What a check finds, done for the n-th time; null where checks cannot be asked for. */
	ask: ((check: CheckId, round: number) => Evidence) | null;
};

/** Kinds of evidence besides the reading in question, in turn. */
export const evidenceSets = [
	'reading alone',
	'two repeats',
	'known solution',
	'second method',
	'two earlier readings',
	'four questions',
	'all of these'
] as const;
export type EvidenceSet = (typeof evidenceSets)[number];
export const setAt = (index: number): EvidenceSet =>
	evidenceSets[index % evidenceSets.length] ?? 'reading alone';
export const has = (set: EvidenceSet, one: EvidenceSet): boolean =>
	set === one || set === 'all of these';

/** The band that is taken where nobody has one of their own; common practice, no source. */
export const usualBandOf = (analyte: Analyte): Band =>
	({
		alkalinity: { low: 7, high: 9, unit: 'dKH' },
		calcium: { low: 380, high: 450, unit: 'mg/L' },
		magnesium: { low: 1250, high: 1400, unit: 'mg/L' },
		hardness: { low: 60.9, high: 68.8, unit: 'mmol/L' }
	})[analyte] as Band;
export const usualBand: Band = usualBandOf('alkalinity');
