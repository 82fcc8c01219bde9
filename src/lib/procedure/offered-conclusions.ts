import type { Scenario } from '../bench';
import type { Kit } from '../kits';
import { conclusions, type Conclusion } from '../observation';

/**
 * The conclusions that can be drawn in a case, in the order of every screen: about salinity where there
 * is something to know of it, about what was taken off where something was. Neither follows from what is
 * the matter.
 */
export function offeredConclusions(
	{ record, checks, takenOff }: Pick<Scenario, 'record' | 'checks' | 'takenOff'>,
	{ byDifference }: Pick<Kit, 'byDifference'>
): Conclusion[] {
	const has: Partial<Record<Conclusion, boolean>> = {
		salinity:
			record.some(({ of }) => of === 'salinity') ||
			checks.some(({ check }) => check === 'salinity'),
		carriedOver: byDifference !== undefined && takenOff !== undefined
	};
	return conclusions.filter((each) => has[each] ?? true);
}
