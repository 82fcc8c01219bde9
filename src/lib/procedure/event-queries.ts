import type { WalkEvent, WalkEventType } from '../observation';
import type { TimedEvent } from './walk-log';

type Of<Type extends WalkEventType> = {
	id: string;
	at: number;
	event: Extract<WalkEvent, { type: Type }>;
};

/** Events of one type, in order. */
export function eventsOf<Type extends WalkEventType>(
	events: readonly TimedEvent[],
	type: Type
): Of<Type>[] {
	return events.filter((each): each is Of<Type> => each.event.type === type);
}

export function lastOf<Type extends WalkEventType>(
	events: readonly TimedEvent[],
	type: Type
): Of<Type> | undefined {
	const all = eventsOf(events, type);
	return all[all.length - 1];
}

/** The end of the step that `isIt` describes: done or skipped. */
export function stepOver(events: readonly TimedEvent[], stepId: string): TimedEvent | undefined {
	return events.find(
		({ event }) =>
			(event.type === 'step.done' || event.type === 'step.skipped') && event.stepId === stepId
	);
}
