import fc from 'fast-check';
import { transition } from 'xstate';
import { getAdjacencyMap, getShortestPaths, getSimplePaths } from 'xstate/graph';
import { describe, expect, it, test } from 'vitest';
import { stepsOf, type Kit } from '../../src/lib/kits';
import { startWalk, walkMachine, type WalkSnapshot } from '../../src/lib/procedure';
import { allKits, everyEvent, slowKit, syringeKit } from './house';

/** Two snapshots are the same place in the chart when they stand in the same state at the same step. */
const placeOf = (snapshot: WalkSnapshot) =>
	`${JSON.stringify(snapshot.value)} at ${snapshot.context.stepIndex}`;

const inputFor = (kit: Kit) => ({ kit, steps: stepsOf(kit), startedAt: 0 });

const traversal = (kit: Kit) => ({
	input: inputFor(kit),
	events: everyEvent(stepsOf(kit)),
	serializeState: placeOf,
	// Only events that are taken: the others are tried one by one below.
	filterEvents: (snapshot: WalkSnapshot, event: ReturnType<typeof everyEvent>[number]) =>
		snapshot.status === 'active' && snapshot.can(event)
});

/** Names of all states of the chart that something can stand in: 'titrating.turned'. */
function namesOf(value: WalkSnapshot['value']): string[] {
	if (typeof value === 'string') return [value];
	return Object.entries(value).map(([state, inner]) => `${state}.${String(inner)}`);
}
const everyName = [
	...['choosing', 'rinsing', 'measuring', 'dosing', 'mixing', 'waiting', 'filling'],
	...['titrating.adding', 'titrating.turned', 'titrating.holding'],
	...['reading.unread', 'reading.read', 'valued', 'abandoned']
];
const stateFor: Record<string, string[]> = {
	choose: ['choosing'],
	rinse: ['rinsing'],
	measure: ['measuring'],
	dose: ['dosing'],
	mix: ['mixing'],
	wait: ['waiting'],
	fill: ['filling'],
	titrate: ['titrating.adding', 'titrating.turned', 'titrating.holding'],
	read: ['reading.unread', 'reading.read']
};

describe.each(allKits)('the walk of %s', (_id, kit) => {
	const paths = getShortestPaths(walkMachine, traversal(kit));

	it('reaches every state that its steps ask for, and no other', () => {
		const reached = new Set(paths.flatMap((path) => namesOf(path.state.value)));
		const asked = stepsOf(kit).flatMap((step) => stateFor[step.kind] ?? []);
		expect([...reached].sort()).toEqual([...new Set([...asked, 'valued', 'abandoned'])].sort());
	});

	it('takes every refused event without harm', () => {
		let refusals = 0;
		for (const { state } of paths)
			for (const event of everyEvent(stepsOf(kit))) {
				if (state.status === 'active' && state.can(event)) continue;
				const [after] = transition(walkMachine, state, event);
				expect(after.value).toEqual(state.value);
				expect(after.context).toEqual(state.context);
				expect(after.status).toBe(state.status);
				refusals++;
			}
		// Each place refuses most of what there is.
		expect(refusals).toBeGreaterThan(paths.length * 10);
	});

	it('can come from every place to a value, and be given up at every place', () => {
		const places = getAdjacencyMap(walkMachine, traversal(kit));
		const leadsTo = new Map<string, string[]>(
			Object.entries(places).map(([place, { transitions }]) => [
				place,
				Object.values<{ state: WalkSnapshot }>(transitions).map(({ state }) => placeOf(state))
			])
		);
		const reaches = (end: string) => {
			const good = new Set([...leadsTo.keys()].filter((place) => place.startsWith(end)));
			for (let before = -1; before !== good.size;) {
				before = good.size;
				for (const [place, next] of leadsTo) if (next.some((to) => good.has(to))) good.add(place);
			}
			return good;
		};
		const open = Object.entries(places).filter(([, { state }]) => state.status === 'active');
		const notValued = open.filter(([place]) => !reaches('"valued"').has(place));
		expect(notValued.map(([place]) => place)).toEqual([]);
		for (const [, { state }] of open) {
			const abandoned = { type: 'walk.abandoned', at: 2000, entryId: 'x' } as const;
			expect(transition(walkMachine, state, abandoned)[0].value).toBe('abandoned');
		}
	});

	it('ends valued or abandoned on every path that does not turn back', () => {
		// Middle steps are only done, not skipped, or the paths are counted in ten thousands.
		const simple = getSimplePaths(walkMachine, {
			...traversal(kit),
			events: everyEvent(stepsOf(kit)).filter(
				(event) => event.type !== 'step.skipped' || ['titrate', 'read'].includes(event.stepId)
			)
		});
		const ends = simple.filter(({ state }) => state.status === 'done');
		expect(new Set(ends.map(({ state }) => state.value))).toEqual(new Set(['valued', 'abandoned']));
		expect(ends.length).toBeGreaterThan(20);
		// Whatever is not an end goes on: no state in which a walk gets stuck.
		for (const { state } of simple)
			if (state.status === 'active')
				expect(everyEvent(stepsOf(kit)).some((event) => state.can(event))).toBe(true);
	});
});

test('all states of the chart are reached by some kit', () => {
	const reached = getShortestPaths(walkMachine, traversal(slowKit)).flatMap((path) =>
		namesOf(path.state.value)
	);
	expect([...new Set(reached)].sort()).toEqual([...everyName].sort());
});

test('any events in any order: what is taken is kept in order, the rest is not there', () => {
	const pool = everyEvent(stepsOf(syringeKit));
	fc.assert(
		fc.property(fc.array(fc.nat(pool.length - 1), { maxLength: 120 }), (picks) => {
			let snapshot: WalkSnapshot = startWalk(inputFor(syringeKit));
			const taken: string[] = [];
			for (const [i, pick] of picks.entries()) {
				const event = { ...pool[pick]!, entryId: `e${i}`, at: i };
				if (snapshot.status === 'active' && snapshot.can(event)) taken.push(event.entryId);
				snapshot = transition(walkMachine, snapshot, event)[0];
			}
			expect(snapshot.context.happened.map((event) => event.entryId)).toEqual(taken);
			expect(snapshot.context.stepIndex).toBe(
				snapshot.context.happened.filter(
					({ type }) => type.startsWith('step.') || type === 'value.reported'
				).length
			);
		}),
		{ numRuns: 200 }
	);
});

test('titrant that falls after the colour stayed means: still adding', () => {
	const titrating = getShortestPaths(walkMachine, traversal(syringeKit)).find(
		({ state }) => namesOf(state.value)[0] === 'titrating.holding'
	);
	const [after] = transition(walkMachine, titrating!.state, {
		type: 'titrant.fell',
		at: 2000,
		entryId: 'x'
	});
	expect(namesOf(after.value)).toEqual(['titrating.adding']);
});
