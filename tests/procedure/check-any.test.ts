import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { houseDropperKit } from '$lib/kits';
import type { CheckEvent, Evidence } from '$lib/observation';
import {
	loadCheckLog,
	replayCheck,
	startCheck,
	stepCheck,
	withAmendment,
	withUndo,
	type CheckLog,
	type CheckState
} from '$lib/procedure';

const reading = fc.record({
	id: fc.constantFrom('a', 'b', 'c', 'd'),
	label: fc.constantFrom('one', 'two'),
	value: fc.integer({ min: 20, max: 140 }).map((tenths) => tenths / 10),
	expandedUncertainty: fc.constantFrom(0.3, 0.6),
	unit: fc.constantFrom('dKH' as const, 'meq/L' as const)
});
const evidence: fc.Arbitrary<Evidence> = fc.oneof(
	reading.map((each): Evidence => ({ kind: 'test', reading: each, from: 'first' })),
	reading.map((each): Evidence => ({ kind: 'test', reading: each, from: 'repeatFull' })),
	reading.map((each): Evidence => ({ kind: 'secondMethod', reading: each, instrument: 'other' })),
	reading.map((each): Evidence => ({ kind: 'earlier', reading: each, daysAgo: 4 })),
	fc
		.record({
			cue: fc.constantFrom('light', 'grains'),
			answer: fc.constantFrom('one', 'two', 'unknown')
		})
		.map((answered): Evidence => ({ kind: 'cue', ...answered }))
);
const event: fc.Arbitrary<CheckEvent> = fc.oneof(
	{
		weight: 6,
		arbitrary: evidence.map((each): CheckEvent => ({ type: 'evidence.given', evidence: each }))
	},
	{
		weight: 3,
		arbitrary: fc.constantFrom<CheckEvent>(
			{ type: 'unit.doubted', isDoubted: true },
			{ type: 'checks.leftOut', ids: ['freshLot'] },
			{ type: 'tank.described', tank: { waterL: 200 } },
			{ type: 'livestock.seen', look: 'well' },
			{ type: 'emergency.seen', isSeen: true },
			{ type: 'means.chosen', means: { by: 'limewater' } },
			{ type: 'note.written', text: 'late' },
			{ type: 'note.written', text: '' }
		)
	},
	{
		weight: 1,
		arbitrary: fc.constantFrom<CheckEvent>({ type: 'check.closed' }, { type: 'check.removed' })
	}
);
/** Something new, an earlier entry taken back (undos too), or another thing in its place. */
const act = fc.oneof(
	{ weight: 5, arbitrary: fc.record({ event }) },
	{ weight: 3, arbitrary: fc.record({ undoes: fc.nat() }) },
	{ weight: 1, arbitrary: fc.record({ amends: fc.nat(), by: event }) }
);
const acts = fc.array(act, { minLength: 1, maxLength: 40 });
type Act = { event?: CheckEvent; undoes?: number; amends?: number; by?: CheckEvent };

const empty: CheckLog = {
	format: 1,
	id: 'any',
	startedAtEpochMs: 1000,
	analyte: 'alkalinity',
	kit: houseDropperKit,
	kitVersion: 3,
	entries: []
};

function logOf(all: readonly Act[]): CheckLog {
	return all.reduce((log, { event: said, undoes, amends, by }, i) => {
		const entry = { id: `e${i}`, at: 2000 + i };
		const pick = (n: number) => log.entries[n % log.entries.length]?.id ?? '';
		if (said) return { ...log, entries: [...log.entries, { ...entry, event: said }] };
		if (log.entries.length === 0) return log;
		if (undoes !== undefined) return withUndo(log, { ...entry, undoes: pick(undoes) });
		return by ? withAmendment(log, { ...entry, amends: pick(amends ?? 0), event: by }) : log;
	}, empty);
}
const plain = (state: CheckState): unknown => JSON.parse(JSON.stringify(state));

