import type { AdviceNow } from './advice-value';
import type { Analysis } from '../diagnosis/analysis';
import type { Act } from '../decision/advice-loss';
import { tankMixture } from '../diagnosis/beliefs';
import { minutesOf } from './checks';
import { contradictionsOf } from '../diagnosis/contradictions';
import type { Band } from '../decision/decision';
import { cumulativeOf } from '../diagnosis/mixture';
import { inQuestionOf, isFarOff } from '../diagnosis/in-question';
import { DOUBTED, isOdd, outsideOf } from './odd';
import type { CheckRanking, RankedCheck } from './ranked-check';

/** A check that is expected to tell less, in bits, is no reason to go on; judgement. */
const TELLING_BITS = 0.1;
/** From here on the value is more likely outside the band than not, and advice to adjust is near. */
const LIKELY_OUTSIDE = 0.5;

/** An odd reading is worth a check that costs no more: to repeat it, or to answer a question. Judgement. */
const CHEAP_MINUTES = 10;

/** From this chance on a check may change the advice, and that is said; below it hardly does. Judgement. */
const MAY_CHANGE = 0.2;

/** Within or outside the band is settled where the other is less likely than this; judgement. */
const UNSETTLED = 0.05;

/** A check or question, with the minutes it is expected to save beyond what it costs. */
export type Worth = { ranked: RankedCheck; saves: number };

const stop = (isEnough: boolean, because: string) => ({ isEnough, because });

/**
 * What two methods leave open that read today's water too far apart for both to be right, as far as
 * nothing else settles it: on which side of an edge of the band the water lies, where they read on
 * different sides; how far beyond it, where both read beyond the same. Null where they leave nothing open
 * that matters.
 */
function methodsLeaveOpen(analysis: Analysis, band: Band): 'side' | 'size' | null {
	const { rows, value } = analysis.model;
	const apart = contradictionsOf(analysis).filter(({ between }) => between === 'methods');
	if (apart.length === 0) return null;
	const isUnsettled = (chance: number) => Math.min(chance, 1 - chance) >= UNSETTLED;
	const readAt = (at: number) => value[rows.findIndex((row) => row.at === at)]!;
	const sideOf = (read: number) => (read < band.low ? -1 : read > band.high ? 1 : 0);
	const pairs = apart.map(({ at: [one, other] }) => [readAt(one!), readAt(other!)] as const);
	const isSideOpen = isUnsettled(outsideOf(analysis, band));
	if (isSideOpen && pairs.some(([one, other]) => sideOf(one) !== sideOf(other))) return 'side';
	const mixture = tankMixture(analysis);
	const isSizeOpen = pairs.some(
		([one, other]) =>
			sideOf(one) !== 0 &&
			sideOf(one) === sideOf(other) &&
			isUnsettled(cumulativeOf(mixture, (one + other) / 2))
	);
	return isSizeOpen ? 'size' : null;
}

/**
 * Whether what is left is worth no more minutes, and why, in one sentence.
 *
 * @param band in the customary unit
 * @param best what is to be done as things stand
 */
export function enough(
	analysis: Analysis,
	now: AdviceNow,
	band: Band,
	worth: readonly Worth[],
	{ isHeld, best }: { isHeld: boolean; best: Act }
): Pick<CheckRanking, 'isEnough' | 'because'> {
	const isToBeAdjusted =
		best !== 'leave' || now.act !== 'leave' || outsideOf(analysis, band) > LIKELY_OUTSIDE;
	if (isToBeAdjusted && !isHeld)
		return stop(
			false,
			'The value looks to be outside your band, and nothing independent has spoken for it yet.'
		);
	const read = inQuestionOf(analysis);
	if (read && !read.isRepeated && !read.isExplained && isFarOff(read, band))
		return stop(
			false,
			'The reading is far off and was made once: the same water has not been tested again.'
		);
	const isCheapAndTelling = ({ ranked }: Worth) =>
		ranked.information >= TELLING_BITS && minutesOf(ranked.cost) <= CHEAP_MINUTES;
	if (!isHeld && isOdd(analysis, band) && worth.some(isCheapAndTelling))
		return stop(
			false,
			'The reading is odd, and a quick check is still open that tells much of why.'
		);
	const open = methodsLeaveOpen(analysis, band);
	if (open && worth.some(isCheapAndTelling))
		return stop(
			false,
			open === 'side'
				? 'Two methods contradict each other across the edge of your band, and a quick check is still open that tells much of why.'
				: 'Two methods do not agree on how far outside your band it is, and a quick check is still open that tells much of why.'
		);
	if (!isHeld && outsideOf(analysis, band) >= DOUBTED && contradictionsOf(analysis).length > 0)
		return stop(
			false,
			'What is known does not fit together, and the value may well lie outside your band.'
		);
	// One check alone may not pay where two in turn would: as long as knowing the value would save more
	// than a telling check costs, it goes on.
	const isWorthGoingOn = worth.some(
		({ ranked, saves }) =>
			saves > 0 ||
			(ranked.kind === 'checks' &&
				ranked.information >= TELLING_BITS &&
				now.mostToSave > minutesOf(ranked.cost))
	);
	const mayTurn = worth.some(({ ranked }) => ranked.changesAdvice >= MAY_CHANGE);
	if (isWorthGoingOn)
		return stop(
			false,
			mayTurn
				? 'A check that is still open may well change the advice, and is worth its minutes.'
				: 'No check alone is likely to change the advice, but some in turn may, and are worth their minutes.'
		);
	return stop(
		true,
		mayTurn
			? 'A check that is still open may change the advice, but by less than its minutes are worth.'
			: 'What is left to check would hardly change the advice, and is not worth its minutes.'
	);
}
