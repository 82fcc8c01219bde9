import { stepsOf, type Kit } from '$lib/kits';
import type { TestEvent, WalkEvent } from '$lib/observation';
import { replayTest, type TestLog, type TestState } from '$lib/procedure';

export const TEN_PAST_SIX = Date.UTC(2026, 2, 14, 18, 10);

/** A log of these events, a second apart. */
export function logOf(kit: Kit, events: readonly TestEvent[]): TestLog {
	return {
		format: 1,
		id: 'a-test',
		startedAtEpochMs: TEN_PAST_SIX,
		kit,
		kitVersion: 0,
		entries: events.map((event, i) => ({
			id: `e${i}`,
			at: TEN_PAST_SIX + (i + 1) * 1000,
			event
		}))
	};
}

export const passed: TestEvent = { in: 'before', event: { type: 'circumstances.passed' } };
export const onWalk = (titration: number, ...events: WalkEvent[]): TestEvent[] =>
	events.map((event) => ({ in: 'walk', titration, event }));

/**
 * A whole walk with nothing said but what is given: how it was filled, what happened while
 * titrating, and what was read at the end.
 */
export function walkOf(
	kit: Kit,
	said: { filled?: WalkEvent[]; titrated?: WalkEvent[]; read: WalkEvent[]; before?: WalkEvent[] }
): WalkEvent[] {
	return stepsOf(kit).flatMap((step): WalkEvent[] => {
		const over: WalkEvent = { type: 'step.done', stepId: step.id };
		if (step.kind === 'choose') return [...(said.before ?? []), over];
		if (step.kind === 'dose') return [{ type: 'reagent.added', reagentId: step.reagentId }, over];
		if (step.kind === 'fill') return [...(said.filled ?? []), over];
		if (step.kind === 'titrate') return [...(said.titrated ?? []), { type: 'colour.stayed' }, over];
		if (step.kind === 'read') return [...said.read, over];
		return [over];
	});
}

/** The state of a test with one titration. */
export function tested(kit: Kit, said: Parameters<typeof walkOf>[1]): TestState {
	return replayTest(logOf(kit, [passed, ...onWalk(0, ...walkOf(kit, said))]));
}
