import { plausibleRange } from '../../kits';
import type { Analysis } from './analysis';
import { isOfTodaysWater } from './in-question';

/** So many times the highest that is plausible is held by no tank; judgement. */
const BEYOND = 1.5;

/**
 * The test in question reads more than any tank holds, and no other reading of today's water stands beside
 * it: whatever is likeliest to have made such a number, nothing of the water follows from it alone.
 */
export function isBeyondAnyTank({ model, method, first, water }: Analysis): boolean {
	const most = BEYOND * plausibleRange(water.unit, method.analyte).high;
	const rows = model.rows.slice(0, model.count);
	const isBeside = rows.some((row, i) => i !== first && isOfTodaysWater(row) && row.value <= most);
	return first >= 0 && rows[first]!.value > most && !isBeside;
}
