import { initialTransition, transition } from 'xstate';
import * as z from 'zod/mini';
import { KitSchema, stepsOf, type Kit } from '../kits';
import {
	entrySchemaOf,
	liveEntries,
	WalkEventSchema,
	type Entry,
	type WalkEvent
} from '../observation';
import { loadLog, type Upcasts } from './log';
import { walkMachine, type WalkSnapshot } from './walk';
import type { WalkInput } from './walk-helpers';

/** Number of the form in which logs are written now. A change of form raises it and adds to `upcasts`. */
export const WALK_LOG_FORMAT = 1;

export const WalkLogSchema = z.strictObject({
	format: z.literal(WALK_LOG_FORMAT),
	/** Frozen: what the leaflet said on that day. */
	kit: KitSchema,
	startedAt: z.number(),
	entries: z.array(entrySchemaOf<WalkEvent>(WalkEventSchema))
});
/** The whole truth about one titration: the kit and what happened, only ever appended to. */
export type WalkLog = {
	format: typeof WALK_LOG_FORMAT;
	kit: Kit;
	startedAt: number;
	entries: Entry<WalkEvent>[];
};

/** Brings a log of an older form one step up, by the form's number. None yet. */
const upcasts: Upcasts = {};

/**
 * A log from outside (a file, storage, a link), brought up to date and validated.
 *
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadWalkLog(unknownLog: unknown): WalkLog {
	return loadLog(unknownLog, upcasts, WalkLogSchema, 'the log');
}

export type TimedEvent = { id: string; at: number; event: WalkEvent };

/** A walk that nothing has happened on. */
export function startWalk(input: WalkInput): WalkSnapshot {
	return initialTransition(walkMachine, input)[0];
}

/** The walk after one event, or null when the event does not belong there and changes nothing. */
export function stepWalk(snapshot: WalkSnapshot, timed: TimedEvent): WalkSnapshot | null {
	if (snapshot.status !== 'active') return null;
	const event = { ...timed.event, at: timed.at, entryId: timed.id };
	const next = transition(walkMachine, snapshot, event)[0];
	// The machine hands back the very snapshot where no transition took the event; asking it first
	// whether it can would choose the transition twice.
	return next === snapshot ? null : next;
}

export type ReplayedWalk = {
	snapshot: WalkSnapshot;
	/** The first event that did not belong, if any, and all from there on, kept aside. */
	refused: TimedEvent | null;
	aside: TimedEvent[];
};

/** Plays a log through: state is nothing but what its entries make of it. */
export function replayWalk(log: Pick<WalkLog, 'kit' | 'startedAt' | 'entries'>): ReplayedWalk {
	let snapshot = startWalk({ kit: log.kit, steps: stepsOf(log.kit), startedAt: log.startedAt });
	const live = liveEntries(log.entries);
	for (const [i, timed] of live.entries()) {
		const next = stepWalk(snapshot, timed);
		if (!next) return { snapshot, refused: timed, aside: live.slice(i) };
		snapshot = next;
	}
	return { snapshot, refused: null, aside: [] };
}
