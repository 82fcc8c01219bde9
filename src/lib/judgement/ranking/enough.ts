import type { AdviceNow } from './advice-value';
import type { Analysis } from '../diagnosis/analysis';
import { beliefsOf } from '../diagnosis/beliefs';
import { minutesOf } from './checks';
import { contradictionsOf } from '../diagnosis/contradictions';
import type { Band } from '../decision/decision';
import { isIndependentlyHeld } from '../diagnosis/independent';
import { DOUBTED, isOdd, outsideOf } from './odd';
import type { CheckRanking, RankedCheck } from './ranked-check';

/** A check that is expected to tell less, in bits, is no reason to go on; judgement. */
const TELLING_BITS = 0.1;
/** From here on the value is more likely outside the band than not, and advice to adjust is near. */
const LIKELY_OUTSIDE = 0.5;

/** An odd reading is worth a check that costs no more: to repeat it, or to answer a question. Judgement. */
const CHEAP_MINUTES = 10;

/** A check or question, with the minutes it is expected to save beyond what it costs. */
export type Worth = { ranked: RankedCheck; saves: number };

const stop = (isEnough: boolean, because: string) => ({ isEnough, because });

/**
 * Whether to stop, and why, in one sentence.
 *
 * @param band in the customary unit
 */
export function enough(
	analysis: Analysis,
	now: AdviceNow,
	band: Band,
	worth: readonly Worth[]
): Pick<CheckRanking, 'isEnough' | 'because'> {
	const isHeld = isIndependentlyHeld(analysis, beliefsOf(analysis));
	const isToBeAdjusted = now.act !== 'leave' || outsideOf(analysis, band) > LIKELY_OUTSIDE;
	if (isToBeAdjusted && !isHeld)
		return stop(
			false,
			'The value looks to be outside your band, and nothing independent has spoken for it yet.'
		);
	const isCheapAndTelling = ({ ranked }: Worth) =>
		ranked.information >= TELLING_BITS && minutesOf(ranked.cost) <= CHEAP_MINUTES;
	if (!isHeld && isOdd(analysis, band) && worth.some(isCheapAndTelling))
		return stop(
			false,
			'The reading is odd, and a quick check is still open that tells much of why.'
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
	return isWorthGoingOn
		? stop(
				false,
				'A check that is still open may well change the advice, and is worth its minutes.'
			)
		: stop(
				true,
				'What is left to check would hardly change the advice, and is not worth its minutes.'
			);
}
