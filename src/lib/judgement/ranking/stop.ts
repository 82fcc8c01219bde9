import type { LivestockLook } from '../../observation';
import { bestAct } from '../decision/best-act';
import { believe } from '../decision/decide-belief';
import type { Band } from '../decision/decision';
import { furtherCheck } from '../decision/further-check';
import { isOfNoTank } from '../decision/of-no-tank';
import { isVerifiedBy } from '../decision/verified';
import type { Analysis } from '../diagnosis/analysis';
import { beliefsOf, tankMixture } from '../diagnosis/beliefs';
import { isBeyondAnyTank } from '../diagnosis/beyond-any-tank';
import { contradictionsOf } from '../diagnosis/contradictions';
import { inQuestionOf, isFarOff } from '../diagnosis/in-question';
import { witnessesOf } from '../diagnosis/independent';
import { cumulativeOf, momentsOf } from '../diagnosis/mixture';
import { isTankUnread } from '../diagnosis/tank-unread';
import type { AdviceNow } from './advice-value';
import { enough, type Worth } from './enough';
import type { CheckRanking } from './ranked-check';

type Known = {
	now: AdviceNow;
	/** In the customary unit. */
	band: Band;
	/** The best first. */
	worth: readonly Worth[];
	livestock: LivestockLook;
};

/** A ranking with what comes next of it, and whether and why to stop. */
export function stopOrGoOn(
	analysis: Analysis,
	{ now, band, worth, livestock }: Known
): CheckRanking {
	const { water, method } = analysis;
	const mixture = tankMixture(analysis);
	const belief = believe(
		{
			unit: water.unit,
			trueValue: momentsOf(mixture),
			cumulative: (value) => cumulativeOf(mixture, value)
		},
		band,
		livestock,
		method.analyte
	);
	const contradictions = contradictionsOf(analysis);
	const read = inQuestionOf(analysis);
	const { isHeld, isKitVouched } = witnessesOf(analysis, beliefsOf(analysis));
	const isVerified = isVerifiedBy(
		{
			isIndependent: isHeld,
			isKitVouched,
			areMethodsAtOdds: contradictions.some(({ between }) => between === 'methods'),
			read: read?.value ?? null
		},
		belief,
		band
	);
	const ranked = worth.map((each) => each.ranked);
	const told = {
		isBeyondAnyTank: isBeyondAnyTank(analysis),
		isTankUnread: isTankUnread(analysis)
	};
	const minutes = enough(analysis, now, band, worth, {
		isHeld: isVerified,
		best: bestAct(belief)
	});
	const further = furtherCheck({
		belief,
		ranked,
		isWorthGoingOn: !minutes.isEnough,
		isVerified,
		hasSetAside: analysis.hasSetAside,
		isOfNoTank: isOfNoTank(told),
		isRepeatDue: read !== null && !read.isRepeated && !read.isExplained && isFarOff(read, band),
		// The water may have changed between two days: nothing speaks against that.
		isAtOdds: contradictions.some(({ between }) => between !== 'days')
	});
	const because = analysis.hasSetAside
		? 'Beside the reading stands a number that can hardly have been read: it comes first.'
		: told.isBeyondAnyTank
			? 'No tank holds what was read: nothing of the water follows from it.'
			: told.isTankUnread
				? 'What was read tells nothing of the tank: water taken anew does.'
				: !further && !minutes.isEnough
					? 'Something independent bears the value out, and no check that is left is likely to change the advice by itself.'
					: minutes.because;
	return {
		ranked,
		next: further?.check ?? null,
		isEnough: further === null,
		isNumberFirst: analysis.hasSetAside,
		because
	};
}
