import { convertValue, type Analyte } from '../../kits';
import { expectedChangeOf, type Evidence } from '../../observation';
import type { Diagnosis } from '../diagnosis/diagnosis';
import { REAL_CHANGE, waterCauses, type WaterCause } from './water-causes';

/** From here on a real change is worth being looked into, as a fault is worth being mended; judgement. */
const WORTH_LOOKING = 0.3;

/** What the water itself may have done. */
export type WaterTold = {
	/** Which way it went, if it did; null where no earlier reading tells. */
	direction: 'falls' | 'rises' | null;
	/** That it has really changed. */
	probability: number;
	/** Those that an answer speaks for first, among them and after them those that wait for nothing. */
	causes: readonly (WaterCause & { isSpokenFor: boolean })[];
};

type Answers = Readonly<Record<string, readonly string[]>> | undefined;
const isAnswered = (answers: Answers, evidence: readonly Evidence[]) =>
	evidence.some((each) => each.kind === 'cue' && answers?.[each.cue]?.includes(each.answer));

/** Which way the water went since the latest reading before, if it has really changed. */
function directionOf(
	{ explanations, unit }: Pick<Diagnosis, 'explanations' | 'unit'>,
	evidence: readonly Evidence[],
	analyte: Analyte
): WaterTold['direction'] {
	const before = evidence
		.flatMap((each) => (each.kind === 'earlier' ? [each] : []))
		.sort((a, b) => a.daysAgo - b.daysAgo)[0];
	const changed = explanations.filter(({ faults }) => faults.includes(REAL_CHANGE));
	const total = changed.reduce((sum, { probability }) => sum + probability, 0);
	if (!before || !(total > 0)) return null;
	const now =
		changed.reduce((sum, { probability, trueValue }) => sum + probability * trueValue.mean, 0) /
		total;
	const expected = before.reading.value + (expectedChangeOf(before) ?? 0);
	const change = now - convertValue(expected, before.reading.unit, unit, analyte);
	return change === 0 ? null : change < 0 ? 'falls' : 'rises';
}

/**
 * What the water itself may have done, how that shows itself and what to do, in the direction in which
 * the value went. Null while a real change is unlikely and no answer speaks for one that cannot wait.
 *
 * @param analyte of the reading in question: what moves alkalinity alone is left out for the others
 */
export function waterCausesTold(
	diagnosis: Pick<Diagnosis, 'explanations' | 'unit' | 'waterChanged'>,
	evidence: readonly Evidence[],
	analyte: Analyte
): WaterTold | null {
	const direction = directionOf(diagnosis, evidence, analyte);
	const causes = waterCauses
		.filter(
			(cause) =>
				(cause.analytes?.includes(analyte) ?? true) &&
				(direction === null || cause.direction === 'either' || cause.direction === direction) &&
				!isAnswered(cause.ruledOutBy, evidence)
		)
		.map((cause) => ({ ...cause, isSpokenFor: isAnswered(cause.spokenForBy, evidence) }));
	const isUrgent = causes.some((each) => each.isUrgent && each.isSpokenFor);
	if (causes.length === 0 || (diagnosis.waterChanged < WORTH_LOOKING && !isUrgent)) return null;
	const rank = ({ isSpokenFor, isUrgent: cannotWait, direction: goes }: (typeof causes)[number]) =>
		(isSpokenFor ? 0 : 4) + (cannotWait ? 0 : 2) + (goes === 'either' ? 1 : 0);
	causes.sort((a, b) => rank(a) - rank(b));
	return { direction, probability: diagnosis.waterChanged, causes };
}
