import { convertValue } from '../../kits';
import type { Evidence } from '../../observation';
import { kindsOf } from './account-kinds';
import { AdviceLosses, adviceNow, adviceValue } from './advice-value';
import { analyse, type Analysis } from '../diagnosis/analysis';
import { candidatesOf } from './candidates';
import { minutesOf } from './checks';
import type { Band } from '../decision/decision';
import type { Worth } from './enough';
import { foresee, type Foreseen } from './foresee';
import { informationOf } from './information';
import { defaultBand } from '../decision/limits';
import { foreseenChecks } from '../diagnosis/possible-tests';
import { becauseOf, lookedAt } from './rank-because';
import type { CheckRanking, RankOptions } from './ranked-check';
import { repeatReads } from './repeat-reads';
import { stopOrGoOn } from './stop';

/**
 * The checks and questions that are left, the one that tells most for its cost first, and whether any
 * of them is worth making.
 *
 * What each would show is foreseen by every account that carries weight; information is about what
 * sort of thing is wrong and whether the reading holds, in bits. Whether it is enough, and which comes
 * next, is another matter: `furtherCheck`, by which `decide` goes as well, and the value of the advice, in
 * minutes (`adviceLoss`), against the cost of the check.
 *
 * @throws RangeError as `diagnose`, or naming `band` when it is the wrong way round
 */
export function rankChecks(evidence: readonly Evidence[], options: RankOptions = {}): CheckRanking {
	return rankingOf(analyse(evidence, options, foreseenChecks(evidence)), options);
}

/** The person's band, in the customary unit. */
function bandOf({ water, method }: Analysis, { band: given }: RankOptions): Band {
	const { unit } = water;
	const { analyte } = method;
	const band = given ?? defaultBand(unit, analyte);
	if (!(band.low <= band.high))
		throw new RangeError(`band.low must be at most band.high; found ${band.low} and ${band.high}`);
	return {
		low: convertValue(band.low, band.unit, unit, analyte),
		high: convertValue(band.high, band.unit, unit, analyte),
		unit
	};
}

/** What the advice costs over all values that any account thinks possible. */
function lossesOf({ method }: Analysis, foreseen: Foreseen, band: Band): AdviceLosses {
	let { low, high } = band;
	for (let c = 0; c < foreseen.weight.length; c++) {
		const reach = 4 * Math.sqrt(foreseen.tankVariance[c]!);
		low = Math.min(low, foreseen.tankMean[c]! - reach);
		high = Math.max(high, foreseen.tankMean[c]! + reach);
	}
	return new AdviceLosses(low, high, band, method.analyte);
}

/** A check that costs nothing is taken to cost this many minutes, so that scores stay finite. */
const LEAST_MINUTES = 0.1;

/** An analysis put into a ranking. */
export function rankingOf(analysis: Analysis, options: RankOptions = {}): CheckRanking {
	const foreseen = foresee(analysis);
	const { weight } = foreseen;
	const kinds = kindsOf(analysis, foreseen);
	const looked = lookedAt(kinds, foreseen);
	const band = bandOf(analysis, options);
	const losses = lossesOf(analysis, foreseen, band);
	const now = adviceNow(foreseen, losses);
	const worth = candidatesOf(analysis, foreseen, options).map(
		({ candidate, outcomes, cost }): Worth => {
			const information = informationOf(outcomes, weight, kinds.of);
			const { minutes, changes } = adviceValue(outcomes, weight, losses, now);
			return {
				saves: minutes - minutesOf(cost),
				ranked: {
					...candidate,
					information,
					cost,
					score: information / Math.max(LEAST_MINUTES, minutesOf(cost)),
					changesAdvice: changes,
					because: becauseOf(analysis, outcomes, weight, looked)
				}
			};
		}
	);
	worth.sort((a, b) => b.ranked.score - a.ranked.score);
	const livestock = options.livestock ?? 'notLooked';
	return {
		...stopOrGoOn(analysis, { now, band, worth, livestock }),
		repeatReads: repeatReads(analysis, foreseen)
	};
}
