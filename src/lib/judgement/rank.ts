import { convertValue } from '../kits';
import type { CheckId, Evidence } from '../observation';
import { kindsOf, type Kinds } from './account-kinds';
import { AdviceLosses, adviceNow, adviceValue, type AdviceNow } from './advice-value';
import { analyse, type Analysis } from './analysis';
import { beliefsOf } from './beliefs';
import {
	bothCosts,
	CHECK_GOES_WRONG,
	checkCosts,
	checkPairs,
	minutesOf,
	QUESTION_PRICE_MINUTES
} from './checks';
import { openCues, outcomesOfCue } from './cue-outcomes';
import { foresee, type Foreseen } from './foresee';
import { isIndependentlyHeld } from './independent';
import { informationOf } from './information';
import { defaultBand } from './limits';
import { lessSure, outcomesOf, outcomesOfTwo, type Outcomes } from './outcomes';
import { foreseenChecks } from './possible-tests';
import { becauseOf } from './rank-because';
import type { Candidate, CheckCost, CheckRanking, RankedCheck, RankOptions } from './ranked-check';

/**
 * The checks and questions that are left, the one that tells most for its cost first, and whether any
 * of them is worth making.
 *
 * What each would show is foreseen by every account that carries weight; information is about what
 * sort of thing is wrong and whether the reading holds, in bits. Whether it is enough is another
 * matter: the value of the advice, in minutes (`adviceLoss`), against the cost of the check.
 *
 * @throws RangeError as `diagnose`, or naming `band` when it is the wrong way round
 */
export function rankChecks(evidence: readonly Evidence[], options: RankOptions = {}): CheckRanking {
	return rankingOf(analyse(evidence, options, foreseenChecks(evidence)), options);
}

type Weighed = { candidate: Candidate; outcomes: Outcomes; cost: CheckCost };

const costOf = (check: CheckId, { costs }: RankOptions): CheckCost => ({
	...checkCosts[check],
	...costs?.[check]
});

/** Checks, pairs of checks and questions, each with what it may show. */
function candidatesOf(analysis: Analysis, foreseen: Foreseen, options: RankOptions): Weighed[] {
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
	const questions = openCues(analysis).map((cue): Weighed => ({
		candidate: { kind: 'cue', cue: cue.id },
		outcomes: outcomesOfCue(analysis, foreseen, cue),
		cost: { minutes: cue.seconds / 60, priceMinutes: QUESTION_PRICE_MINUTES, riskMinutes: 0 }
	}));
	return [...singles, ...pairs, ...questions];
}

/** What the advice costs by the tank's value, for the band at hand. */
function lossesOf(
	{ water, method }: Analysis,
	foreseen: Foreseen,
	options: RankOptions
): AdviceLosses {
	const { unit } = water;
	const { analyte } = method;
	const band = options.band ?? defaultBand(unit, analyte);
	const own = {
		low: convertValue(band.low, band.unit, unit, analyte),
		high: convertValue(band.high, band.unit, unit, analyte),
		unit
	};
	if (!(own.low <= own.high))
		throw new RangeError(`band.low must be at most band.high; found ${band.low} and ${band.high}`);
	let low = own.low;
	let high = own.high;
	for (let c = 0; c < foreseen.weight.length; c++) {
		const reach = 4 * Math.sqrt(foreseen.tankVariance[c]!);
		low = Math.min(low, foreseen.tankMean[c]! - reach);
		high = Math.max(high, foreseen.tankMean[c]! + reach);
	}
	return new AdviceLosses(low, high, own, analyte);
}

/** An analysis put into a ranking. */
export function rankingOf(analysis: Analysis, options: RankOptions = {}): CheckRanking {
	const foreseen = foresee(analysis);
	const kinds: Kinds = kindsOf(analysis, foreseen);
	const losses = lossesOf(analysis, foreseen, options);
	const now = adviceNow(foreseen, losses);
	const worth: { ranked: RankedCheck; saves: number }[] = candidatesOf(
		analysis,
		foreseen,
		options
	).map(({ candidate, outcomes, cost }) => {
		const information = informationOf(outcomes, foreseen.weight, kinds.of);
		const { minutes, changes } = adviceValue(outcomes, foreseen.weight, losses, now);
		return {
			saves: minutes - minutesOf(cost),
			ranked: {
				...candidate,
				information,
				cost,
				score: information / minutesOf(cost),
				changesAdvice: changes,
				because: becauseOf(analysis, outcomes, foreseen.weight, kinds)
			}
		};
	});
	worth.sort((a, b) => b.ranked.score - a.ranked.score);
	return {
		ranked: worth.map(({ ranked }) => ranked),
		...enough(analysis, now, worth)
	};
}

/** Whether to stop, and why, in one sentence. */
function enough(
	analysis: Analysis,
	now: AdviceNow,
	worth: readonly { saves: number }[]
): Pick<CheckRanking, 'isEnough' | 'because'> {
	if (now.act !== 'leave' && !isIndependentlyHeld(analysis, beliefsOf(analysis)))
		return {
			isEnough: false,
			because:
				'As things stand something would be added or left out, and nothing independent has spoken for the value yet.'
		};
	if (worth.some(({ saves }) => saves > 0))
		return {
			isEnough: false,
			because: 'A check that is still open may change the advice by more than it costs.'
		};
	return {
		isEnough: true,
		because: 'No check that is left is expected to change the advice by more than it costs.'
	};
}
