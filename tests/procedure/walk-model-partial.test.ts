import fc from 'fast-check';
import { transition } from 'xstate';
import { getShortestPaths, getSimplePaths } from 'xstate/graph';
import { describe, expect, it, test } from 'vitest';
import { stepsOf, type Kit } from '$lib/kits';
import type { WalkEvent } from '$lib/observation';
import {
	dropCheckOf,
	fromOtherEnd,
	interruptionIn,
	refilledMlIn,
	remarksOn,
	slipsAtTank,
	spokenInstruction,
	startWalk,
	tankInstruction,
	valueOfTitration,
	walkMachine,
	type Remark,
	type TankTitration,
	type TimedWalkEvent,
	type WalkSnapshot
} from '$lib/procedure';
import { everyEvent } from './house';
import { anyPartialEvent, partialEvents } from './partial-events';
import { anyKit, tankKits } from './tank-kits';

const inputFor = (kit: Kit) => ({ kit, steps: stepsOf(kit), startedAt: 0 });
const placeOf = ({ value, context }: WalkSnapshot) =>
	`${JSON.stringify(value)} at ${context.stepIndex}`;

/** A snapshot of the walk as the titration that it is of. */
function titrationOf(kit: Kit, walk: WalkSnapshot): TankTitration {
	return {
		number: 0,
		purpose: 'first',
		by: null,
		kit,
		steps: stepsOf(kit),
		walk,
		events: walk.context.happened.map(({ at, entryId, ...event }) => ({
			id: entryId,
			at,
			event: event as WalkEvent
		})),
		setAsideBecause: null,
		otherReadings: []
	};
}

const circumstances = { light: 'blue', hoursSinceDose: 0.2, takenWhere: 'outlet' } as const;

/** All that is said of a titration, looked at for what must hold of any. */
function heard(titration: TankTitration, at: number, expected: number | null): Remark[] {
	const remarks = remarksOn(titration, { at, expected, circumstances });
	const ids = remarks.map(({ id }) => id);
	expect(new Set(ids).size, `two remarks of one id: ${ids.join(' ')}`).toBe(ids.length);
	for (const { text, costValue, unit, offers } of remarks) {
		expect(text).not.toMatch(/undefined|NaN|null|Infinity|nearly there|almost|close to/);
		expect(text).toMatch(/[.?]$/);
		expect(text.split(/\s+/).length, text).toBeLessThanOrEqual(34);
		expect(costValue === undefined).toBe(unit === undefined);
		if (costValue !== undefined) expect(costValue).toBeGreaterThanOrEqual(0);
		expect(new Set(offers).size).toBe(offers?.length ?? 0);
	}
	const instruction = tankInstruction(titration);
	expect(instruction === null).toBe(titration.walk.status === 'done');
	expect(spokenInstruction(titration) === null).toBe(instruction === null);
	interruptionIn(titration, at);
	slipsAtTank(titration, circumstances);
	return remarks;
}

/** What remarks claim, held against what the value was made of. */
function agreesWithArithmetic(titration: TankTitration, remarks: readonly Remark[]): void {
	const { kit, events, walk } = titration;
	const isRead = walk.matches({ reading: 'read' }) || walk.value === 'valued';
	const valued = valueOfTitration(titration, kit);
	const find = (id: string) => remarks.find((remark) => remark.id === id);
	if (!isRead || !events.some(({ event }) => event.type === 'marks.read')) return;

	const hasRefillRemark = remarks.some(({ id }) => id.startsWith('refill:'));
	const isActive = walk.status === 'active';
	if (isActive) expect(hasRefillRemark).toBe(refilledMlIn(kit, events) === null);
	if (hasRefillRemark) expect(valued.value).toBeNull();
	expect(find('read.mixed') !== undefined).toBe(
		valued.value !== null && valued.from === 'throughTip'
	);
	const beyond = find('read.beyond');
	if (beyond) expect(valued.value === null).toBe(beyond.tone === 'warn');
	const low = find('read.nearly0') ?? find('read.below0');
	if (low && valued.value !== null)
		expect(valued.value < 0 || valued.usedMl <= 3 * kit.delivery.dropMl + 1e-9).toBe(true);

	const check = dropCheckOf(kit, events, valued);
	const drops = find('read.drops');
	expect(drops !== undefined).toBe(check !== null && !check.agrees);
	if (drops && valued.value !== null && drops.offers?.includes('readOtherEnd')) {
		// Taken at its word, the offer must make drops and travel agree.
		const turned = events.map((each) =>
			each.event.type === 'marks.read' && valued.by !== 'drops'
				? {
						...each,
						event: {
							...each.event,
							marks: {
								...each.event.marks,
								[`${valued.by}Ml`]: fromOtherEnd(kit, valued.endMl ?? 0)
							}
						}
					}
				: each
		);
		const again = { ...titration, events: turned };
		const reading = valueOfTitration(again, kit);
		if (reading.value !== null) expect(dropCheckOf(kit, turned, reading)?.agrees).toBe(true);
	}
	const wrongSide = find('read.wrongSide');
	if (wrongSide && valued.value !== null) expect(valued.usedMl).toBeLessThan(0);
}

