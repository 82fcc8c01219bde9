import * as z from 'zod/mini';
import { BenchActionSchema } from '../bench';
import { KitSchema, type Kit } from '../kits';
import { entrySchemaOf, liveEntries, WalkEventSchema, type Entry } from '../observation';
import { InquiryEventSchema } from './inquiry';
import { loadLog, withUndo, type Upcasts } from './log';

/** Everything of a practice run that was done or said, in one order. */
export const RunEventSchema = z.discriminatedUnion('in', [
	z.strictObject({ in: z.literal('bench'), titration: z.int(), action: BenchActionSchema }),
	z.strictObject({ in: z.literal('walk'), titration: z.int(), event: WalkEventSchema }),
	z.strictObject({ in: z.literal('inquiry'), event: InquiryEventSchema })
]);
export type RunEvent = z.infer<typeof RunEventSchema>;
export type RunEntry = Entry<RunEvent>;

export const coachingWays = ['prompted', 'corrected', 'silent'] as const;
export type CoachingWay = (typeof coachingWays)[number];

export const RUN_LOG_FORMAT = 1;
export const RunLogSchema = z.strictObject({
	format: z.literal(RUN_LOG_FORMAT),
	id: z.string(),
	scenarioId: z.string(),
	seed: z.int(),
	coaching: z.enum(coachingWays),
	/** ms since 1970, for the list; times of entries count from the run's start. */
	startedAtEpochMs: z.number(),
	/** Frozen, so that a later version of the kit cannot change what was done. */
	kit: KitSchema,
	entries: z.array(entrySchemaOf<RunEvent>(RunEventSchema))
});
/** A practice run: the same seed and entries give the same run, anywhere. */
export type RunLog = {
	format: typeof RUN_LOG_FORMAT;
	id: string;
	scenarioId: string;
	seed: number;
	coaching: CoachingWay;
	startedAtEpochMs: number;
	kit: Kit;
	entries: RunEntry[];
};

/** Brings a run of an older form one step up, by the form's number. None yet. */
const upcasts: Upcasts = {};

/**
 * A run log from outside (storage, a link), brought up to date and validated.
 *
 * @throws RangeError saying which field is damaged and what is wrong there
 */
export function loadRunLog(unknownLog: unknown): RunLog {
	return loadLog(unknownLog, upcasts, RunLogSchema, 'the run');
}

/** Only declarations can be taken back: a drop that is in stays in. */
export function mayBeTakenBack(event: RunEvent): boolean {
	if (event.in === 'bench') return false;
	if (event.in === 'inquiry') return event.event.type === 'conclusion.given';
	return (
		event.event.type.startsWith('colour.') ||
		event.event.type === 'marks.read' ||
		event.event.type === 'value.reported'
	);
}

/**
 * The last thing declared that can still be taken back; null when there is none. Once a check has
 * begun, the reading it checks stands.
 */
export function lastDeclaration(log: RunLog): { id: string; event: RunEvent } | null {
	const last = liveEntries(log.entries).findLast(
		({ event }) =>
			mayBeTakenBack(event) || (event.in === 'inquiry' && event.event.type !== 'reading.given')
	);
	return last && mayBeTakenBack(last.event) ? last : null;
}

/**
 * The log with the last declaration taken back, and with it whatever was said after it, which rested
 * on it (that the step is over, that this is the reading). What hands did since then has happened.
 *
 * @param newId makes an id for each entry that is appended
 * @throws RangeError when there is nothing that can be taken back
 */
export function takeBack(log: RunLog, at: number, newId: () => string): RunLog {
	const declared = lastDeclaration(log);
	if (!declared) throw new RangeError('the log holds nothing that can be taken back');
	const live = liveEntries(log.entries);
	const resting = live
		.slice(live.findIndex(({ id }) => id === declared.id))
		.filter(({ event }) => event.in !== 'bench');
	return withAllUndone(log, resting, at, newId);
}

/**
 * The log with the first entry that did not belong, and all after it, set aside, so that the run can
 * go on from the last moment that made sense. They stay readable in it.
 */
export function setAside(log: RunLog, refusedId: string, at: number, newId: () => string): RunLog {
	const live = liveEntries(log.entries);
	const place = live.findIndex(({ id }) => id === refusedId);
	return place < 0 ? log : withAllUndone(log, live.slice(place), at, newId);
}

function withAllUndone(
	log: RunLog,
	entries: readonly { id: string }[],
	at: number,
	newId: () => string
): RunLog {
	let undone = log;
	for (const { id } of [...entries].reverse())
		undone = withUndo(undone, { id: newId(), at, undoes: id });
	return undone;
}
