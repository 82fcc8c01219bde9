import { stepsOf, unitsOf, type Kit, type Step } from '../kits';
import {
	liveEntries,
	type Circumstances,
	type Marks,
	type TakenOff,
	type TestEvent,
	type ThingInCommon,
	type TitrationPurpose
} from '../observation';
import type { TestEntry, TestLog } from './test-log';
import type { WalkSnapshot } from './walk';
import { startWalk, stepWalk, type TimedEvent } from './walk-log';

/** One titration beside the tank: its walk and what was said to have happened on it. */
export type TankTitration = {
	number: number;
	purpose: TitrationPurpose;
	/** Who did it, where that was said for this one. */
	by: string | null;
	kit: Kit;
	steps: readonly Step[];
	walk: WalkSnapshot;
	events: readonly TimedEvent[];
	/** Why it shall not count; null when it does. */
	setAsideBecause: string | null;
	/** What others read off the same glass, blind. They are compared and never averaged in. */
	otherReadings: readonly { by: string; marks: Marks }[];
};

/** A test beside the tank as its log makes it. Plain data, replaced whole at each step. */
export type TestState = {
	kit: Kit;
	circumstances: Circumstances;
	/** 'before' the first number, on the 'walk', at the 'result', or 'closed'. */
	phase: 'before' | 'walk' | 'result' | 'closed';
	titrations: readonly TankTitration[];
	/** What was taken off the value last, and what both tests have in common. */
	difference: { less: TakenOff; inCommon: readonly ThingInCommon[] } | null;
	note: string | null;
	isRemoved: boolean;
	/** Time of the last entry, ms since 1970. */
	at: number;
	/** The first entry that did not belong; it and what follows are kept aside. */
	refused: TestEntry | null;
};

type Timed = { id: string; at: number };

function beginTitration(
	kit: Kit,
	begun: { number: number; purpose: TitrationPurpose; by: string | null },
	startedAt: number
): TankTitration {
	const steps = stepsOf(kit);
	return {
		...begun,
		kit,
		steps,
		walk: startWalk({ kit, steps, startedAt }),
		events: [],
		setAsideBecause: null,
		otherReadings: []
	};
}

/** A test of which nothing has been said yet. */
export function startTest(log: Pick<TestLog, 'kit' | 'startedAtEpochMs'>): TestState {
	const { kit, startedAtEpochMs } = log;
	return {
		kit,
		circumstances: {},
		phase: 'before',
		titrations: [beginTitration(kit, { number: 0, purpose: 'first', by: null }, startedAtEpochMs)],
		difference: null,
		note: null,
		isRemoved: false,
		at: startedAtEpochMs,
		refused: null
	};
}

/** The titration that is going on, or went on last. */
export function presentTitration({ titrations }: TestState): TankTitration {
	const last = titrations.at(-1);
	if (!last) throw new RangeError('a test begins with one titration; found none');
	return last;
}

function walked(
	state: TestState,
	said: Extract<TestEvent, { in: 'walk' }>,
	timed: Timed
): TestState | null {
	const titration = presentTitration(state);
	if (state.phase !== 'walk' || said.titration !== titration.number) return null;
	const event: TimedEvent = { ...timed, event: said.event };
	const walk = stepWalk(titration.walk, event);
	if (!walk) return null;
	const next = { ...titration, walk, events: [...titration.events, event] };
	return {
		...state,
		titrations: [...state.titrations.slice(0, -1), next],
		phase: walk.status === 'done' ? 'result' : 'walk'
	};
}

function before(
	state: TestState,
	{ event }: Extract<TestEvent, { in: 'before' }>,
	timed: Timed
): TestState | null {
	// What was forgotten may be noted at any time; it changes no walk.
	if (event.type === 'circumstances.noted') return { ...state, circumstances: event.circumstances };
	if (state.phase !== 'before') return null;
	const { number, purpose, by } = presentTitration(state);
	return {
		...state,
		phase: 'walk',
		titrations: [beginTitration(state.kit, { number, purpose, by }, timed.at)]
	};
}

/** The test with one of its titrations changed; null when there is no such titration. */
function changed(
	state: TestState,
	number: number,
	change: (titration: TankTitration) => Partial<TankTitration>
): TestState | null {
	if (!state.titrations.some((each) => each.number === number)) return null;
	return {
		...state,
		titrations: state.titrations.map((each) =>
			each.number === number ? { ...each, ...change(each) } : each
		)
	};
}

function about(
	state: TestState,
	{ event }: Extract<TestEvent, { in: 'test' }>,
	timed: Timed
): TestState | null {
	switch (event.type) {
		case 'titration.begun': {
			if (state.phase !== 'result' || event.titration !== state.titrations.length) return null;
			const begun = { number: event.titration, purpose: event.purpose, by: event.by ?? null };
			return {
				...state,
				phase: 'walk',
				titrations: [...state.titrations, beginTitration(state.kit, begun, timed.at)]
			};
		}
		case 'titration.setAside':
			return changed(state, event.titration, () => ({ setAsideBecause: event.because }));
		case 'marks.readByOther':
			return changed(state, event.titration, ({ otherReadings }) => ({
				otherReadings: [...otherReadings, { by: event.by, marks: event.marks }]
			}));
		case 'difference.taken': {
			// Without a walk that is over there is nothing to take it off, nor without such a kit.
			const { analyte, unit } = event.less;
			if (state.phase === 'before' || state.kit.byDifference?.less !== analyte) return null;
			if (!unitsOf(analyte).includes(unit)) return null;
			return { ...state, difference: { less: event.less, inCommon: event.inCommon } };
		}
		case 'note.written':
			return { ...state, note: event.text === '' ? null : event.text };
		case 'test.closed':
			return state.phase === 'result' ? { ...state, phase: 'closed' } : null;
		case 'test.removed':
			return { ...state, isRemoved: true };
	}
}

/** The test after one entry of its log; null when the entry does not belong there and changes nothing. */
export function stepTest(state: TestState, entry: Timed & { event: TestEvent }): TestState | null {
	const { event, ...timed } = entry;
	const next =
		event.in === 'walk'
			? walked(state, event, timed)
			: event.in === 'before'
				? before(state, event, timed)
				: about(state, event, timed);
	return next && { ...next, at: Math.max(state.at, timed.at) };
}

/** Plays a test through; from the first entry that did not belong on, the rest is kept aside. */
export function replayTest(log: TestLog): TestState {
	let state = startTest(log);
	for (const entry of liveEntries(log.entries)) {
		const next = stepTest(state, entry);
		if (!next) return { ...state, refused: entry };
		state = next;
	}
	return state;
}
