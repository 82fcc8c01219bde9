import type { Analysis } from '../diagnosis/analysis';
import { answeredCue, CueEvidence } from '../diagnosis/cue-likelihood';
import type { Cue } from '../catalogue/fault';
import type { Foreseen } from './foresee';
import type { Outcomes } from './outcomes';

/** Questions that were not asked yet and make sense for this method and this evidence. */
export function openCues({ cues, answered, method, seconds, model }: Analysis): Cue[] {
	const hasReference = model.rows
		.slice(0, model.count)
		.some(({ things }) => things.solution !== null);
	return cues.filter(
		({ id, analytes, deliveries, methods, about }) =>
			!answered.asked.has(id) &&
			(analytes?.includes(method.analyte) ?? true) &&
			(deliveries?.includes(method.delivery) ?? true) &&
			(methods?.some((kind) => seconds.kinds.has(kind)) ?? true) &&
			(about !== 'reference' || hasReference) &&
			(about !== 'secondMethod' || seconds.isAny)
	);
}

/** What the answers to a question would be, by account. They say nothing of the tank but through the causes. */
export function outcomesOfCue(analysis: Analysis, foreseen: Foreseen, cue: Cue): Outcomes {
	const { faults, places } = analysis;
	const cells = cue.answers.length;
	const { weight, explanation } = foreseen;
	const likelihood = new Float64Array(weight.length * cells);
	const answers = cue.answers.map(({ id }) => {
		const answered = answeredCue(cue, [id]);
		return { otherwise: answered.otherwise, evidence: new CueEvidence([answered], faults) };
	});
	const byPlace = new Map<number, number[]>();
	for (let c = 0; c < weight.length; c++) {
		const place = explanation[c]!;
		let row = byPlace.get(place);
		if (!row) {
			const present = place === places.noneOfThese ? [] : places.faultsAt(place);
			const [one, two] = present;
			const raw = answers.map(
				({ otherwise, evidence }) =>
					otherwise *
					Math.exp(
						one === undefined
							? 0
							: two === undefined
								? evidence.ofOne(one)
								: evidence.ofTwo(one, two)
					)
			);
			const sum = raw.reduce((total, each) => total + each, 0);
			row = raw.map((each) => each / sum);
			byPlace.set(place, row);
		}
		likelihood.set(row, c * cells);
	}
	return { likelihood, cells, tank: null };
}
