import * as z from 'zod/mini';
import { BenchActionSchema } from '../bench';
import { KitSchema, type Kit } from '../kits';
import { entrySchemaOf, WalkEventSchema, type Entry } from '../observation';
import { InquiryEventSchema } from './inquiry';

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

/**
 * A run log from outside, validated.
 *
 * @throws RangeError saying where it is damaged
 */
export function loadRunLog(unknownLog: unknown): RunLog {
	const parsed = RunLogSchema.safeParse(unknownLog);
	if (parsed.success) return parsed.data as RunLog;
	const issue = parsed.error.issues[0];
	throw new RangeError(
		`the run is damaged at ${issue?.path.join('.') || 'its top'}: ${issue?.code ?? 'not a run'}`
	);
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
