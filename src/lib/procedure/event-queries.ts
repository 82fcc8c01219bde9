import type { WalkEvent, WalkEventType } from '../observation';
import type { TimedEvent } from './walk-log';

/** An event of one type, with its place among all. */
export type Of<Type extends WalkEventType> = {
	id: string;
	at: number;
	event: Extract<WalkEvent, { type: Type }>;
};

/** Events of some types, in order. */
export function eventsOf<Type extends WalkEventType>(
	events: readonly TimedEvent[],
	...types: Type[]
): Of<Type>[] {
	return events.filter((each): each is Of<Type> => (types as string[]).includes(each.event.type));
}

export function lastOf<Type extends WalkEventType>(
	events: readonly TimedEvent[],
	...types: Type[]
): Of<Type> | undefined {
	return eventsOf(events, ...types).at(-1);
}

/** What follows an event, in order: times may be equal, places are not. */
export function after(events: readonly TimedEvent[], one: { id: string }): readonly TimedEvent[] {
	return events.slice(events.findIndex(({ id }) => id === one.id) + 1);
}

/** The end of a step: done or skipped. */
export function stepOver(events: readonly TimedEvent[], stepId: string): TimedEvent | undefined {
	return events.find(
		({ event }) =>
			(event.type === 'step.done' || event.type === 'step.skipped') && event.stepId === stepId
	);
}

/** Titrant that came into the vial: whole drops, a stream, or what was touched off. */
export type Addition = Of<'titrant.fell' | 'drop.touchedOff'>;

export function additionsIn(events: readonly TimedEvent[]): Addition[] {
	return eventsOf(events, 'titrant.fell', 'drop.touchedOff');
}

/** Signs, but for additions, that titrant has been used: hands do not note every drop. */
const signsOfUse: readonly WalkEventType[] = [
	'titrant.spent',
	'colour.turned',
	'colour.faded',
	'colour.stayed'
];

/**
 * Is this filling a refill on the way, not a start? It says so itself by what stood there before or
 * by how much came in; else it is one when titrant had been used by then.
 */
export function isRefill(events: readonly TimedEvent[], drawn: Of<'titrant.drawn'>): boolean {
	const { before, drawnAgainMl } = drawn.event;
	if (before !== undefined || (drawnAgainMl ?? 0) !== 0) return true;
	const place = events.findIndex(({ id }) => id === drawn.id);
	return events.slice(0, place).some(
		({ event }) =>
			isAddition(event.type) ||
			// The bench notes every drop, so that there nothing else need tell.
			(drawnAgainMl === undefined && signsOfUse.includes(event.type))
	);
}

/** A filling that counts: the last before titrant was used, or before now. */
export type Start = { drawn: Of<'titrant.drawn'>; isUsed: boolean; until: readonly TimedEvent[] };

export function startsIn(events: readonly TimedEvent[]): Start[] {
	return eventsOf(events, 'titrant.drawn').flatMap((drawn): Start[] => {
		const later = after(events, drawn);
		const end = later.findIndex(
			({ event }) => event.type === 'titrant.drawn' || isAddition(event.type)
		);
		const next = end < 0 ? undefined : later[end];
		// Drawing in several pulls is one filling, whether it is the first or one on the way.
		if (next && isDrawn(next) && (!isRefill(events, next) || isRefill(events, drawn))) return [];
		return [{ drawn, isUsed: next !== undefined, until: end < 0 ? later : later.slice(0, end) }];
	});
}

const isAddition = (type: WalkEventType) => type === 'titrant.fell' || type === 'drop.touchedOff';
const isDrawn = (each: TimedEvent): each is Of<'titrant.drawn'> =>
	each.event.type === 'titrant.drawn';
