import type { Slip, SlipKind } from '../observation';
import type { Account } from './account';
import { canMove, mends } from './mend';
import { openAccount } from './open-account';
import { chemicalEndOf, travelOf } from './reported';
import type { BenchState } from './state';

/** Titrant that is counted at the end of an account's titration, mL; null where there is none to see. */
function countedMl(account: Account): number | null {
	const end = chemicalEndOf(account);
	return end === null ? null : travelOf(account, end);
}

/**
 * By how much each slip moves what a titration will come to, or came to, before it is read: the same run
 * over again with that one slip mended, all else as it was.
 *
 * @param state as the hands left it: a part of a test is enough
 * @returns mL of titrant more than without the slip, 0 where it lies the other way than such a slip can move
 *   it; Infinity where the slip leaves no end to see; no entry
 *   for a slip that is neither in the vial nor on the way of the titrant, like a mark misread
 */
export function endMovedBy(state: BenchState, slips: readonly Slip[]): Map<SlipKind, number> {
	const account = openAccount(state, {}, slips);
	const counted = countedMl(account);
	const moved = new Map<SlipKind, number>();
	for (const { kind } of slips) {
		const world = mends[kind](account);
		const mended = countedMl(world);
		const isInVial = world.chemistry !== account.chemistry;
		if (mended === null) continue;
		if (counted === null) moved.set(kind, Infinity);
		else if (isInVial || counted !== mended) {
			const byMl = counted - mended;
			moved.set(kind, canMove(kind, byMl) ? byMl : 0);
		}
	}
	return moved;
}
