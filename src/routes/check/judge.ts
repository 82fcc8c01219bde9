import {
	cues,
	diagnose,
	rankChecks,
	withCumulative,
	type Band,
	type CheckRanking,
	type DiagnoseOptions,
	type Diagnosis
} from '$lib/judgement';
import { checkIds, type CheckId, type Evidence, type LivestockLook } from '$lib/observation';
import type { WithoutPiece } from '$lib/ui/conversation/run';

/** What is asked: plain data, so that it can be answered on another thread. */
export type Question = {
	evidence: readonly Evidence[];
	options: DiagnoseOptions;
	/** Between which values the person wants the tank. */
	band: Band;
	/** How the animals look: the advice, and with it whether to go on, goes a little by it. */
	livestock: LivestockLook;
	/** Checks and questions that are not at hand. */
	leftOut: readonly string[];
};

/** A diagnosis as it is sent between threads: plain data. */
export type PlainDiagnosis = Omit<Diagnosis, 'cumulative'>;

const plainOf = ({ cumulative: _, ...diagnosis }: Diagnosis): PlainDiagnosis => diagnosis;

/** The diagnosis whole again. */
export const wholeOf = (diagnosis: PlainDiagnosis): Diagnosis => withCumulative(diagnosis);

/** What only the practice bench offers: at the tank a repeat is a repeat. */
const ONLY_AT_BENCH: readonly CheckId[] = ['repeatQuick'];

/** @throws RangeError naming what is wrong with the evidence */
export const judge = ({ evidence, options }: Question): PlainDiagnosis =>
	plainOf(diagnose(evidence, options));

/** @throws RangeError as `judge` */
export function judgeNext({ evidence, options, band, livestock, leftOut }: Question): CheckRanking {
	return rankChecks(evidence, {
		...options,
		band,
		livestock,
		available: checkIds.filter((id) => !ONLY_AT_BENCH.includes(id) && !leftOut.includes(id)),
		cues: cues.filter(({ id }) => !leftOut.includes(id))
	});
}

/** What would be believed without one piece; null for the reading in question, without which there is nothing. */
export function judgeWithout({ evidence, options }: Question, at: number): WithoutPiece | null {
	const piece = evidence[at];
	if (!piece || (piece.kind === 'test' && piece.from === 'first')) return null;
	const others = evidence.filter((_, i) => i !== at);
	const { explanations, noneOfThese } = diagnose(others, options);
	return {
		at,
		probabilities: {
			noneOfThese,
			...Object.fromEntries(explanations.map(({ id, probability }) => [id, probability]))
		}
	};
}