describe('whatever is said, taken back and amended', () => {
	it('the log alone gives the same check again, also from a file', () => {
		fc.assert(
			fc.property(acts, (all) => {
				const log = logOf(all);
				const loaded = loadCheckLog(JSON.parse(JSON.stringify(log)));
				expect(loaded).toEqual(log);
				expect(plain(replayCheck(loaded))).toEqual(plain(replayCheck(log)));
			}),
			{ numRuns: 200 }
		);
	});

	it('step by step it comes to the same as in one go', () => {
		fc.assert(
			fc.property(fc.array(event, { maxLength: 30 }), (events) => {
				let state = startCheck(empty);
				const taken: CheckLog = { ...empty, entries: [] };
				for (const [i, said] of events.entries()) {
					const entry = { id: `e${i}`, at: 2000 + i, event: said };
					const next = stepCheck(state, entry);
					if (!next) continue;
					taken.entries.push(entry);
					state = next;
				}
				expect(replayCheck(taken)).toEqual(state);
			}),
			{ numRuns: 200 }
		);
	});

	it('every event that holds counts or is kept aside; none is lost and none counts twice', () => {
		fc.assert(
			fc.property(fc.array(event, { maxLength: 30 }), (events) => {
				const log = logOf(events.map((said) => ({ event: said })));
				const state = replayCheck(log);
				const aside = new Set(state.keptAside.map(({ id }) => id));
				const counted = new Set(state.evidence.map(({ entryId }) => entryId));
				for (const entry of log.entries) {
					if (!('event' in entry) || entry.event.type !== 'evidence.given') continue;
					const { evidence: said } = entry.event;
					// An answer that was given again stands in the log alone.
					const isAnsweredAgain = said.kind === 'cue' && !aside.has(entry.id);
					if (!isAnsweredAgain) expect(counted.has(entry.id)).toBe(!aside.has(entry.id));
					expect(counted.has(entry.id) && aside.has(entry.id)).toBe(false);
				}
				const cues = state.evidence.flatMap(({ evidence: each }) =>
					each.kind === 'cue' ? [each.cue] : []
				);
				expect(new Set(cues).size).toBe(cues.length);
				const firsts = state.evidence.filter(
					({ evidence: each }) => each.kind === 'test' && each.from === 'first'
				);
				expect(firsts.map(({ evidence: each }) => each)).toEqual(
					state.inQuestion ? [state.inQuestion] : []
				);
			}),
			{ numRuns: 200 }
		);
	});

	it('all can be taken back, in any order, and given again in any order', () => {
		const some = fc.array(event, { minLength: 1, maxLength: 15 });
		fc.assert(
			fc.property(some, fc.array(fc.nat(), { minLength: 15, maxLength: 15 }), (events, places) => {
				const log = logOf(events.map((said) => ({ event: said })));
				const shuffled = [...log.entries]
					.map((entry, i) => ({ entry, at: places[i] ?? 0 }))
					.sort((a, b) => a.at - b.at)
					.map(({ entry }) => entry);
				let next = log;
				for (const [i, { id }] of shuffled.entries()) {
					next = withUndo(next, { id: `u${i}`, at: 9000, undoes: id });
					expect(replayCheck(next).keptAside.some((each) => each.id === id)).toBe(false);
				}
				expect({ ...replayCheck(next), at: 0 }).toEqual({ ...startCheck(empty), at: 0 });
				for (const i of shuffled.keys())
					next = withUndo(next, { id: `v${i}`, at: 9001, undoes: `u${i}` });
				expect(replayCheck(next)).toEqual(replayCheck(log));
			}),
			{ numRuns: 100 }
		);
	});

	it('the order in which independent evidence came does not matter to what is known', () => {
		const independent = fc.uniqueArray(evidence, {
			maxLength: 6,
			selector: (each) => ('reading' in each ? each.reading.id : each.kind)
		});
		fc.assert(
			fc.property(independent, (all) => {
				const firsts = all.filter((each) => each.kind === 'test' && each.from === 'first');
				fc.pre(firsts.length <= 1);
				const known = (in_: readonly Evidence[]) =>
					new Set(
						replayCheck(
							logOf(in_.map((each) => ({ event: { type: 'evidence.given', evidence: each } })))
						).evidence.map(({ evidence: each }) => JSON.stringify(each))
					);
				expect(known([...all].reverse())).toEqual(known(all));
			}),
			{ numRuns: 100 }
		);
	});
});
