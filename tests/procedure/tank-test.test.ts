import { describe, expect, test } from 'vitest';
import { houseDropperKit, houseSyringeKit } from '$lib/kits';
import type { TestEvent } from '$lib/observation';
import { loadTestLog, replayTest, testResult, withAmendment, withUndo } from '$lib/procedure';
import { logOf, onWalk, passed, walkOf } from './tank';

const kit = houseSyringeKit;
const walk = walkOf(kit, {
	filled: [{ type: 'titrant.drawn', sealMl: 1 }],
	read: [{ type: 'marks.read', marks: { sealMl: 0.52 } }]
});
const begun = (titration: number): TestEvent => ({
	in: 'test',
	event: { type: 'titration.begun', titration, purpose: 'repeat', by: 'Ana' }
});
const closed: TestEvent = { in: 'test', event: { type: 'test.closed' } };
const removed: TestEvent = { in: 'test', event: { type: 'test.removed' } };

describe('the phases of a test', () => {
	test('before the number, on the walk, at the result, closed', () => {
		const phases = (events: TestEvent[]) => replayTest(logOf(kit, events)).phase;
		expect(phases([])).toBe('before');
		expect(phases([passed])).toBe('walk');
		expect(phases([passed, ...onWalk(0, ...walk)])).toBe('result');
		expect(phases([passed, ...onWalk(0, ...walk), closed])).toBe('closed');
	});

	test('a repeat is a walk of its own, with whoever does it', () => {
		const state = replayTest(logOf(kit, [passed, ...onWalk(0, ...walk), begun(1)]));
		expect(state.phase).toBe('walk');
		expect(state.titrations[1]).toMatchObject({ number: 1, purpose: 'repeat', by: 'Ana' });
		expect(state.titrations[1]?.walk.context.stepIndex).toBe(0);
		expect(state.titrations[0]?.walk.status).toBe('done');
	});

	test('the clock of the first step starts when the walk does, not when the kit was taken out', () => {
		const log = logOf(kit, [passed]);
		const [titration] = replayTest(log).titrations;
		expect(titration?.walk.context.stepSince).toBe(log.startedAtEpochMs + 1000);
	});
});

describe('what does not belong is refused, and the rest kept aside', () => {
	test.each([
		['a drop before the walk', [...onWalk(0, { type: 'titrant.fell', drops: 1 })]],
		[
			'a word for a titration that is over',
			[passed, ...onWalk(0, ...walk), begun(1), ...onWalk(0, ...walk)]
		],
		['a repeat with a number that is taken', [passed, ...onWalk(0, ...walk), begun(0)]],
		['a repeat in the middle of a walk', [passed, begun(1)]],
		['an end before there is a result', [passed, closed]]
	])('%s', (_name, events) => {
		const state = replayTest(logOf(kit, events));
		expect(state.refused).not.toBeNull();
	});
});

test('a mark corrected later changes the value, and the old one stays in the log', () => {
	const log = logOf(kit, [passed, ...onWalk(0, ...walk), closed]);
	const read = log.entries.find(
		(entry) =>
			'event' in entry && entry.event.in === 'walk' && entry.event.event.type === 'marks.read'
	);
	const amended = withAmendment(log, {
		id: 'later',
		at: log.startedAtEpochMs + 86_400_000,
		amends: read?.id ?? '',
		event: { in: 'walk', titration: 0, event: { type: 'marks.read', marks: { sealMl: 0.25 } } }
	});
	const state = replayTest(amended);
	expect(state.phase).toBe('closed');
	expect(
		state.titrations[0]?.events.find(({ event }) => event.type === 'marks.read')?.event
	).toEqual({ type: 'marks.read', marks: { sealMl: 0.25 } });
	expect(amended.entries).toContain(read);
	expect(
		replayTest(withUndo(amended, { id: 'u', at: 0, undoes: 'later' })).titrations[0]?.events
	).toEqual(replayTest(log).titrations[0]?.events);
});

test('removed, and brought back by taking that back', () => {
	const log = logOf(kit, [passed, ...onWalk(0, ...walk), removed]);
	expect(replayTest(log).isRemoved).toBe(true);
	const entry = log.entries.at(-1);
	expect(replayTest(withUndo(log, { id: 'u', at: 0, undoes: entry?.id ?? '' })).isRemoved).toBe(
		false
	);
});

test('what somebody else read off the same glass stands beside the first and changes no value', () => {
	const events: TestEvent[] = [
		passed,
		...onWalk(0, ...walk),
		{
			in: 'test',
			event: { type: 'marks.readByOther', titration: 0, by: 'Ana', marks: { sealMl: 0.5 } }
		}
	];
	const state = replayTest(logOf(kit, events));
	expect(state.titrations[0]?.otherReadings).toEqual([{ by: 'Ana', marks: { sealMl: 0.5 } }]);
	expect(testResult(state)?.value).toBeCloseTo(7.38, 10);
});

test('a value that cannot be told from nothing is doubtful', () => {
	const at = (sealMl: number) =>
		testResult(
			replayTest(
				logOf(kit, [
					passed,
					...onWalk(
						0,
						...walkOf(kit, {
							filled: [{ type: 'titrant.drawn', sealMl: 1 }],
							read: [{ type: 'marks.read', marks: { sealMl } }]
						})
					)
				])
			)
		);
	// 0.02 mL at 16 dKH each, less 0.30: 0.02 dKH.
	expect(at(0.98)?.isSuspect).toBe(true);
	expect(at(0.52)?.isSuspect).toBe(false);
});

test('given up: the walk ends without a value, and another sample may begin', () => {
	const state = replayTest(
		logOf(houseDropperKit, [passed, ...onWalk(0, { type: 'walk.abandoned' }), begun(1)])
	);
	expect(state.titrations.map(({ walk: each }) => each.value)).toEqual(['abandoned', 'rinsing']);
});

test('a log goes through JSON unchanged; a damaged one is named at its field', () => {
	const log = logOf(kit, [passed, ...onWalk(0, ...walk), closed]);
	expect(loadTestLog(JSON.parse(JSON.stringify(log)))).toEqual(log);
	const damaged = JSON.parse(
		JSON.stringify(log).replace('"kitVersion":0', '"kitVersion":"0"')
	) as unknown;
	expect(() => loadTestLog(damaged)).toThrow('the test is damaged at kitVersion: expected number');
});
