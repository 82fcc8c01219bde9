import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepsOf, type Kit } from '$lib/kits';
import type { Circumstances, TestEvent, WalkEvent } from '$lib/observation';
import {
	dropCheckOf,
	dropsCountedIn,
	interruptionIn,
	loadTestLog,
	presentTitration,
	remarksOn,
	replayTest,
	slipsAtTank,
	startTest,
	stepTest,
	tankInstruction,
	testResult,
	valueOfTitration,
	withAmendment,
	withUndo,
	type TestLog,
	type TestState
} from '$lib/procedure';
import { anyPartialEvent } from './partial-events';
import { TEN_PAST_SIX } from './tank';
import { anyKit, tankKits } from './tank-kits';

const hours = fc.integer({ min: 0, max: 300 }).map((tenths) => tenths / 10);
/** Circumstances, any of them left out. */
const anyCircumstances: fc.Arbitrary<Circumstances> = fc.record(
	{
		water: fc.constantFrom('tank' as const, 'topOff' as const, 'newMix' as const),
		light: fc.constantFrom('white' as const, 'blue' as const, 'dim' as const),
		hoursSinceDose: hours,
		takenWhere: fc.constantFrom('at the outlet', 'in the middle', ''),
		temperatureC: fc.constantFrom(5, 25, 40)
	},
	{ requiredKeys: [] }
);

type Tapped = {
	waitMs: number;
	what: { event?: WalkEvent; on?: boolean; test?: TestEvent };
};

/** What somebody taps who taps anything; what leads on comes often enough to get to a result. */
const tapped = (kit: Kit): fc.Arbitrary<Tapped> =>
	fc.record({
		waitMs: fc.oneof(fc.nat(5000), fc.nat(900_000)),
		what: fc.oneof(
			{ weight: 4, arbitrary: fc.record({ event: anyPartialEvent(stepsOf(kit)) }) },
			{ weight: 5, arbitrary: fc.record({ on: fc.boolean() }) },
			{
				weight: 1,
				arbitrary: fc.record({
					test: fc.oneof(
						anyCircumstances.map((circumstances): TestEvent => ({
							in: 'before',
							event: { type: 'circumstances.noted', circumstances }
						})),
						fc.constantFrom<TestEvent>(
							{ in: 'test', event: { type: 'titration.begun', titration: 1, purpose: 'repeat' } },
							{ in: 'test', event: { type: 'titration.begun', titration: 2, purpose: 'repeat' } },
							{
								in: 'test',
								event: { type: 'titration.setAside', titration: 0, because: 'bubble' }
							},
							{
								in: 'test',
								event: {
									type: 'marks.readByOther',
									titration: 0,
									by: 'Ana',
									marks: { sealMl: 0.5 }
								}
							},
							{ in: 'test', event: { type: 'note.written', text: 'warm' } },
							{ in: 'walk', titration: 0, event: { type: 'walk.abandoned' } }
						)
					)
				})
			}
		)
	});
/** A mark that this kit is read by, so that a walk can come to its end. */
const readFor: Record<Kit['delivery']['by'], WalkEvent> = {
	syringe: { type: 'marks.read', marks: { sealMl: 0.5 } },
	dropper: { type: 'marks.read', marks: { drops: 14 } },
	burette: { type: 'marks.read', marks: { levelMl: 3 } }
};

function eventFor(state: TestState, { event, test }: Tapped['what']): TestEvent {
	const titration = presentTitration(state);
	if (test) return test;
	if (event) return { in: 'walk', titration: titration.number, event };
	// On: whatever brings this phase or step to its end.
	if (state.phase === 'before') return { in: 'before', event: { type: 'circumstances.passed' } };
	const { walk, kit } = titration;
	const step = titration.steps[walk.context.stepIndex];
	const said: WalkEvent =
		step?.kind === 'titrate' && !walk.matches({ titrating: 'holding' })
			? { type: 'colour.stayed' }
			: step?.kind === 'read' && !walk.matches({ reading: 'read' })
				? readFor[kit.delivery.by]
				: { type: 'step.done', stepId: step?.id ?? '' };
	return { in: 'walk', titration: titration.number, event: said };
}

