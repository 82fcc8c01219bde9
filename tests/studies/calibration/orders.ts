import { checkCosts, diagnose, diagnoseAndRank, type Diagnosis } from '../../../src/lib/judgement';
import type { CheckId, Evidence } from '../../../src/lib/observation';
import { actAdvised, regretOf } from './advice';
import type { CalibrationCase } from './case';
import { optionsFor } from './judge';
import { chanceAt, shuffled } from './seeds';
import { catalogueClassOf, likeliest, rightVerdicts, verdictsOf } from './verdicts';

/** Who says what is checked next: the ranking; a list, the cheap ones first; a list in random order. */
export const orders = ['ranked', 'fixed', 'random'] as const;
export type Order = (typeof orders)[number];

export const MOST_CHECKS = 8;
export const CERTAIN = 0.9;

const list: readonly CheckId[] = [
	'repeatFull',
	'freshSample',
	'freshLot',
	'otherHands',
	'secondMethod',
	'reference',
	'weighSampleWare',
	'weighTitrantWare'
];

/** After how many checks, and minutes of cost, something was 90 % certain; not at all: the cap. */
export type Reached = { isReached: boolean; checks: number; minutes: number; isRight: boolean };
export type Ordered = {
	order: Order;
	/** Which classes something is wrong in; null where that was not waited for. */
	cause: Reached | null;
	/** On which side of the band the water lies. */
	side: Reached;
	/** Minutes of regret of the advice at the end, and whether it pours or leaves rightly. */
	regretAtEnd: number;
};

const minutesOf = (check: CheckId) => {
	const { minutes, priceMinutes, riskMinutes } = checkCosts[check];
	return minutes + priceMinutes + riskMinutes;
};

function certaintyOf(diagnosis: Diagnosis, { band, truth }: CalibrationCase) {
	const top = likeliest(verdictsOf(diagnosis, catalogueClassOf()));
	const below = diagnosis.cumulative(band.low);
	const above = 1 - diagnosis.cumulative(band.high);
	const value = truth.trueValue;
	const side = Math.max(below, above, 1 - below - above);
	const isRightSide = side === below ? value < band.low : side === above ? value > band.high : true;
	const isWithin = value >= band.low && value <= band.high;
	return {
		cause: { p: top.probability, isRight: rightVerdicts(truth.causes).includes(top.verdict) },
		side: {
			p: side,
			isRight: side === 1 - below - above ? isWithin : isRightSide
		}
	};
}

/**
 * Checks one after the other until it is 90 % certain on which side of the band the water lies, and
 * if asked for also what is wrong, or the most checks are made. Only checks are counted: no questions are asked.
 */
export function checkInOrder(
	each: CalibrationCase,
	order: Order,
	seed: number,
	waitsForCause: boolean
): Ordered {
	const { ask, band } = each;
	if (!ask) throw new RangeError('ask must be there for checks to be made; found null');
	const options = { ...optionsFor(each), band, available: list };
	const planned = order === 'random' ? shuffled(chanceAt(seed, 'order'), list) : list;
	const evidence: Evidence[] = [...each.evidence];
	const rounds = new Map<CheckId, number>();
	const reached: Record<'cause' | 'side', Reached | null> = { cause: null, side: null };
	let minutes = 0;
	for (let checks = 0; ;) {
		const ranked = order === 'ranked' ? diagnoseAndRank(evidence, options) : null;
		const diagnosis = ranked?.diagnosis ?? diagnose(evidence, options);
		const certainty = certaintyOf(diagnosis, each);
		for (const of of ['cause', 'side'] as const) {
			const isReached = certainty[of].p >= CERTAIN;
			if (isReached || checks >= MOST_CHECKS)
				reached[of] ??= { isReached, checks, minutes, isRight: certainty[of].isRight };
		}
		if (reached.side && (reached.cause || !waitsForCause)) {
			const regretAtEnd = regretOf(
				actAdvised(diagnosis, band, each.method.analyte),
				each.truth.trueValue,
				band,
				each.method.analyte
			);
			const cause = waitsForCause ? reached.cause : null;
			return { order, cause, side: reached.side, regretAtEnd };
		}
		const best = ranked?.ranking.ranked.find(({ kind }) => kind === 'checks');
		const next: readonly CheckId[] =
			best?.kind === 'checks' ? best.checks : planned.slice(checks, checks + 1);
		if (next.length === 0) throw new RangeError('a check must be left; found none');
		for (const check of next) {
			const round = rounds.get(check) ?? 0;
			rounds.set(check, round + 1);
			evidence.push(ask(check, round));
			minutes += minutesOf(check);
			checks++;
		}
	}
}
