import { getShortestPaths } from 'xstate/graph';
import { describe, expect, it } from 'vitest';
import { houseSyringeKit, stepsOf, type Kit } from '$lib/kits';
import type { Marks, WalkEvent } from '$lib/observation';
import {
	loadTestLog,
	replayTest,
	startTest,
	stepTest,
	testResult,
	valueOfTitration,
	walkMachine,
	type TestLog,
	type TimedWalkEvent,
	type WalkSnapshot
} from '$lib/procedure';
import { onWalk, passed, TEN_PAST_SIX } from './tank';
import { tankKits } from './tank-kits';

/** A table that counts what is left in the syringe: 0.52 mL left are 0.48 used. Made up. */
const leftKit: Kit = {
	...houseSyringeKit,
	id: 'made-up-left',
	delivery: { ...houseSyringeKit.delivery, counts: 'left' } as Kit['delivery'],
	conversion: {
		kind: 'rows',
		column: 'leftMl',
		rows: [
			{ at: 1, value: -0.3 },
			{ at: 0, value: 15.7 }
		]
	}
};
const kits: [string, Kit][] = [...tankKits, [leftKit.id, leftKit]];

/** Value by hand: what 1 mL (or a drop) is worth in each leaflet, less what it takes off. */
const bySyringe = (usedMl: number) => 16 * usedMl - 0.3;
const byDrops = (usedMl: number) => (usedMl / 0.043) * 0.6 - 0.45;
const byHand: Record<string, (usedMl: number) => number> = {
	'house-syringe': bySyringe,
	'made-up-base': bySyringe,
	'made-up-up': bySyringe,
	'made-up-left': bySyringe,
	'house-dropper': byDrops,
	'made-up-bare': byDrops,
	'house-burette': (usedMl) => 2.3 * usedMl - 0.19,
	'made-up-calcium': (usedMl) => 200 * usedMl,
	'made-up-hardness': (usedMl) => 40 * usedMl
};

/**
 * One test whose truth is known, of which hands note as much or as little as they like: full at the
 * start, perhaps refilled once, read at the end. Seal and line stand 0.17 mL apart, as the tips of
 * these kits have it.
 */
type Glass = { start: Marks; emptied: Marks; end: Marks; usedMl: number; usedTwiceMl: number };

function glassOf({ delivery }: Kit): Glass {
	if (delivery.by === 'dropper') {
		const usedMl = 14 * delivery.dropMl;
		return { start: {}, emptied: {}, end: { drops: 14 }, usedMl, usedTwiceMl: usedMl };
	}
	if (delivery.by === 'burette')
		return {
			start: { levelMl: 0 },
			emptied: { levelMl: 2 },
			end: { levelMl: 3.5 },
			usedMl: 3.5,
			usedTwiceMl: 5.5
		};
	const isDown = delivery.scale === 'down';
	return {
		start: isDown ? { sealMl: 1, lineMl: 0.83 } : { sealMl: 0, lineMl: 0.17 },
		emptied: isDown ? { sealMl: 0.4, lineMl: 0.23 } : { sealMl: 0.6, lineMl: 0.77 },
		end: isDown ? { sealMl: 0.52, lineMl: 0.35 } : { sealMl: 0.48, lineMl: 0.65 },
		usedMl: 0.48,
		usedTwiceMl: 1.08
	};
}

/** Each mark alone, and all together. */
function parts(marks: Marks): Marks[] {
	const all = Object.entries(marks);
	return [
		...all.map((one): Marks => Object.fromEntries([one])),
		...(all.length > 1 ? [marks] : [])
	];
}

/** Whatever hands may note of that test, whole or in part; ends of every step. */
function everyNote(kit: Kit): WalkEvent[] {
	const { start, emptied, end } = glassOf(kit);
	const drawn = (marks: object): WalkEvent => ({ type: 'titrant.drawn', ...marks });
	return [
		drawn({}),
		...parts(start).map(drawn),
		...parts(start).map((marks) => drawn({ ...marks, before: emptied })),
		drawn({ before: {} }),
		{ type: 'titrant.fell' },
		{ type: 'colour.turned' },
		{ type: 'colour.faded' },
		{ type: 'colour.stayed' },
		...parts(end).map((marks): WalkEvent => ({ type: 'marks.read', marks })),
		{ type: 'walk.abandoned' },
		...stepsOf(kit).flatMap(({ id }): WalkEvent[] => [
			{ type: 'step.done', stepId: id },
			{ type: 'step.skipped', stepId: id }
		])
	];
}

const noted = (marks: object) =>
	['sealMl', 'lineMl', 'levelMl'].filter((key) => key in marks).join('+') || 'nothing';

