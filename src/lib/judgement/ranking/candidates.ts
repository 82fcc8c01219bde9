import type { CheckId } from '../../observation';
import type { Analysis } from '../diagnosis/analysis';
import {
	bothCosts,
	CHECK_GOES_WRONG,
	checkCosts,
	checkPairs,
	QUESTION_PRICE_MINUTES
} from './checks';
import { explainedBy, openCues, outcomesOfCue } from './cue-outcomes';
import type { Foreseen } from './foresee';
import { lessSure, outcomesOf, outcomesOfTwo, type Outcomes } from './outcomes';
import type { Candidate, CheckCost, RankOptions } from './ranked-check';

/** A candidate with what it may show and what it costs. */
export type Weighed = { candidate: Candidate; outcomes: Outcomes; cost: CheckCost };

function costOf(check: CheckId, { costs }: RankOptions): CheckCost {
	const cost = { ...checkCosts[check], ...costs?.[check] };
	for (const [field, minutes] of Object.entries(cost))
		if (!(minutes >= 0 && Number.isFinite(minutes)))
			throw new RangeError(`costs.${check}.${field} must be 0 or above; found ${minutes}`);
	return cost;
}

/** Checks, pairs of checks and questions, each with what it may show. */
export function candidatesOf(
	analysis: Analysis,
	foreseen: Foreseen,
	options: RankOptions
): Weighed[] {
	const { checks } = analysis;
	const isToBeHad = (check: CheckId) => options.available?.includes(check) ?? true;
	const sure = (outcomes: Outcomes) => lessSure(outcomes, foreseen, CHECK_GOES_WRONG);
	const singles = checks.flatMap((check, test): Weighed[] =>
		isToBeHad(check) && checks.indexOf(check) === test
			? [
					{
						candidate: { kind: 'checks', checks: [check] },
						outcomes: sure(outcomesOf(foreseen, test)),
						cost: costOf(check, options)
					}
				]
			: []
	);
	const pairs = checkPairs.flatMap(([one, two]): Weighed[] => {
		const first = checks.indexOf(one);
		const second = checks.lastIndexOf(two);
		if (first < 0 || second < 0 || first === second || !isToBeHad(one) || !isToBeHad(two))
			return [];
		return [
			{
				candidate: { kind: 'checks', checks: [one, two] },
				outcomes: sure(outcomesOfTwo(foreseen, first, second)),
				cost: bothCosts(costOf(one, options), costOf(two, options))
			}
		];
	});
	const explained = explainedBy(analysis, foreseen);
	const questions = openCues(analysis).map((cue): Weighed => ({
		candidate: { kind: 'cue', cue: cue.id },
		outcomes: outcomesOfCue(explained, cue),
		cost: { minutes: cue.seconds / 60, priceMinutes: QUESTION_PRICE_MINUTES, riskMinutes: 0 }
	}));
	return [...singles, ...pairs, ...questions];
}
