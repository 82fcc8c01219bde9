import { describe, expect, it } from 'vitest';
import { houseSyringeKit } from '$lib/kits';
import type { CheckEvent, Evidence } from '$lib/observation';
import {
	checkSummaryOf,
	loadCheckLog,
	replayCheck,
	startCheck,
	stepCheck,
	withAmendment,
	withUndo,
	type CheckLog
} from '$lib/procedure';

const empty: CheckLog = {
	format: 1,
	id: 'a-check',
	startedAtEpochMs: 1000,
	analyte: 'alkalinity',
	kit: houseSyringeKit,
	kitVersion: 0,
	entries: []
};
const test = (id: string, from: 'first' | 'repeatFull' = 'first', value = 7): CheckEvent => ({
	type: 'evidence.given',
	evidence: {
		kind: 'test',
		from,
		reading: { id, label: id, value, expandedUncertainty: 0.5, unit: 'dKH' }
	}
});
const cue = (cue: string, answer: string): CheckEvent => ({
	type: 'evidence.given',
	evidence: { kind: 'cue', cue, answer }
});
const closed: CheckEvent = { type: 'check.closed' };
const note: CheckEvent = { type: 'note.written', text: 'warm' };

/** A log of these events under the ids e0, e1 and so on. */
const logOf = (...events: CheckEvent[]): CheckLog => ({
	...empty,
	entries: events.map((event, i) => ({ id: `e${i}`, at: 2000 + i, event }))
});
const undone = (log: CheckLog, ...ids: string[]): CheckLog =>
	ids.reduce(
		(last, undoes, i) =>
			withUndo(last, { id: `u${last.entries.length}-${i}`, at: 9000 + i, undoes }),
		log
	);
const entriesOf = (log: CheckLog) => replayCheck(log).evidence.map(({ entryId }) => entryId);

describe('a check from outside', () => {
	it('is read as it is, with a kit or without', () => {
		const log = logOf(test('q'), cue('light', 'white'));
		expect(loadCheckLog(structuredClone(log))).toEqual(log);
		const bare = { ...log, kit: null, kitVersion: null };
		expect(loadCheckLog(bare)).toEqual(bare);
	});

	const damaged: [string, (log: CheckLog) => unknown, RegExp][] = [
		['nothing', () => null, /^the check is damaged at its top: expected object; found null/],
		['another form', (log) => ({ ...log, format: 2 }), /at format: expected one of 1; found 2/],
		['no id', (log) => ({ ...log, id: '' }), /at id: expected 1 or more of them; found ""/],
		[
			'an analyte that nobody measures here',
			(log) => ({ ...log, analyte: 'gold' }),
			/at analyte: expected one of alkalinity, calcium, .*; found "gold"/
		],
		[
			'a damaged leaflet',
			(log) => ({ ...log, kit: { ...houseSyringeKit, name: 3 } }),
			/at kit\.name: expected string; found 3/
		],
		[
			'a kit without its version',
			(log) => ({ ...log, kitVersion: null }),
			/at kitVersion: expected a version where there is a kit, and null where there is none; found null/
		],
		[
			'a version without a kit',
			(log) => ({ ...log, kit: null }),
			/at kitVersion: expected a version where there is a kit/
		],
		[
			'a reading that is no number',
			(log) => ({
				...log,
				entries: [{ id: 'e', at: 1, event: { ...test('q'), evidence: { kind: 'test' } } }]
			}),
			/^the check is damaged at entries\.0: /
		],
		[
			'an unknown field',
			(log) => ({ ...log, mood: 'good' }),
			/at its top: expected no field named mood/
		]
	];
	it.each(damaged)('with %s is refused, and told where', (_, damage, words) => {
		const read = () => loadCheckLog(damage(logOf(test('q'))));
		expect(read).toThrow(words);
		expect(read).toThrow(RangeError);
	});
});

