import { convertValue, type Analyte, type Unit } from '../../kits';
import type { Band } from './decision';
import { limitsOf } from './limits';

/** A test a week is the usual rhythm (common practice, no source): never rarer. */
export const USUAL_INTERVAL_DAYS = 7;

export type RetestInput = {
	band: Band;
	/** Expanded uncertainty of the value, in the band's unit. */
	expandedUncertainty: number;
	/** What the animals use a day, in the band's unit, at least 0; null when not known. */
	consumptionPerDay: number | null;
	/** Change a day that is likely real, in the band's unit; null when none is. */
	changePerDay: number | null;
};

/**
 * Days until the next test of a tank that is left as it is, 1 to 7: before the value could have moved
 * by half the width of the band, were the dosing to stop unnoticed or the change seen so far to go
 * on. Testing more often than the test can resolve tells nothing, so the ± is the least that counts.
 * With consumption above 0.5 dKH a day in the default band it comes to 2 days or 1.
 *
 * @throws RangeError naming the field that is out of its range
 */
export function retestInterval(input: RetestInput): number {
	const { band, expandedUncertainty, consumptionPerDay, changePerDay } = input;
	if (!(band.low <= band.high))
		throw new RangeError(`band.low must be at most band.high; found ${band.low} and ${band.high}`);
	if (!(expandedUncertainty >= 0))
		throw new RangeError(`expandedUncertainty must be 0 or above; found ${expandedUncertainty}`);
	if (consumptionPerDay !== null && !(consumptionPerDay >= 0))
		throw new RangeError(`consumptionPerDay must be 0 or above; found ${consumptionPerDay}`);
	const pace = Math.max(consumptionPerDay ?? 0, Math.abs(changePerDay ?? 0));
	if (pace === 0) return USUAL_INTERVAL_DAYS;
	const allowed = Math.max((band.high - band.low) / 2, expandedUncertainty);
	// A rounding error of a whole day is that day.
	const days = Math.floor(allowed / pace + 1e-9);
	return Math.min(USUAL_INTERVAL_DAYS, Math.max(1, days));
}

/** Whether so much is used in a day that a test a week is too rare. */
export function isWeeklyTooRare(
	consumptionPerDay: number,
	unit: Unit,
	analyte: Analyte = 'alkalinity'
): boolean {
	const limits = limitsOf(analyte);
	return (
		convertValue(consumptionPerDay, unit, limits.unit, analyte) > limits.weeklyTooRare.abovePerDay
	);
}
