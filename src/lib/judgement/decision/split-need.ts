import { convertValue, type Analyte } from '../../kits';
import type { Band, Decision } from './decision';
import type { Diagnosis } from '../diagnosis/diagnosis';

/** So many days are planned while nobody can say how far it is to go; judgement. */
export const FIRST_STEP_DAYS = 2;

/** One that is likelier than this is as good as known; judgement. */
const AS_GOOD_AS_KNOWN = 0.9;

/** One of several values that the tank may hold, in the band's unit. */
export type PossibleValue = { value: number; standardUncertainty: number };

/** How far a value has to be moved where several are possible that lie apart. */
export type SplitNeed = {
	/** Of those that call for it, the one that lies nearest to the band: as much is needed at least. */
	nearest: PossibleValue;
	/** The others, in order. */
	others: readonly PossibleValue[];
	/** All of them call for it: the way is the same, whichever it is. */
	isWayShared: boolean;
	/** Two methods that cannot both be right stand behind it. */
	isByMethods: boolean;
};

/**
 * The smaller need where the true value is split; null where it is one value with its ± or nearly so, or
 * where none of the values calls for the way that is advised. A mean of values that lie apart is none of them: to
 * go by it may pass the band, to go by the nearest does not.
 */
export function splitNeedOf(
	diagnosis: Diagnosis,
	band: Band,
	direction: Decision['direction'],
	analyte: Analyte = 'alkalinity'
): SplitNeed | null {
	const { humps } = diagnosis.trueValue;
	const isOne = humps.length < 2 || humps.some(({ weight }) => weight > AS_GOOD_AS_KNOWN);
	if (direction === null || isOne) return null;
	const inBand = (value: number) => convertValue(value, diagnosis.unit, band.unit, analyte);
	const possible = humps
		.map(({ mean, standardUncertainty }) => ({
			value: inBand(mean),
			standardUncertainty: inBand(standardUncertainty)
		}))
		.sort((a, b) => a.value - b.value);
	const calling = possible.filter(({ value }) =>
		direction === 'raise' ? value < band.low : value > band.high
	);
	const nearest = direction === 'raise' ? calling.at(-1) : calling[0];
	if (!nearest) return null;
	return {
		nearest,
		others: possible.filter((each) => each !== nearest),
		isWayShared: calling.length === possible.length,
		isByMethods: (diagnosis.contradictions ?? []).some(({ between }) => between === 'methods')
	};
}
