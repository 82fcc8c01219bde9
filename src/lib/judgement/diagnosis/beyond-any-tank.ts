import { plausibleRange } from '../../kits';
import type { Analysis } from './analysis';
import { isOfTodaysWater } from './in-question';

/** So many times the highest that is plausible is held by no tank; judgement. */
const ABOVE = 1.5;
/** Nor is this share of the lowest, though a tank may be used up further than is good for it; judgement. */
const BELOW = 1 / 3;

/**
 * The test in question reads more or less than any tank holds, and no reading of today's water that a tank
 * may hold stands beside it: whatever is likeliest to have made such a number, nothing of the water
 * follows from it alone. What another method finds in the same cup tells of the cup.
 */
export function isBeyondAnyTank({ model, method, first, water }: Analysis): boolean {
	const { low, high } = plausibleRange(water.unit, method.analyte);
	const isOfATank = (value: number) => value >= BELOW * low && value <= ABOVE * high;
	const rows = model.rows.slice(0, model.count);
	const isBeside = rows.some(
		(row, i) => i !== first && isOfTodaysWater(row) && isOfATank(row.value)
	);
	return first >= 0 && !isOfATank(rows[first]!.value) && !isBeside;
}
