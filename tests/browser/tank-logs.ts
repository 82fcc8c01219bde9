import { houseSyringeKit, stepsOf } from '../../src/lib/kits';
import type { Circumstances, TestEvent, WalkEvent } from '../../src/lib/observation';
import type { TestLog } from '../../src/lib/procedure';

/**
 * A whole test beside the tank with the invented syringe kit: filled to 1.00, the seal read at the
 * end, each step said to be done.
 *
 * @param startedAt ms since 1970
 */
export function wholeTest(
	id: string,
	startedAt: number,
	sealMl: number,
	circumstances: Circumstances = { water: 'tank', tester: 'Ada' }
): TestLog {
	const kit = houseSyringeKit;
	const events: TestEvent[] = [
		{ in: 'before', event: { type: 'circumstances.noted', circumstances } },
		{ in: 'before', event: { type: 'circumstances.passed' } }
	];
	const walk = (event: WalkEvent) => events.push({ in: 'walk', titration: 0, event });
	for (const step of stepsOf(kit)) {
		if (step.kind === 'dose') {
			const reagent = kit.reagents.find((each) => each.id === step.reagentId);
			if (!reagent) throw new RangeError(`the kit has no reagent ${step.reagentId}`);
			walk({ type: 'reagent.added', reagentId: reagent.id, amount: reagent.dose.amount });
		}
		if (step.kind === 'fill') walk({ type: 'titrant.drawn', sealMl: 1 });
		if (step.kind === 'titrate') walk({ type: 'colour.stayed', secondsSinceDrop: 30 });
		if (step.kind === 'read') walk({ type: 'marks.read', marks: { sealMl } });
		walk({ type: 'step.done', stepId: step.id });
	}
	events.push({ in: 'test', event: { type: 'test.closed' } });
	return {
		format: 1,
		id,
		startedAtEpochMs: startedAt,
		kit,
		kitVersion: 0,
		entries: events.map((event, i) => ({ id: `e${i}`, at: startedAt + (i + 1) * 20_000, event }))
	};
}

/** The text of a file that holds these tests and nothing else. */
export function fileOf(logs: readonly TestLog[]): string {
	return JSON.stringify({
		halfdrop: 'records',
		format: 1,
		exportedAtEpochMs: 0,
		kits: [],
		tests: logs.map((log) => ({ log })),
		runs: []
	});
}
