import { titrantOf } from '../kits';
import type { WalkEventType } from '../observation';
import {
	additionsIn,
	after,
	eventsOf,
	lastOf,
	stepOver,
	type Addition,
	type Of
} from './event-queries';
import { dropsAtOnceAtEnd, isLastTimed } from './drop-pace';
import type { AtTank, Detector, Seen } from './slip-detector';
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

/** The end that was declared and left to stand: nothing was added after it while titrating. */
export function declaredEnd({ steps, events }: Seen): Of<'colour.stayed'> | undefined {
	const titrate = steps.find((step) => step.kind === 'titrate');
	const over = titrate && stepOver(events, titrate.id);
	const titrating = over ? events.slice(0, events.indexOf(over)) : events;
	const stayed = lastOf(titrating, 'colour.stayed');
	if (!stayed) return undefined;
	const isResumed = after(titrating, stayed).some(({ event }) =>
		['titrant.fell', 'drop.touchedOff', 'colour.faded'].includes(event.type)
	);
	return isResumed ? undefined : stayed;
}

/** Share of the leaflet's time that must have passed: nobody is held to the second. */
const WAITED_SHARE = 0.6;

/** Declared before it was swirled, or before it had stood its time: whatever the colour, not yet an end. */
function prematureBy(seen: Seen, stayed: Of<'colour.stayed'>): 'notSwirled' | 'notWaited' | null {
	const { swirledSince } = stayed.event;
	if (swirledSince === false) return 'notSwirled';
	const secondsSinceDrop = seen.tank ? stoodSeconds(seen, stayed) : stayed.event.secondsSinceDrop;
	return secondsSinceDrop !== undefined &&
		secondsSinceDrop < seen.kit.endPoint.holdsSeconds * WAITED_SHARE
		? 'notWaited'
		: null;
}

/**
 * How long a colour had stood when it was given up or taken for the end, by the times of the log,
 * seconds: hands say that it stays as it begins to, or when it has. Unknown where the last drop was
 * not noted as it fell.
 */
export function stoodSeconds(seen: Seen, stayed: Of<'colour.stayed'>): number | undefined {
	const end = after(seen.events, stayed).find(({ event }) => endsStanding.includes(event.type));
	const watchedMs = (end ?? stayed).at - stayed.at;
	const { secondsSinceDrop } = stayed.event;
	if (secondsSinceDrop !== undefined) return secondsSinceDrop + watchedMs / 1000;
	const before = upTo(seen, stayed);
	const additions = additionsIn(before);
	const turned = lastOf(before, 'colour.turned');
	const drop = additions.at(-1);
	const isDropLast = drop && (!turned || after(before, turned).some(({ id }) => id === drop.id));
	if (isDropLast && !isLastTimed(additions)) return undefined;
	const from = isDropLast ? drop : turned;
	if (!from) return undefined;
	return (stayed.at - from.at + watchedMs) / 1000;
}

const endsStanding: readonly WalkEventType[] = [
	'colour.faded',
	'titrant.fell',
	'drop.touchedOff',
	'step.done',
	'step.skipped'
];

const stoppedAtFlash: Detector = (seen) => {
	const end = declaredEnd(seen);
	const variant = end && prematureBy(seen, end);
	return end && variant ? [{ ...firm, entryId: end.id, variant }] : [];
};

/** Several drops, or a stream, in one go just before the end: the last of them were too many. */
const overshot: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (seen.tank) return end ? atOnceAtTank(upTo(seen, end)) : [];
	const portion = end ? lastPortion(upTo(seen, end)) : [];
	const last = portion.at(-1);
	// What is touched off alone is a part of a drop: the finest there is.
	if (!last || portion.every(({ event }) => event.type === 'drop.touchedOff')) return [];
	const { dropMl } = seen.kit.delivery;
	const drops = portion.reduce((sum, { event }) => {
		if (event.volumeMl !== undefined) return sum + event.volumeMl / dropMl;
		return sum + (event.type === 'titrant.fell' ? (event.drops ?? 1) : 0.5);
	}, 0);
	if (drops >= 1.6)
		return [
			{
				...firm,
				entryId: last.id,
				drops: Math.max(1, Math.round(drops) - 1),
				variant: 'severalAtOnce'
			}
		];
	return last.event.type === 'titrant.fell' && last.event.intoPlume
		? [{ ...firm, entryId: last.id, drops: 1, variant: 'intoTheFlash' }]
		: [];
};

