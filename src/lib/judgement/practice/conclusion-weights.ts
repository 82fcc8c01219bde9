import type { Conclusion, Reading } from '../../observation';
import { faultById } from '../catalogue/catalogue';
import type { Diagnosis } from '../diagnosis/diagnosis';
import type { FaultClass } from '../catalogue/fault';

/** Conclusions that the diagnosis of a reading knows; the others rest on values beside it. */
export type Telling = Exclude<Conclusion, 'cantTellYet' | 'salinity' | 'carriedOver'>;
export const tellingConclusions = [
	'stands',
	'technique',
	'reagent',
	'secondMethod',
	'waterChanged'
] as const satisfies readonly Telling[];

/** On the bench, a piece of ware and a portion of water are in the learner's own hands. */
const classesOf: Partial<Record<Telling, readonly FaultClass[]>> = {
	technique: ['technique', 'ware', 'sampling', 'method'],
	reagent: ['reagent']
};

/**
 * How probable each conclusion about a reading is by a diagnosis, from 0 to 1. They need not sum to
 * one: a reading may stand and show a change.
 *
 * 'stands': the true value lies within what the reading claims. 'technique' and 'reagent': such a
 * cause is there and has moved the reading by more than half of that; smaller ones are always about,
 * and nobody needs to find them.
 */
export function conclusionWeights(
	diagnosis: Diagnosis,
	{ value, expandedUncertainty }: Reading
): Record<Telling, number> {
	const { cumulative, explanations, classes, waterChanged } = diagnosis;
	const moved = (conclusion: Telling) =>
		explanations.reduce(
			(sum, { faults, trueValue, probability }) =>
				faults.some((id) => isOf(id, conclusion)) &&
				Math.abs(trueValue.mean - value) > expandedUncertainty / 2
					? sum + probability
					: sum,
			0
		);
	return {
		stands: cumulative(value + expandedUncertainty) - cumulative(value - expandedUncertainty),
		technique: moved('technique'),
		reagent: moved('reagent'),
		secondMethod: classes.secondMethod,
		waterChanged
	};
}

function isOf(faultId: string, conclusion: Telling): boolean {
	const fault = faultById(faultId);
	return fault !== null && (classesOf[conclusion]?.includes(fault.class) ?? false);
}