/** What the notes let anybody know: how the start was seen, whether a refill can be counted, the end. */
function known(happened: readonly WalkEvent[]) {
	let [start, end] = ['nothing', 'nothing'];
	let refill: 'none' | 'known' | 'unknown' = 'none';
	let isUsed = false;
	for (const event of happened) {
		if (event.type === 'titrant.fell' || event.type.startsWith('colour.')) isUsed = true;
		if (event.type === 'marks.read') end = noted(event.marks);
		if (event.type !== 'titrant.drawn') continue;
		const { before, ...marks } = event;
		const isBoth =
			before !== undefined && noted(before) !== 'nothing' && noted(marks) !== 'nothing';
		if (before === undefined && !isUsed) start = noted(marks);
		else if (!isBoth) refill = 'unknown';
		else if (refill === 'none') refill = 'known';
	}
	return { start, refill, isUsed, end };
}

/** A place in the chart, and what is known there: two that differ in either are two. */
const placeOf = ({ value, context }: WalkSnapshot) =>
	JSON.stringify([value, context.stepIndex, known(context.happened)]);

const isRefill = (event: WalkEvent) => event.type === 'titrant.drawn' && !!event.before;

/** Shortest way to every place, with everything that may be known at it. */
function pathsOf(kit: Kit) {
	return getShortestPaths(walkMachine, {
		input: { kit, steps: stepsOf(kit), startedAt: 0 },
		events: everyNote(kit).map((event, i): TimedWalkEvent => ({
			...event,
			at: 1000,
			entryId: `e${i}`
		})),
		serializeState: placeOf,
		filterEvents: (snapshot: WalkSnapshot, event: TimedWalkEvent) => {
			if (snapshot.status !== 'active' || !snapshot.can(event)) return false;
			const { happened } = snapshot.context;
			// One refill is enough to see that it is counted; more would go on for ever.
			const isRefilled = happened.some(isRefill) || known(happened).refill !== 'none';
			return event.type !== 'titrant.drawn' || !isRefilled;
		}
	});
}

/** The test whose walk went that way. */
function logFor(kit: Kit, happened: readonly TimedWalkEvent[]): TestLog {
	const said = happened.map(({ at: _at, entryId: _entryId, ...event }) => event as WalkEvent);
	return {
		format: 1,
		id: 'known',
		startedAtEpochMs: TEN_PAST_SIX,
		kit,
		kitVersion: 0,
		entries: [passed, ...onWalk(0, ...said)].map((event, i) => ({
			id: `e${i}`,
			at: TEN_PAST_SIX + (i + 1) * 30_000,
			event
		}))
	};
}

describe.each(kits)('one test with %s, of which more or less was noted', (id, kit) => {
	const glass = glassOf(kit);
	const isDropper = kit.delivery.by === 'dropper';
	const played = pathsOf(kit).map(({ state }) => {
		const log = logFor(kit, state.context.happened);
		return { state, log, test: replayTest(log), facts: known(state.context.happened) };
	});

	it('is the same test at every place, from its file and entry by entry', () => {
		for (const { state, log, test } of played) {
			expect(test.refused).toBeNull();
			expect(test.titrations[0]?.walk.value).toEqual(state.value);
			const loaded = loadTestLog(JSON.parse(JSON.stringify(log)));
			const stepped = loaded.entries.reduce(
				(before, entry) => ('event' in entry && stepTest(before, entry)) || before,
				startTest(loaded)
			);
			// As text, which is quicker by far, and what a store would keep.
			expect(JSON.stringify(stepped)).toBe(JSON.stringify(test));
		}
		// Filled by seal, line, both or nobody knows, refilled and not: more places than steps.
		expect(played.length).toBeGreaterThan(2 * stepsOf(kit).length);
	});

	it('has the same value whatever was noted of it, or none for a reason that holds', () => {
		const counts = { valued: 0, throughTip: 0, unread: 0, refillUnknown: 0 };
		for (const { state, test, facts } of played) {
			const [titration] = test.titrations;
			const valued = titration && valueOfTitration(titration, kit);
			const isRead =
				state.value !== 'abandoned' &&
				state.context.happened.some(({ type }) => type === 'marks.read');
			// Whatever was drawn, of a bottle nothing but the number of drops counts.
			const isUnknown = !isDropper && facts.refill === 'unknown';
			expect(testResult(test) === null, placeOf(state)).toBe(!isRead || isUnknown);
			if (!isRead || isUnknown) {
				expect(valued?.value, placeOf(state)).toBeNull();
				counts[isRead ? 'refillUnknown' : 'unread']++;
				continue;
			}
			const usedMl = facts.refill === 'known' ? glass.usedTwiceMl : glass.usedMl;
			// The burette's table is printed to 0.01.
			expect(valued?.value, placeOf(state)).toBeCloseTo(byHand[id]?.(usedMl) ?? Number.NaN, 2);
			if (valued?.value !== null && valued?.from === 'throughTip') counts.throughTip++;
			counts.valued++;
		}
		expect(counts.valued).toBeGreaterThan(0);
		expect(counts.unread).toBeGreaterThan(0);
		if (!isDropper) expect(counts.refillUnknown).toBeGreaterThan(0);
		if (kit.delivery.by === 'syringe') expect(counts.throughTip).toBeGreaterThan(0);
	});
});
