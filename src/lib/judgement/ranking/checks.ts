import type { CheckId } from '../../observation';
import type { Needs } from '../catalogue/fault';
import type { CheckCost } from './ranked-check';

/**
 * What each check costs somebody who has what it takes: minutes of work, reagent and things in minutes
 * they would give to be spared the price, and the same for what may go wrong meanwhile. All judgement;
 * `rankChecks` takes others.
 */
export const checkCosts: Record<CheckId, CheckCost> = {
	repeatQuick: { minutes: 5, priceMinutes: 1, riskMinutes: 0 },
	repeatFull: { minutes: 8, priceMinutes: 1, riskMinutes: 0 },
	smallerSample: { minutes: 8, priceMinutes: 1, riskMinutes: 0 },
	largerSample: { minutes: 10, priceMinutes: 2, riskMinutes: 0 },
	freshSample: { minutes: 10, priceMinutes: 1, riskMinutes: 0 },
	blank: { minutes: 8, priceMinutes: 1, riskMinutes: 0 },
	freshLot: { minutes: 9, priceMinutes: 6, riskMinutes: 0 },
	otherHands: { minutes: 15, priceMinutes: 2, riskMinutes: 0 },
	weighSampleWare: { minutes: 12, priceMinutes: 0, riskMinutes: 0 },
	weighTitrantWare: { minutes: 15, priceMinutes: 2, riskMinutes: 0 },
	reference: { minutes: 20, priceMinutes: 4, riskMinutes: 1 },
	standardAddition: { minutes: 22, priceMinutes: 3, riskMinutes: 1 },
	secondMethod: { minutes: 15, priceMinutes: 10, riskMinutes: 0 },
	referenceBySecondMethod: { minutes: 15, priceMinutes: 6, riskMinutes: 0 },
	probeTitration: { minutes: 45, priceMinutes: 6, riskMinutes: 1 },
	moreBase: { minutes: 9, priceMinutes: 1, riskMinutes: 0 },
	thinnedSample: { minutes: 10, priceMinutes: 1, riskMinutes: 0 },
	warmSlow: { minutes: 12, priceMinutes: 1, riskMinutes: 0 },
	takenOffAnew: { minutes: 10, priceMinutes: 1, riskMinutes: 0 }
};

/** Of what kind a method must be for a check to make sense; any, for those that are not named. */
export const checkNeeds: Partial<Record<CheckId, Needs>> = {
	probeTitration: { titrant: 'strongAcid' },
	blank: { isDifference: false },
	moreBase: { reagent: 'base' },
	thinnedSample: { titrant: 'edta' },
	warmSlow: { titrant: 'edta' },
	takenOffAnew: { isDifference: true }
};

/** To be asked costs more than the seconds of the answer: a question is an interruption. Judgement. */
export const QUESTION_PRICE_MINUTES = 0.5;

/** Checks that tell more together than one after the other. */
export const checkPairs: readonly (readonly [CheckId, CheckId])[] = [
	['repeatFull', 'repeatFull'],
	['smallerSample', 'largerSample']
];

/** A check may go wrong itself, by a slip or a bad solution: so often, whatever it was meant to tell. Judgement. */
export const CHECK_GOES_WRONG = 0.06;

export const minutesOf = (cost: CheckCost): number =>
	cost.minutes + cost.priceMinutes + cost.riskMinutes;
export const bothCosts = (one: CheckCost, two: CheckCost): CheckCost => ({
	minutes: one.minutes + two.minutes,
	priceMinutes: one.priceMinutes + two.priceMinutes,
	riskMinutes: one.riskMinutes + two.riskMinutes
});
