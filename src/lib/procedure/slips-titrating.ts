import { eventsOf, lastOf } from './event-queries';
import type { Detector, Seen } from './slips';
import type { TimedEvent } from './walk-log';

const firm = { provisional: false };
const TILT_DEGREES = 15;

const dropperTilted: Detector = ({ events }) => {
	const tilted = eventsOf(events, 'titrant.fell').filter(
		({ event }) => Math.abs(event.tiltDegrees ?? 0) > TILT_DEGREES
	);
	return tilted[0] ? [{ ...firm, entryId: tilted[0].id, drops: tilted.length }] : [];
};

const dropperSqueezed: Detector = ({ events }) => {
	const hard = eventsOf(events, 'titrant.fell').filter(({ event }) => event.squeezedHard);
	return hard[0] ? [{ ...firm, entryId: hard[0].id, drops: hard.length }] : [];
};

/** The declared end, if it still stands: the last 'stayed' with no titrant after it. */
function declaredEnd({ events }: Seen) {
	const stayed = lastOf(events, 'colour.stayed');
	if (!stayed) return undefined;
	const later = events.some(
		({ at, event }) =>
			at > stayed.at && (event.type === 'titrant.fell' || event.type === 'colour.faded')
	);
	return later ? undefined : stayed;
}

/** Declared before it was swirled, or before it had stood its time: whatever the colour, not yet an end. */
const stoppedAtFlash: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (!end) return [];
	const { secondsSinceDrop, swirledSince } = end.event;
	const needs = seen.kit.endPoint.holdsSeconds;
	if (swirledSince === false) return [{ ...firm, entryId: end.id, variant: 'notSwirled' }];
	return secondsSinceDrop !== undefined && secondsSinceDrop < needs * 0.6
		? [{ ...firm, entryId: end.id, variant: 'notWaited' }]
		: [];
};

/** Several drops, or a stream, in one go just before the end: the last of them were too many. */
const overshot: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (!end) return [];
	const before = eventsOf(seen.events, 'titrant.fell').filter(({ at }) => at <= end.at);
	const last = before.at(-1);
	if (!last) return [];
	const volumeMl = last.event.volumeMl ?? (last.event.drops ?? 1) * seen.kit.delivery.dropMl;
	const drops = volumeMl / seen.kit.delivery.dropMl;
	return drops > 1.6 || last.event.intoPlume
		? [
				{
					...firm,
					entryId: last.id,
					drops: Math.max(1, Math.round(drops) - 1),
					variant: drops > 1.6 ? 'severalAtOnce' : 'intoTheFlash'
				}
			]
		: [];
};

const timesOf = (events: readonly TimedEvent[], type: 'colour.faded' | 'colour.stayed') =>
	eventsOf(events, type).map(({ at }) => at);

/** An end was declared, taken back when the colour faded, and titrant added again, more than once. */
const chasedColour: Detector = ({ events }) => {
	const stays = timesOf(events, 'colour.stayed');
	const faded = eventsOf(events, 'colour.faded').filter(({ at }) => stays.some((s) => s < at));
	const resumed = stays.slice(1).length;
	return resumed >= 1 && faded[0] ? [{ ...firm, entryId: faded[0].id, drops: resumed }] : [];
};

/** Less than a second of swirling over the last drops, or more than a vial should be shaken. */
const swirledOddly: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (!end) return [];
	const drops = eventsOf(seen.events, 'titrant.fell').filter(({ at }) => at <= end.at);
	const since = drops[0]?.at ?? end.at;
	const swirls = eventsOf(seen.events, 'vial.swirled').filter(({ at }) => at >= since);
	if (drops.length < 3 || swirls.some(({ event }) => event.seconds === undefined)) return [];
	const seconds = swirls.reduce((sum, { event }) => sum + (event.seconds ?? 0), 0);
	if (seconds < 4) return [{ ...firm, entryId: end.id, variant: 'still' }];
	return seconds > 150 ? [{ ...firm, entryId: end.id, variant: 'shaken' }] : [];
};

const wrongLight: Detector = (seen) => {
	const end = declaredEnd(seen);
	return end && (end.event.lamp === 'blue' || end.event.lamp === 'dim')
		? [{ ...firm, entryId: end.id, variant: end.event.lamp }]
		: [];
};

const hangingAtEnd: Detector = (seen) => {
	const end = declaredEnd(seen);
	const hangingMl = end?.event.hangingMl ?? 0;
	return end && hangingMl > 0.15 * seen.kit.delivery.dropMl
		? [{ ...firm, entryId: end.id, sizeMl: hangingMl }]
		: [];
};

export const titratingSlips = {
	dropperTilted,
	dropperSqueezed,
	stoppedAtFlash,
	overshot,
	chasedColour,
	swirledOddly,
	wrongLight,
	hangingAtEnd
};
