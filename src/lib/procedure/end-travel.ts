import { scaleEndsOf, type Kit } from '../kits';
import { fromOtherEnd } from './drop-check';
import { lastOf } from './event-queries';
import { refilledMlIn, startFillingOf } from './refills';
import type { TimedEvent } from './walk-log';

/** Numerals read at the end, as far as they are there. */
export function numeralsRead(events: readonly TimedEvent[]): number[] {
	const { sealMl, lineMl, levelMl } = lastOf(events, 'marks.read')?.event.marks ?? {};
	return [sealMl, lineMl, levelMl].filter((each) => each !== undefined);
}

/** Travel of one mark from start to end, with what the other end of the scale would make of it. */
export type EndTravel = { endMl: number; usedMl: number; otherEndMl: number };

/**
 * Travel by the mark that was read at both ends, below 0 where the end lies before the start; from
 * the full mark where no start was noted: the seal's, since the line begins below it by the tip. Null
 * where the ends were read by different marks, where the scale ends before a numeral, or where a
 * refill is not known.
 */
export function endTravelOf(kit: Kit, events: readonly TimedEvent[]): EndTravel | null {
	const { delivery } = kit;
	const marks = lastOf(events, 'marks.read')?.event.marks;
	const refilledMl = refilledMlIn(kit, events);
	if (!marks || refilledMl === null || delivery.by === 'dropper') return null;
	const start = startFillingOf(events)?.event;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const keys = ['sealMl', 'lineMl', 'levelMl'] as const;
	const isBare = keys.every((key) => start?.[key] === undefined);
	const key = keys.find(
		(each) =>
			marks[each] !== undefined && (start?.[each] !== undefined || (isBare && each !== 'lineMl'))
	);
	const endMl = key && marks[key];
	const [lowest, highest] = scaleEndsOf(delivery);
	if (endMl === undefined || endMl < lowest - 1e-9 || endMl > highest + 1e-9) return null;
	const startMl = (key && start?.[key]) ?? (isDown ? delivery.capacityMl : 0);
	const travel = (toMl: number) => (isDown ? startMl - toMl : toMl - startMl) + refilledMl;
	return { endMl, usedMl: travel(endMl), otherEndMl: travel(fromOtherEnd(kit, endMl)) };
}
