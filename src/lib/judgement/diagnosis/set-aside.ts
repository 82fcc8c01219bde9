import { isOfATank } from './beyond-any-tank';
import type { Row, RowContext } from './row';

const OF_NO_TANK =
	'no tank holds that. Look at the number once more, or take it back: until then it does not count';
const FAR_FROM_CONTENT =
	'that is too far from what it holds to be a reading of it. Look at the number once more, or take it back: until then it does not count';

/**
 * A number beside the one in question that can hardly have been read: a figure or a point in the wrong
 * place. Taken for a reading it would outweigh all others, since nothing that happens to a test accounts for
 * it. Only while the one in question may be of a tank; else it is itself what is to be looked at.
 *
 * @returns why it is set aside; null where it counts
 */
export function whySetAside(row: Row, rows: readonly Row[], context: RowContext): string | null {
	const { water, method, prior } = context;
	const isHeld = (value: number) => isOfATank(value, water.unit, method.analyte);
	const first = rows.find(({ isInQuestion }) => isInQuestion);
	if (!first || row === first || row.weighed || !isHeld(first.value)) return null;
	// As far from what was in the vial as this is from a usual tank.
	const asOfTank = row.value - row.amountMean + prior.mean;
	if (isHeld(asOfTank)) return null;
	if (row.things.sampling !== null) return OF_NO_TANK;
	// A bottle of known solution may well hold nothing.
	return asOfTank > prior.mean ? FAR_FROM_CONTENT : null;
}
