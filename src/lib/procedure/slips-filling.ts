import type { Kit } from '../kits';
import type { Slip } from '../observation';
import { countedMark, sampleVolumeOf } from './counted-mark';
import { after, additionsIn, eventsOf, lastOf, startsIn, type Of } from './event-queries';
import { besideFullMl, fillingTrapIn, fullNumeral } from './filling-trap';
import type { Detector, Seen } from './slip-detector';
import { mixedAtRefill } from './slips-refilling';

const firm = { provisional: false };

/** Air that came in with the filling is a slip from here on, mL: below, it is a trace. */
const AIR_ML = 0.004;

/** Was it filled before, without a tip? Hands may say it so, and not at the fitting. */
function wasFilledBare(events: Seen['events'], fitted: Of<'tip.fitted'>): boolean {
	const before = events.slice(
		0,
		events.findIndex(({ id }) => id === fitted.id)
	);
	return lastOf(before, 'titrant.drawn', 'tip.fitted')?.event.type === 'titrant.drawn'
		? lastOf(before, 'titrant.drawn')?.event.tip === 'off'
		: false;
}

/** A tip put on a filled syringe is dry: its air goes first. Filled once more, it costs nothing. */
const tipFittedLate: Detector = ({ events }) =>
	eventsOf(events, 'tip.fitted')
		.filter((fitted) => fitted.event.liquidInside ?? wasFilledBare(events, fitted))
		.filter((late) => {
			const next = after(events, late).find(({ event }) =>
				['titrant.drawn', 'titrant.fell', 'drop.touchedOff'].includes(event.type)
			);
			return next?.event.type !== 'titrant.drawn';
		})
		.map(({ id }) => ({ ...firm, entryId: id }));

/** A tip that was only set on: until it is seated, or for as long as titrant fell from it. */
const tipLoose: Detector = ({ events }) => {
	const fitted = eventsOf(events, 'tip.fitted');
	return fitted
		.filter(({ event }, i) => {
			if (event.firm !== false) return false;
			const next = fitted[i + 1];
			const dripped = additionsIn(after(events, fitted[i] ?? { id: '' }));
			return !next || dripped.some((drop) => drop.at <= next.at);
		})
		.map(({ id }) => ({ ...firm, entryId: id }));
};

const airExpelled: Detector = ({ events }) =>
	startsIn(events)
		.filter(({ drawn, isUsed }) => isUsed && (drawn.event.tipAirMl ?? 0) > AIR_ML)
		.map(({ drawn }) => ({ ...firm, entryId: drawn.id, sizeMl: drawn.event.tipAirMl }));

const hangingAtStart: Detector = ({ events }) =>
	startsIn(events)
		.filter(({ drawn, isUsed, until }) => {
			const isWiped = eventsOf(until, 'tip.wiped').length > 0;
			return isUsed && !isWiped && (drawn.event.hangingMl ?? 0) > 0;
		})
		.map(({ drawn }) => ({ ...firm, entryId: drawn.id, sizeMl: drawn.event.hangingMl }));

/**
 * Filled by one mark and read by the other. Provisional from the filling on when it was filled by
 * the line; settled by the mark that the value rests on. Counting from where that mark really stood
 * at the start is right whatever it was filled by.
 */
const mixedAtStart: Detector = ({ kit, events, tank }) => {
	const start = startsIn(events)[0];
	if (!start || kit.delivery.by === 'dropper') return [];
	const trap = fillingTrapIn(kit, start.drawn.event, sampleVolumeOf(kit, events));
	// At the tank a value is counted from where the mark stood, or through the tip: nothing is mixed.
	if (tank && (tank.valued.value !== null || !trap)) return [];
	const counted = tank ? null : countedMark(kit, events);
	if (!counted && !trap) return isFilled(events) ? beside(kit, start.drawn) : [];
	if (!counted)
		return trap
			? [
					{
						entryId: start.drawn.id,
						provisional: true,
						sizeMl: -trap.cushionMl,
						variant: 'filledByLine'
					}
				]
			: [];
	if (counted.from === 'start') return [];
	const mixed = { ...firm, entryId: counted.read.id };
	if (trap)
		return counted.by === 'seal'
			? [{ ...mixed, sizeMl: -trap.cushionMl, variant: 'filledByLine' }]
			: [];
	if (counted.by === 'line') return readByLine({ kit, start: start.drawn.event, mixed });
	return besideFull({ kit, start: start.drawn.event, by: counted.by, mixed });
};

/** One slip, wherever it was made: that of a later filling while it can still be put right. */
const mixedMarks: Detector = (seen) => {
	const [atRefill] = mixedAtRefill(seen);
	const [atStart] = mixedAtStart(seen);
	const one = atRefill?.provisional ? atRefill : (atStart ?? atRefill);
	return one ? [one] : [];
};

const isFilled = (events: Seen['events']) =>
	events.some(
		({ event }) =>
			event.type === 'filling.done' || (event.type === 'step.done' && event.stepId === 'fill')
	);

/** Neither seal nor line stands at the full mark: worth a word while it can still be put right. */
function beside(kit: Kit, { id, event }: { id: string; event: Mixed['start'] }): Found {
	const { delivery } = kit;
	if (delivery.by === 'dropper') return [];
	const full = delivery.by === 'syringe' ? fullNumeral(delivery) : 0;
	const isLineThere =
		event.lineMl !== undefined && Math.abs(event.lineMl - full) <= 0.75 * delivery.graduationMl;
	const mixed = { entryId: id, provisional: true };
	const by = delivery.by === 'syringe' ? 'seal' : 'level';
	return isLineThere ? [] : besideFull({ kit, start: event, by, mixed });
}

type Mixed = {
	kit: Seen['kit'];
	start: { sealMl?: number; lineMl?: number; levelMl?: number };
	mixed: { provisional: boolean; entryId: string };
};
type Found = Omit<Slip, 'kind' | 'nature'>[];

/** Filled by the seal, read by the line: the cushion counts as if it had been used. */
function readByLine({ kit, start, mixed }: Mixed): Found {
	if (kit.delivery.by !== 'syringe') return [];
	const { sealMl, lineMl } = start;
	const cushionMl =
		sealMl !== undefined && lineMl !== undefined
			? Math.abs(sealMl - lineMl)
			: (kit.delivery.tipVolumeMl ?? 0);
	return cushionMl > kit.delivery.graduationMl
		? [{ ...mixed, sizeMl: cushionMl, variant: 'readByLine' }]
		: [];
}

/** Filled beside the full mark, and counted from it all the same. */
function besideFull({ kit, start, by, mixed }: Mixed & { by: 'seal' | 'level' | 'drops' }): Found {
	const usedTooMuchMl = by === 'drops' ? 0 : besideFullMl(kit, start, by);
	return usedTooMuchMl === 0 ? [] : [{ ...mixed, sizeMl: usedTooMuchMl, variant: 'besideFull' }];
}

export const fillingSlips = { tipFittedLate, tipLoose, airExpelled, hangingAtStart, mixedMarks };
