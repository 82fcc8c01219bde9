import { assign } from 'xstate';
import type { Kit, Step } from '../kits';
import type { WalkEvent } from '../observation';

/** A walk event as the machine takes it: with its time and its place in the log. */
export type TimedWalkEvent = WalkEvent & { at: number; entryId: string };

export type WalkInput = { kit: Kit; steps: readonly Step[]; startedAt: number };

/** Only what happened. Volume, slips, value and coaching are functions of it. */
export type WalkContext = WalkInput & {
	stepIndex: number;
	/** When the present step began, ms. */
	stepSince: number;
	happened: readonly TimedWalkEvent[];
};

export function beginWalk(input: WalkInput): WalkContext {
	return { ...input, stepIndex: 0, stepSince: input.startedAt, happened: [] };
}

/** The step that the walk stands at; null when all are over. */
export function stepOf(context: WalkContext): Step | null {
	return context.steps[context.stepIndex] ?? null;
}

export function nextKindIs(context: WalkContext, kind: string): boolean {
	return stepOf(context)?.kind === kind;
}

/** Neither given up nor through. */
export function isGoingOn(context: WalkContext): boolean {
	return stepOf(context) !== null && context.happened.at(-1)?.type !== 'walk.abandoned';
}

/** An end of a step counts for the step it names and for no other: a late tap does no harm. */
export function isStepDone(context: WalkContext, event: TimedWalkEvent): boolean {
	return 'stepId' in event && event.stepId === stepOf(context)?.id;
}

/** Do the marks hold what this kit is read by? Others say nothing and are not taken. */
export function holdsMark({ kit }: WalkContext, event: TimedWalkEvent): boolean {
	if (event.type !== 'marks.read') return false;
	const { sealMl, lineMl, levelMl, drops } = event.marks;
	if (kit.delivery.by === 'dropper') return drops !== undefined;
	if (kit.delivery.by === 'burette') return levelMl !== undefined;
	return sealMl !== undefined || lineMl !== undefined;
}

type Assigned = { context: WalkContext; event: TimedWalkEvent };

const withEvent = ({ context, event }: Assigned) => [...context.happened, event];

export const noteEvent = assign<WalkContext, TimedWalkEvent, undefined, TimedWalkEvent, never>({
	happened: withEvent
});

export const noteStepOver = assign<WalkContext, TimedWalkEvent, undefined, TimedWalkEvent, never>({
	happened: withEvent,
	stepIndex: ({ context }: Assigned) => context.stepIndex + 1,
	stepSince: ({ event }: Assigned) => event.at
});
