import { convertValue, type Analyte } from '../../kits';
import type { Band } from './decision';
import { limitsOf } from './limits';

/** What can be done about a value: nothing, or move it. */
export type Act = 'leave' | 'raise' | 'lower';

/**
 * What being wrong costs, as the minutes a keeper would give to be spared it. All judgement: there
 * is no count of tanks behind it. Distances are counted in days of correction at the usual rate, so
 * that one set serves every analyte; for alkalinity 1 dKH is two days.
 *
 * What is known exactly is worth moving from about 0.6 days beyond its edge (20 d² = 6 + 5 d²), for
 * alkalinity 0.3 dKH: less than that a tank swings between morning and evening.
 */
export const adviceMinutes = {
	/** A value one day of correction outside its band, left there; grows with the square. */
	outside: 20,
	/** On top, one day's worth below the alarm: waiting harms as well. */
	belowAlarm: 75,
	/** Weighing, dissolving and adding, beyond what is dosed anyway. */
	effort: 6,
	/** Moving a value one day away from the edge that it never was beyond; grows with the square. */
	wrongWay: 40,
	/** Share of the harm of leaving that is left while a value is moved slowly. */
	leftWhileMoving: 0.25,
	origin: 'judgement'
};

const beyond = (distance: number) => Math.max(0, distance) ** 2;

/**
 * Minutes a keeper would give to be spared the outcome of an act, if the tank's true value is this.
 * Convex in the true value. Moving it where it did not need to go always costs more than leaving it;
 * leaving it far outside costs more than moving it.
 *
 * @param act what is done: 'leave', 'raise' or 'lower'
 * @param trueValue in the unit of the band, finite
 * @param band the person's own, its low end at most its high end
 * @throws RangeError naming the field when the value is not finite or the band is the wrong way round
 */
export function adviceLoss(
	act: Act,
	trueValue: number,
	band: Band,
	analyte: Analyte = 'alkalinity'
): number {
	if (!Number.isFinite(trueValue))
		throw new RangeError(`trueValue must be a number; found ${trueValue}`);
	if (!(band.low <= band.high))
		throw new RangeError(`band.low must be at most band.high; found ${band.low} and ${band.high}`);
	const { unit, rise, lowAlarm } = limitsOf(analyte);
	const inDays = (value: number) =>
		convertValue(value, band.unit, unit, analyte) / rise.usualPerDay;
	const days = inDays(trueValue);
	const low = inDays(band.low);
	const high = inDays(band.high);
	const alarm = Math.min(low, lowAlarm.below / rise.usualPerDay);
	const { outside, belowAlarm, effort, wrongWay, leftWhileMoving } = adviceMinutes;
	const leavingLow = outside * beyond(low - days) + belowAlarm * beyond(alarm - days);
	const leavingHigh = outside * beyond(days - high);
	if (act === 'leave') return leavingLow + leavingHigh;
	return act === 'raise'
		? effort + leftWhileMoving * leavingLow + leavingHigh + wrongWay * beyond(days - low)
		: effort + leftWhileMoving * leavingHigh + leavingLow + wrongWay * beyond(high - days);
}
