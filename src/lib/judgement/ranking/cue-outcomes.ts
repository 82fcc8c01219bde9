import type { Analysis } from '../diagnosis/analysis';
import { answeredCue, answerWith } from '../diagnosis/cue-likelihood';
import type { Cue } from '../catalogue/fault';
import { suits } from '../catalogue/suits';
import type { Foreseen } from './foresee';
import type { Outcomes } from './outcomes';

/** Questions that were not asked yet and make sense for this method and this evidence. */
export function openCues({ cues, answered, method, seconds, model }: Analysis): Cue[] {
	const hasReference = model.rows
		.slice(0, model.count)
		.some(({ things }) => things.solution !== null);
	return cues.filter(
		(cue) =>
			!answered.asked.has(cue.id) &&
			suits(cue, method) &&
			(cue.methods?.some((kind) => seconds.kinds.has(kind)) ?? true) &&
			(cue.about !== 'reference' || hasReference) &&
			(cue.about !== 'secondMethod' || seconds.isAny)
	);
}

/** Explanations that accounts stand for, each once: ids of its faults, and which one each account has. */
export type Explained = { ids: string[][]; of: Int32Array };

export function explainedBy({ faults, places }: Analysis, { explanation }: Foreseen): Explained {
	const rows = new Map<number, number>();
	const of = Int32Array.from(explanation, (place) => {
		const row = rows.get(place) ?? rows.size;
		rows.set(place, row);
		return row;
	});
	const ids = [...rows.keys()].map((place) =>
		place === places.noneOfThese ? [] : places.faultsAt(place).map((fault) => faults[fault]!.id)
	);
	return { ids, of };
}

/** What the answers to a question would be, by account. They say nothing of the tank but through the causes. */
export function outcomesOfCue({ ids, of }: Explained, cue: Cue): Outcomes {
	const cells = cue.answers.length;
	const answers = cue.answers.map(({ id }) => answeredCue(cue, [id]));
	const rows = ids.map((those) => {
		const raw = answers.map((answered) => answerWith(answered, those));
		const sum = raw.reduce((total, each) => total + each, 0);
		return raw.map((each) => each / sum);
	});
	const likelihood = new Float64Array(of.length * cells);
	of.forEach((row, c) => likelihood.set(rows[row]!, c * cells));
	return { likelihood, cells, tank: null };
}
