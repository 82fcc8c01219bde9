import type { WalkEventType } from '../observation';
import { countedMark, sampleVolumeOf } from './counted-mark';
import { after } from './event-queries';
import { besideFullMl, fillingTrapIn } from './filling-trap';
import { refillsAsOne, type Refill } from './refills';
import type { Detector, Seen } from './slip-detector';

const firm = { provisional: false };

/** Of a filling on the way: by the line to the full mark, or beside it by either. */
function offAtRefill(
	{ kit, events }: Seen,
	{ drawn }: Refill
): { drawn: Refill['drawn']; variant: string; pastMl: number } | null {
	const { delivery } = kit;
	const trap = fillingTrapIn(kit, drawn.event, sampleVolumeOf(kit, events));
	if (trap) return { drawn, variant: 'refilledByLine', pastMl: trap.cushionMl };
	const by = delivery.by === 'syringe' ? 'seal' : 'level';
	const usedTooMuchMl = besideFullMl(kit, drawn.event, by);
	return usedTooMuchMl === 0 ? null : { drawn, variant: 'refilledBeside', pastMl: -usedTooMuchMl };
}

/** A filling by the line is a trap at once; beside the mark it may go on moving until it is used. */
const isToBeSaid = (
	{ events }: Seen,
	{ drawn, variant }: { drawn: Refill['drawn']; variant: string }
): boolean =>
	variant === 'refilledByLine' ||
	after(events, drawn).some(({ event }) => endsFilling.includes(event.type));
const endsFilling: readonly WalkEventType[] = [
	'filling.done',
	'tip.wiped',
	'titrant.fell',
	'drop.touchedOff'
];

/**
 * Marks mixed at a filling on the way: it ended elsewhere than the seal at the full mark, and was reckoned as
 * if the seal stood there. Beside a tank it is counted from where the mark stood.
 */
export const mixedAtRefill: Detector = (seen) => {
	const { kit, events, tank } = seen;
	if (tank || kit.delivery.by === 'dropper') return [];
	const off = refillsAsOne(kit, events).flatMap((refill) => offAtRefill(seen, refill) ?? []);
	const last = off.at(-1);
	if (!last) return [];
	const counted = countedMark(kit, events);
	if (!counted) {
		const { drawn, variant, pastMl } = last;
		return isToBeSaid(seen, last)
			? [{ variant, entryId: drawn.id, provisional: true, sizeMl: -pastMl }]
			: [];
	}
	const { variant } = off.find((each) => each.variant === 'refilledByLine') ?? last;
	return counted.refills === 'toFull'
		? [{ ...firm, variant, entryId: counted.read.id, sizeMl: -counted.uncountedMl }]
		: [];
};