describe.each(tankKits)('the walk of %s', (_id, kit) => {
	const paths = getShortestPaths(walkMachine, {
		input: inputFor(kit),
		events: everyEvent(stepsOf(kit)),
		serializeState: placeOf,
		filterEvents: (snapshot: WalkSnapshot, event: TimedWalkEvent) =>
			snapshot.status === 'active' && snapshot.can(event)
	});
	const pool = partialEvents(stepsOf(kit));

	it('takes every event with fields left out in every combination, at every place, and loses none', () => {
		let taken = 0;
		for (const { state } of paths) {
			if (state.status !== 'active') continue;
			for (const event of pool) {
				const timed = { ...event, at: 5000, entryId: 'new' } as TimedWalkEvent;
				if (!state.can(timed)) continue;
				const [next] = transition(walkMachine, state, timed);
				expect(next.context.happened).toEqual([...state.context.happened, timed]);
				const titration = titrationOf(kit, next);
				agreesWithArithmetic(titration, heard(titration, 400_000, 7.5));
				taken++;
			}
		}
		expect(taken).toBeGreaterThan(150);
	}, 60_000);
});

test('every path through the steps of any kit ends with a value or is given up', () => {
	fc.assert(
		fc.property(anyKit, (kit) => {
			const steps = stepsOf(kit);
			// Whatever is said within a step leads nowhere else: its ends and the words of the colour do.
			const events = everyEvent(steps).filter(
				(event) =>
					event.type.startsWith('colour.') ||
					event.type === 'marks.read' ||
					event.type === 'walk.abandoned' ||
					event.type === 'titrant.fell' ||
					event.type === 'step.done' ||
					(event.type === 'step.skipped' && ['titrate', 'read'].includes(event.stepId))
			);
			const ended = getSimplePaths(walkMachine, {
				input: inputFor(kit),
				events,
				serializeState: placeOf,
				filterEvents: (snapshot: WalkSnapshot, event: TimedWalkEvent) =>
					snapshot.status === 'active' && snapshot.can(event)
			});
			const ends = ended.filter(({ state }) => state.status === 'done');
			expect(new Set(ends.map(({ state }) => state.value))).toEqual(
				new Set(['valued', 'abandoned'])
			);
			// None stands still: whatever is no end can be gone on from.
			for (const { state } of ended)
				if (state.status === 'active')
					expect(
						events.some((event) => state.can(event)),
						placeOf(state)
					).toBe(true);
			for (const { state } of ends.filter(({ state: { value } }) => value === 'valued'))
				expect(state.context.stepIndex).toBe(steps.length);
		}),
		{ numRuns: 25 }
	);
}, 60_000);

/** What somebody notes who may note anything: an event, how long after the last, or the step's end. */
const pressesFor = (kit: Kit) =>
	fc.array(
		fc.record({
			wait: fc.constantFrom(0, 300, 2000, 30_000, 400_000),
			event: fc.option(anyPartialEvent(stepsOf(kit)), { freq: 2 })
		}),
		{ maxLength: 60, size: 'max' }
	);

test('any kit, any notes with any gaps: nothing throws, nothing is lost, and words agree with sums', () => {
	const reached = { valued: 0, read: 0 };
	fc.assert(
		fc.property(
			fc.oneof(fc.constantFrom(...tankKits.map(([, kit]) => kit)), anyKit).chain((kit) =>
				fc.record({
					kit: fc.constant(kit),
					presses: pressesFor(kit),
					expected: fc.option(fc.double({ min: 0, max: 30, noNaN: true }))
				})
			),
			({ kit, presses, expected }) => {
				const steps = stepsOf(kit);
				let walk: WalkSnapshot = startWalk(inputFor(kit));
				let at = 0;
				const taken: string[] = [];
				for (const [i, { wait, event }] of presses.entries()) {
					at += wait;
					const here = steps[walk.context.stepIndex];
					const said: WalkEvent = event ?? { type: 'step.done', stepId: here?.id ?? '' };
					const timed = { ...said, at, entryId: `e${i}` } as TimedWalkEvent;
					if (walk.status !== 'active' || !walk.can(timed)) continue;
					[walk] = transition(walkMachine, walk, timed);
					taken.push(timed.entryId);
					const titration = titrationOf(kit, walk);
					if (titration.events.at(-1)?.event.type === 'marks.read') reached.read++;
					agreesWithArithmetic(titration, heard(titration, at + wait, expected));
				}
				expect(walk.context.happened.map(({ entryId }) => entryId)).toEqual(taken);
				if (walk.value === 'valued') reached.valued++;
			}
		),
		{ numRuns: 300 }
	);
	// Some get to the end, or the checks of the reading looked at nothing.
	expect(reached.read).toBeGreaterThan(10);
	expect(reached.valued).toBeGreaterThan(5);
}, 120_000);