/** The same by the pace at which hands noted their drops. */
function atOnceAtTank(events: readonly TimedEvent[]): ReturnType<Detector> {
	const additions = additionsIn(events);
	const drops = dropsAtOnceAtEnd(additions);
	const last = additions.at(-1);
	return last && drops > 1
		? [{ ...firm, entryId: last.id, drops: drops - 1, variant: 'severalAtOnce' }]
		: [];
}

/** What was added since the vial was last swirled before; where no swirl was noted, the last addition. */
function lastPortion(events: readonly TimedEvent[]): Addition[] {
	const additions = additionsIn(events);
	const last = additions.at(-1);
	if (!last) return [];
	const before = events.slice(
		0,
		events.findIndex(({ id }) => id === last.id)
	);
	const swirl = lastOf(before, 'vial.swirled');
	const first = additions[0];
	const isNoted = swirl && first && after(events, first).some(({ id }) => id === swirl.id);
	return isNoted ? additionsIn(after(events, swirl)) : [last];
}

const upTo = ({ events }: Seen, one: { id: string }) =>
	events.slice(
		0,
		events.findIndex(({ id }) => id === one.id)
	);

/** A good end was declared, and titrant added again when its colour went: one slip, however often. */
const chasedColour: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (!end || !titrantOf[seen.kit.analyte].endFadesLater) return [];
	const before = upTo(seen, end);
	const chased = eventsOf(before, 'colour.stayed').filter(
		(stayed) =>
			!prematureBy(seen, stayed) &&
			!isSoonAfterDrop(seen, stayed) &&
			// What hung at the tip and was touched off was on its way already.
			eventsOf(after(before, stayed), 'titrant.fell').length > 0
	);
	return chased[0] ? [{ ...firm, entryId: chased[0].id, drops: chased.length }] : [];
};

/** Where nobody timed the wait, the log's own times tell a flash that was put right from a chase. */
function isSoonAfterDrop(seen: Seen, stayed: Of<'colour.stayed'>): boolean {
	// Real hands' times were looked at already, as far as they can be trusted.
	if (seen.tank) return stoodSeconds(seen, stayed) === undefined;
	const drop = additionsIn(upTo(seen, stayed)).at(-1);
	return (
		drop !== undefined &&
		(stayed.at - drop.at) / 1000 < seen.kit.endPoint.holdsSeconds * WAITED_SHARE
	);
}

/** Swirling in all from the first drop on, seconds: less leaves the vial unmixed, more drives CO2 out. */
const SWIRLED_S = { least: 4, most: 150 };

const swirledOddly: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (!end) return [];
	const before = upTo(seen, end);
	const first = additionsIn(before)[0];
	if (!first || additionsIn(before).length < 3) return [];
	const swirls = eventsOf(after(before, first), 'vial.swirled');
	// Hands that did not note how long say nothing about too long or too short, but none is none.
	if (swirls.some(({ event }) => event.seconds === undefined)) return [];
	const seconds = swirls.reduce((sum, { event }) => sum + (event.seconds ?? 0), 0);
	// At a tank a swirl that was not noted may have been done all the same.
	if (seconds < SWIRLED_S.least && !seen.tank)
		return [{ ...firm, entryId: end.id, variant: 'still' }];
	const isTooMuch = titrantOf[seen.kit.analyte].endFadesLater && seconds > SWIRLED_S.most;
	return isTooMuch ? [{ ...firm, entryId: end.id, variant: 'shaken' }] : [];
};

/** The light at a moment, as far as it was said. */
export function lampAt(events: readonly TimedEvent[], light?: AtTank['light']) {
	return lastOf(events, 'lamp.changed')?.event.lamp ?? light;
}

const wrongLight: Detector = (seen) => {
	const end = declaredEnd(seen);
	if (!end) return [];
	const lamp = end.event.lamp ?? (seen.tank && lampAt(upTo(seen, end), seen.tank.light));
	return lamp === 'blue' || lamp === 'dim' ? [{ ...firm, entryId: end.id, variant: lamp }] : [];
};

const hangingAtEnd: Detector = (seen) => {
	const end = declaredEnd(seen);
	const hangingMl = end?.event.hangingMl ?? 0;
	// Touched off after all, though the end was declared: then it is in.
	const isIn = end && eventsOf(after(seen.events, end), 'drop.touchedOff').length > 0;
	return end && !isIn && hangingMl > 0.15 * seen.kit.delivery.dropMl
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
