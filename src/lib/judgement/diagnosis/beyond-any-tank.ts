import { heldByTanks, plausibleRange, type Analyte, type Unit } from '../../kits';
import type { Analysis } from './analysis';
import { isOfTodaysWater } from './in-question';

/**
 * Nor does a tank hold this share of the lowest that is plausible. Lower than a remark beside the tank draws
 * the line: used up by a third, a tank is in need, and its reading is not to be thrown away; judgement.
 */
const BELOW = 1 / 3;

/** Whether a tank may hold a value, however far off it is. */
export function isOfATank(value: number, unit: Unit, analyte: Analyte): boolean {
	const { low } = plausibleRange(unit, analyte);
	return value >= BELOW * low && value <= heldByTanks(unit, analyte).high;
}

/**
 * The test in question reads more or less than any tank holds, and no reading of today's water that a tank
 * may hold stands beside it: whatever is likeliest to have made such a number, nothing of the water
 * follows from it alone. What another method finds in the same cup tells of the cup.
 */
export function isBeyondAnyTank({ model, method, first, water }: Analysis): boolean {
	const isHeld = (value: number) => isOfATank(value, water.unit, method.analyte);
	const rows = model.rows.slice(0, model.count);
	const isBeside = rows.some((row, i) => i !== first && isOfTodaysWater(row) && isHeld(row.value));
	return first >= 0 && !isHeld(rows[first]!.value) && !isBeside;
}
