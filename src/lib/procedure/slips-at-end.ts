import { outranTheDye, slipsOfThisEnd } from '../bench';
import type { Slip } from '../observation';
import { additionsIn } from './event-queries';
import { natureOf, slipsIn } from './slips';
import { declaredEnd } from './slips-titrating';
import type { TitrationRun } from './titration-run';

/**
 * Single drops that outran the dye were too many only where they went past the end, so that before the
 * debrief nobody can say so.
 */
function hurried({ bench, steps, events }: TitrationRun): Slip[] {
	const { kit } = bench;
	const last = additionsIn(events).at(-1);
	if (!last || !declaredEnd({ kit, steps, events }) || !outranTheDye(bench)) return [];
	const { id: entryId } = last;
	const nature = natureOf.overshot;
	return [{ kind: 'overshot', nature, entryId, provisional: false, variant: 'hurried' }];
}

/**
 * The slips of a titration that is over, in the light of where its end lay. Drops that outran the dye say more
 * than that the last of them fell into a flash.
 */
export function slipsKnowingTheEnd(titration: TitrationRun): Slip[] {
	const { bench, steps, events } = titration;
	const plain = slipsIn(bench.kit, steps, events).filter(({ provisional }) => !provisional);
	const isMoreAtOnce = plain.some(({ variant }) => variant === 'severalAtOnce');
	const outran = isMoreAtOnce ? [] : slipsOfThisEnd(bench, hurried(titration));
	const others = outran.length > 0 ? plain.filter(({ kind }) => kind !== 'overshot') : plain;
	return [...slipsOfThisEnd(bench, others), ...outran];
}