/** A log of what was taken, and the state that its entries led to one by one. */
function played(kit: Kit, taps: readonly Tapped[]): { log: TestLog; states: TestState[] } {
	const log: TestLog = {
		format: 1,
		id: 'any',
		startedAtEpochMs: TEN_PAST_SIX,
		kit,
		kitVersion: 0,
		entries: []
	};
	const states = [startTest(log)];
	for (const [i, { waitMs, what }] of taps.entries()) {
		const state = states.at(-1) ?? startTest(log);
		const entry = { id: `e${i}`, at: state.at + waitMs, event: eventFor(state, what) };
		const next = stepTest(state, entry);
		if (!next) continue;
		log.entries.push(entry);
		states.push(next);
	}
	return { log, states };
}

const textOf = (state: TestState) => JSON.stringify(state);
const plain = (state: TestState): unknown => JSON.parse(textOf(state));

/** All that is said of a state; fails where it contradicts itself. Says whether there was a value. */
function saidOf(state: TestState, expected: number | null): boolean {
	const { kit, circumstances } = state;
	for (const titration of state.titrations) {
		const valued = valueOfTitration(titration, kit);
		const options = { at: state.at + 1000, expected, circumstances };
		const remarks = remarksOn(titration, options);
		for (const { text, costValue, unit } of remarks) {
			expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
			expect(costValue === undefined || (Number.isFinite(costValue) && costValue >= 0)).toBe(true);
			expect(unit === undefined || unit === kit.unit).toBe(true);
		}
		expect(new Set(remarks.map(({ id }) => id)).size).toBe(remarks.length);
		expect(remarksOn(titration, options)).toEqual(remarks);
		// Remarks that rest on a value, and only those, need one.
		const byValue = remarks.filter(({ id }) => needsValue.includes(id));
		if (valued.value === null) expect(byValue).toEqual([]);
		const check = dropCheckOf(kit, titration.events, valued);
		if (check && valued.value !== null) {
			const drops = dropsCountedIn(titration.events) ?? Number.NaN;
			expect(check.travelMl).toBe(valued.usedMl);
			expect(check.dropsMl).toBeCloseTo(drops * kit.delivery.dropMl, 12);
			expect(check.agrees).toBe(check.causes.length === 0);
		}
		const isSaid = remarks.some(({ id }) => id === 'read.drops');
		const isOver = titration.walk.value === 'abandoned';
		expect(isSaid).toBe(!isOver && check !== null && !check.agrees);
		expect(tankInstruction(titration) === null).toBe(titration.walk.status !== 'active');
		for (const { entryId } of slipsAtTank(titration, circumstances))
			expect(titration.events.map(({ id }) => id)).toContain(entryId);
		const pause = interruptionIn(titration, options.at);
		expect(pause === null || pause.minutes >= 5).toBe(true);
	}
	const result = testResult(state);
	const values = state.titrations.filter(
		(each) => each.setAsideBecause === null && valueOfTitration(each, kit).value !== null
	);
	expect(result?.counted.length ?? 0).toBe(values.length);
	if (!result) return false;
	expect(Number.isFinite(result.value)).toBe(true);
	expect(result.expandedUncertainty).toBeGreaterThan(0);
	return true;
}
const needsValue = [
	'read.drops',
	'read.mixed',
	'read.nearly0',
	'read.below0',
	'read.otherEnd',
	'read.otherSample',
	'read.otherUnit'
];

describe.each(tankKits)('whatever anybody notes of a test with %s', (_id, kit) => {
	const taps = fc.array(tapped(kit), { minLength: 10, maxLength: 60, size: 'max' });

	it('nothing throws or contradicts itself, and the log alone gives the same test again', () => {
		let results = 0;
		fc.assert(
			fc.property(taps, fc.option(fc.integer({ min: 0, max: 20 })), (all, expected) => {
				const { log, states } = played(kit, all);
				for (const state of states) if (saidOf(state, expected)) results++;
				const last = states.at(-1) ?? startTest(log);
				const loaded = loadTestLog(JSON.parse(JSON.stringify(log)));
				expect(loaded).toEqual(log);
				// Validated, the fields of an entry may come in another order.
				expect(plain(replayTest(loaded))).toEqual(plain(last));
				expect(textOf(replayTest(log))).toBe(textOf(last));
			}),
			{ numRuns: 40 }
		);
		// Some get as far as a result, or half of this tries nothing.
		expect(results).toBeGreaterThan(0);
	}, 60_000);
});

