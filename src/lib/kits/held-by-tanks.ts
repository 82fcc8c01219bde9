import type { Analyte, Unit } from './kit';
import { plausibleRange } from './units';

/** So many times below and above what is plausible, no tank of seawater is to be expected; judgement. */
const BEYOND = 1.5;

/**
 * Between which a value must lie that a tank of seawater may hold: wider than what is plausible, for water
 * can be far off; beyond it something about the test is likelier.
 *
 * @returns both ends, in the unit
 * @throws RangeError naming the unit when the analyte is not measured in it
 */
export function heldByTanks(unit: Unit, analyte: Analyte): { low: number; high: number } {
	const { low, high } = plausibleRange(unit, analyte);
	return { low: low / BEYOND, high: high * BEYOND };
}

/** On which side of all tanks a value lies; null where a tank may hold it. */
export function beyondAnyTank(
	value: number,
	unit: Unit,
	analyte: Analyte
): 'below' | 'above' | null {
	const { low, high } = heldByTanks(unit, analyte);
	return value < low ? 'below' : value > high ? 'above' : null;
}
