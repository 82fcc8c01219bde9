import { heldByTanks, plausibleRange } from '../../kits';
import type { Analysis } from './analysis';
import { isOfTodaysWater } from './in-question';

/**
 * Nor does a tank hold this share of the lowest that is plausible. Lower than a remark beside the tank draws
 * the line: used up by a third, a tank is in need, and its reading is not to be thrown away; judgement.
 */
const BELOW = 1 / 3;

/**
 * The test in question reads more or less than any tank holds, and no reading of today's water that a tank
 * may hold stands beside it: whatever is likeliest to have made such a number, nothing of the water
 * follows from it alone. What another method finds in the same cup tells of the cup.
 */
export function isBeyondAnyTank({ model, method, first, water }: Analysis): boolean {
	const { low } = plausibleRange(water.unit, method.analyte);
	const { high } = heldByTanks(water.unit, method.analyte);
	const isOfATank = (value: number) => value >= BELOW * low && value <= high;
	const rows = model.rows.slice(0, model.count);
	const isBeside = rows.some(
		(row, i) => i !== first && isOfTodaysWater(row) && isOfATank(row.value)
	);
	return first >= 0 && !isOfATank(rows[first]!.value) && !isBeside;
}