describe('a check being played', () => {
	it('begins with nothing known', () => {
		expect(replayCheck(empty)).toEqual(startCheck(empty));
		expect(startCheck(empty)).toMatchObject({
			evidence: [],
			inQuestion: null,
			livestock: null,
			at: 1000
		});
		expect(checkSummaryOf(startCheck(empty), 'leave')).toBeNull();
	});

	it('has one reading in question; another is kept aside until the former is taken back', () => {
		const log = logOf(test('q'), test('other', 'first', 9), cue('light', 'white'));
		expect(replayCheck(log)).toMatchObject({
			inQuestion: { reading: { id: 'q' } },
			refused: { id: 'e1' }
		});
		// What follows counts all the same.
		expect(entriesOf(log)).toEqual(['e0', 'e2']);
		const state = replayCheck(undone(log, 'e0'));
		expect(state.inQuestion?.reading.id).toBe('other');
		expect([state.refused, state.keptAside]).toEqual([null, []]);
		expect(entriesOf(undone(log, 'e0', 'e1'))).toEqual(['e2']);
		expect(replayCheck(undone(log, 'e0', 'e1')).inQuestion).toBeNull();
	});

	it('does not count one reading twice', () => {
		const log = logOf(test('q'), test('r', 'repeatFull'), test('r', 'repeatFull', 8));
		expect(entriesOf(log)).toEqual(['e0', 'e1']);
		expect(entriesOf(undone(log, 'e1'))).toEqual(['e0', 'e2']);
	});

	it('holds the last answer to a question, and the former when that is taken back', () => {
		const log = logOf(cue('light', 'tank'), cue('grains', 'clear'), cue('light', 'white'));
		const answers = (of: CheckLog) =>
			replayCheck(of).evidence.map(({ evidence }) => (evidence as { answer?: string }).answer);
		expect(answers(log)).toEqual(['white', 'clear']);
		expect(answers(undone(log, 'e2'))).toEqual(['tank', 'clear']);
		expect(answers(undone(log, 'e0'))).toEqual(['clear', 'white']);
	});

	it('has no means once they are withdrawn, and the former when that is taken back', () => {
		const limewater = { by: 'limewater' } as const;
		const log = logOf(
			{ type: 'means.chosen', means: limewater },
			{ type: 'means.chosen', means: null }
		);
		expect(loadCheckLog(structuredClone(log))).toEqual(log);
		expect(replayCheck(log)).toMatchObject({ means: null, keptAside: [] });
		expect(replayCheck(undone(log, 'e1')).means).toEqual(limewater);
	});

	it('takes a note and the removal once it is closed, and nothing else until it is open again', () => {
		const others: CheckEvent[] = [
			test('q'),
			cue('light', 'white'),
			{ type: 'checks.leftOut', ids: ['freshLot'] },
			{ type: 'unit.doubted', isDoubted: true },
			{ type: 'tank.described', tank: { waterL: 100 } },
			{ type: 'livestock.seen', look: 'well' },
			{ type: 'emergency.seen', isSeen: true },
			{ type: 'means.chosen', means: { by: 'limewater' } },
			closed
		];
		const log = logOf(closed, ...others, note, { type: 'check.removed' });
		const state = replayCheck(log);
		expect(state.keptAside.map(({ event }) => event)).toEqual(others);
		expect(state).toMatchObject({ note: 'warm', isRemoved: true, closedBy: 'e0', evidence: [] });
		// The closing taken back, all of it counts, up to the closing that came then.
		expect(replayCheck(undone(log, 'e0'))).toMatchObject({
			keptAside: [],
			isClosed: true,
			closedBy: 'e9',
			isUnitDoubted: true,
			tank: { waterL: 100 },
			livestock: 'well',
			isEmergency: true,
			means: { by: 'limewater' }
		});
	});

	it('takes nothing that could not be read again', () => {
		const state = startCheck(empty);
		const nonsense: unknown[] = [
			test('q', 'first', Number.NaN),
			cue('', 'white'),
			cue('x'.repeat(201), 'white'),
			{ type: 'tank.described', tank: { waterL: -1 } },
			{ type: 'nobody.knows' }
		];
		for (const event of nonsense)
			expect(stepCheck(state, { id: 'e', at: 1, event: event as CheckEvent })).toBeNull();
	});

	it('is as of its last entry, whatever the clock did', () => {
		const log = { ...logOf(note, note), startedAtEpochMs: 5000 };
		expect(replayCheck(log).at).toBe(5000);
		expect(replayCheck(logOf(note, note)).at).toBe(2001);
	});

	it('can be amended: the place stays, the old one is still in the log', () => {
		const log = logOf(test('q'), test('r', 'repeatFull'));
		const event = test('q', 'first', 8.8);
		const amended = withAmendment(log, { id: 'a', at: 3000, amends: 'e0', event });
		expect(replayCheck(amended).inQuestion?.reading.value).toBe(8.8);
		expect(entriesOf(amended)).toEqual(['e0', 'e1']);
		expect(amended.entries[0]).toEqual(log.entries[0]);
		expect(replayCheck(undone(amended, 'a'))).toEqual(replayCheck(log));
	});
});

it('a piece of evidence of every kind gets in', () => {
	const reading = { id: 'x', label: 'x', value: 8, expandedUncertainty: 0.4, unit: 'dKH' as const };
	const of = (id: string) => ({ ...reading, id });
	const all: Evidence[] = [
		{ kind: 'test', reading: of('a'), from: 'first' },
		{
			kind: 'reference',
			reading: of('b'),
			nominal: 8,
			nominalExpandedUncertainty: 0.1,
			matrix: 'purified'
		},
		{ kind: 'addition', reading: of('c'), added: 1, addedExpandedUncertainty: 0.1 },
		{ kind: 'blank', reading: of('d'), matrix: 'seawater' },
		{ kind: 'secondMethod', reading: of('e') },
		{ kind: 'earlier', reading: of('f'), daysAgo: 3 },
		{ kind: 'weighing', ware: 'titrant', foundOverNominal: 1.02, expandedUncertainty: 0.01 },
		{ kind: 'cue', cue: 'light', answer: 'white' }
	];
	const log = logOf(...all.map((evidence): CheckEvent => ({ type: 'evidence.given', evidence })));
	expect(replayCheck(log).evidence.map(({ evidence }) => evidence)).toEqual(all);
});
