import { chanceInWords, type CheckRanking, type Diagnosis } from '$lib/judgement';
import type { Analyte } from '$lib/kits';
import { midSentence, type Catalogue } from './catalogue';
import { checksTitle } from './check-words';
import { explanationRows } from './explanation-rows';
import { presentOf } from './present-check';
import { trueValueSentence } from './true-value-words';

/** The whole answer in one sentence, for those who hear that it has changed. */
export function answerSentence(
	diagnosis: Diagnosis,
	ranking: CheckRanking | null,
	catalogue: Catalogue,
	analyte: Analyte = 'alkalinity'
): string {
	const [first] = explanationRows(diagnosis, catalogue);
	const best = presentOf(ranking, null) ?? undefined;
	const next = !ranking
		? ''
		: ranking.isEnough
			? ' Of the reading, that is enough.'
			: best === undefined
				? ''
				: best.kind === 'checks'
					? ` Next: ${midSentence(checksTitle(best.checks))}.`
					: ' Next: a question.';
	const most = first
		? `Most likely now: ${midSentence(first.title)}, ${chanceInWords(first.probability)}. `
		: '';
	return `${most}${trueValueSentence(diagnosis, catalogue, analyte)}${next}`;
}