/** Entries under another name, for comparing states that differ in nothing else. */
const renamed = (state: TestState, from: string, to: string) =>
	textOf(state).replaceAll(`"${from}"`, `"${to}"`);

describe('of any test', () => {
	const anyTest = anyKit.chain((kit) =>
		fc.record({
			kit: fc.constant(kit),
			taps: fc.array(tapped(kit), { minLength: 5, maxLength: 50, size: 'max' })
		})
	);

	it('any kit at all, typed in by anybody, is spoken of without a throw', () => {
		fc.assert(
			fc.property(
				anyTest,
				fc.option(fc.integer({ min: 0, max: 20 })),
				({ kit, taps }, expected) => {
					const { states } = played(kit, taps);
					for (const state of states) saidOf(state, expected);
				}
			),
			{ numRuns: 60 }
		);
	}, 60_000);

	it('each entry, taken back and given once more, leads to the same state', () => {
		let entries = 0;
		fc.assert(
			fc.property(anyTest, ({ kit, taps }) => {
				const { log, states } = played(kit, taps);
				for (const [i, entry] of log.entries.entries()) {
					if (!('event' in entry)) throw new Error('only events were played');
					const upTo = { ...log, entries: log.entries.slice(0, i + 1) };
					const undone = withUndo(upTo, { id: 'undo', at: entry.at, undoes: entry.id });
					const before = states[i];
					const after = states[i + 1];
					if (!before || !after) throw new Error('a state for each entry');
					expect(textOf(replayTest(undone))).toBe(textOf(before));
					const again = { ...undone, entries: [...undone.entries, { ...entry, id: 'again' }] };
					expect(renamed(replayTest(again), 'again', entry.id)).toBe(textOf(after));
					entries++;
				}
			}),
			{ numRuns: 30 }
		);
		expect(entries).toBeGreaterThan(100);
	}, 60_000);

	it('any entry taken back or amended, and that taken back, leaves the test as it was', () => {
		fc.assert(
			fc.property(anyTest, fc.nat(), ({ kit, taps }, pick) => {
				const { log, states } = played(kit, taps);
				fc.pre(log.entries.length > 0);
				const entry = log.entries[pick % log.entries.length];
				const last = states.at(-1);
				if (!entry || !last || !('event' in entry)) throw new Error('an entry, and a state');
				const { at, id } = entry;
				const undone = withUndo(log, { id: 'undo', at, undoes: id });
				const amended = withAmendment(log, {
					id: 'amend',
					at,
					amends: id,
					event: { in: 'walk', titration: 0, event: readFor[kit.delivery.by] }
				});
				// In between, a later entry may not belong any more: it is kept aside, and nothing throws.
				for (const changed of [undone, amended]) {
					saidOf(replayTest(changed), 8);
					expect(changed.entries).toHaveLength(log.entries.length + 1);
				}
				for (const [changed, undoes] of [
					[undone, 'undo'],
					[amended, 'amend']
				] as const) {
					const back = withUndo(changed, { id: 'back', at, undoes });
					expect(textOf(replayTest(back))).toBe(textOf(last));
				}
			}),
			{ numRuns: 80 }
		);
	}, 60_000);
});

it('the kits of these tests are of every sort there is', () => {
	const all = tankKits.map(([, kit]) => kit);
	expect(new Set(all.map(({ delivery }) => delivery.by)).size).toBe(3);
	expect(new Set(all.flatMap((kit) => stepsOf(kit).map(({ kind }) => kind)))).toEqual(
		new Set(['choose', 'rinse', 'measure', 'dose', 'mix', 'wait', 'fill', 'titrate', 'read'])
	);
});
