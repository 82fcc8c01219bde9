import { fillingTrapIn } from './filling-trap';
import { eventsOf, lastOf } from './event-queries';
import type { Detector } from './slips';

const firm = { provisional: false };

/** The last filling before the first drop: what counts as the start. */
const startOf: (
	events: Parameters<Detector>[0]['events']
) => ReturnType<typeof eventsOf<'titrant.drawn'>>[number] | undefined = (events) => {
	const firstDrop = events.findIndex(({ event }) => event.type === 'titrant.fell');
	return lastOf(firstDrop < 0 ? events : events.slice(0, firstDrop), 'titrant.drawn');
};

const tipFittedLate: Detector = ({ events }) => {
	const fitted = eventsOf(events, 'tip.fitted').filter(({ event }) => event.liquidInside);
	return fitted.flatMap((late) => {
		// Filled again afterwards, the air floated up and costs nothing.
		const refilled = eventsOf(events, 'titrant.drawn').some((drawn) => drawn.at > late.at);
		return refilled ? [] : [{ ...firm, entryId: late.id }];
	});
};

const tipLoose: Detector = ({ events }) => {
	const fitted = lastOf(events, 'tip.fitted');
	return fitted && fitted.event.firm === false ? [{ ...firm, entryId: fitted.id }] : [];
};

const airExpelled: Detector = ({ events }) => {
	const start = startOf(events);
	const airMl = start?.event.tipAirMl ?? 0;
	const isTip = eventsOf(events, 'tip.fitted').some(({ event }) => event.liquidInside);
	return start && airMl > 0.004 && !isTip ? [{ ...firm, entryId: start.id, sizeMl: airMl }] : [];
};

const hangingAtStart: Detector = ({ events }) => {
	const start = startOf(events);
	const hangingMl = start?.event.hangingMl ?? 0;
	if (!start || hangingMl <= 0) return [];
	const firstDrop = events.find(({ event }) => event.type === 'titrant.fell');
	if (!firstDrop) return [];
	const wiped = eventsOf(events, 'tip.wiped').some(
		(wipe) => wipe.at >= start.at && wipe.at <= firstDrop.at
	);
	return wiped ? [] : [{ ...firm, entryId: start.id, sizeMl: hangingMl }];
};

/**
 * Filled by one mark and read by the other. Provisional from the filling on, when it was filled by
 * the line; settled by what is read at the end.
 */
const mixedMarks: Detector = ({ kit, events }) => {
	const { delivery } = kit;
	const start = startOf(events);
	if (delivery.by !== 'syringe' || !start) return [];
	const trap = fillingTrapIn(kit, start.event);
	const read = lastOf(events, 'marks.read');
	if (!read)
		return trap
			? [{ entryId: start.id, provisional: true, sizeMl: -trap.cushionMl, variant: 'filledByLine' }]
			: [];
	const { sealMl, lineMl } = read.event.marks;
	const isReadBySeal = sealMl !== undefined;
	if (trap && isReadBySeal)
		return [{ ...firm, entryId: read.id, sizeMl: -trap.cushionMl, variant: 'filledByLine' }];
	const cushionMl =
		start.event.sealMl !== undefined && start.event.lineMl !== undefined
			? Math.abs(start.event.sealMl - start.event.lineMl)
			: (delivery.tipVolumeMl ?? 0);
	return !trap && !isReadBySeal && lineMl !== undefined && cushionMl > 0.02
		? [{ ...firm, entryId: read.id, sizeMl: cushionMl, variant: 'readByLine' }]
		: [];
};

export const fillingSlips = { tipFittedLate, tipLoose, airExpelled, hangingAtStart, mixedMarks };
