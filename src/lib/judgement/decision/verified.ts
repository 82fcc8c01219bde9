import { bestAct } from './best-act';
import type { Belief } from './decide-belief';

/** From this chance on methods that do not agree still agree on the side of the band; judgement. */
const ON_ONE_SIDE = 0.9;

/** What stands beside the kit's own reading. */
export type Witnesses = {
	/** Something independent of the kit holds the value. */
	isIndependent: boolean;
	/** A known solution is among it. */
	isKitVouched: boolean;
	/** Two methods lie further apart than both allow. */
	areMethodsAtOdds: boolean;
	/** What the test in question read, in the band's unit; null where none is. */
	read: number | null;
};

/**
 * Whether what is independent of the kit bears out what is to be done. A second method that contradicts the
 * kit bears out nothing but the side of the band on which both of them lie, unless a known solution says
 * which of them holds.
 *
 * @param band in the unit of `read`
 */
export function isVerifiedBy(
	{ isIndependent, isKitVouched, areMethodsAtOdds, read }: Witnesses,
	belief: Belief,
	band: { low: number; high: number }
): boolean {
	if (!isIndependent || isKitVouched || !areMethodsAtOdds) return isIndependent;
	if (read === null) return false;
	const { below, above } = belief.probabilities;
	const best = bestAct(belief);
	return (
		(best === 'raise' && read < band.low && below >= ON_ONE_SIDE) ||
		(best === 'lower' && read > band.high && above >= ON_ONE_SIDE)
	);
}
