import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stepsOf } from '../../src/lib/kits';
import { liveEntries, type Entry, type WalkEvent } from '../../src/lib/observation';
import {
	loadWalkLog,
	replayWalk,
	withAmendment,
	withEvent,
	withUndo,
	type WalkLog
} from '../../src/lib/procedure';
import { everyEvent, kindsIn, syringeKit } from './house';

const golden = (): unknown =>
	JSON.parse(readFileSync(new URL('golden/walk-log-1.json', import.meta.url), 'utf8'));

const emptyLog: WalkLog = { format: 1, kit: syringeKit, startedAt: 0, entries: [] };

describe('the log of the first released form', () => {
	const log = loadWalkLog(golden());
	const { snapshot, refused, aside } = replayWalk(log);

	it('is replayed whole, to the value', () => {
		expect(refused).toBeNull();
		expect(aside).toEqual([]);
		expect(snapshot.value).toBe('valued');
		expect(snapshot.context.happened.at(-1)).toMatchObject({ type: 'value.reported', value: 7.1 });
	});

	it('leaves out what was taken back and shows what was put right', () => {
		// 51 entries: one undo, the entry it undoes, and one amendment are not events of their own.
		expect(log.entries).toHaveLength(51);
		expect(snapshot.context.happened).toHaveLength(48);
		const happened = snapshot.context.happened;
		expect(happened.filter((event) => event.type === 'colour.stayed')).toHaveLength(1);
		expect(happened.find((event) => event.type === 'marks.read')).toMatchObject({
			marks: { sealMl: 0.54 }
		});
	});

	it('keeps the mark first written as it was', () => {
		const first = log.entries.find(
			(entry) => 'event' in entry && entry.event.type === 'marks.read'
		);
		expect(first).toMatchObject({ event: { marks: { sealMl: 0.45 } } });
	});

	it('shows no slip', () => {
		expect(kindsIn(log.kit, liveEntries(log.entries))).toEqual([]);
	});
});

describe('a log that comes from outside', () => {
	it.each([
		['no log at all', null, /its top/],
		['another form', { ...(golden() as object), format: 99 }, /format/],
		['no kit', { ...(golden() as object), kit: undefined }, /kit/],
		[
			'a time before 1970',
			{ ...(golden() as object), entries: [{ id: 'a', at: -1, event: { type: 'wait.over' } }] },
			/entries\.0/
		],
		[
			'an event that nobody knows',
			{ ...(golden() as object), entries: [{ id: 'a', at: 0, event: { type: 'vial.sung' } }] },
			/entries\.0/
		]
	])('with %s is refused, naming where', (_what, log, where) => {
		expect(() => loadWalkLog(log)).toThrow(RangeError);
		expect(() => loadWalkLog(log)).toThrow(where);
	});

	it('with an event out of place is replayed up to it, the rest kept aside', () => {
		const events: WalkEvent[] = [
			{ type: 'sample.chosen', volumeId: 'normal' },
			{ type: 'colour.stayed' },
			{ type: 'step.done', stepId: 'choose' }
		];
		const log = events.reduce<WalkLog>(
			(each, event, i) => withEvent(each, { id: `e${i}`, at: i, event }),
			emptyLog
		);
		const replayed = replayWalk(log);
		expect(replayed.snapshot.value).toBe('choosing');
		expect(replayed.refused?.id).toBe('e1');
		expect(replayed.aside.map(({ id }) => id)).toEqual(['e1', 'e2']);
	});
});

/** Logs as they come about: of random events, those that the walk took. */
const takenLog = fc.array(fc.nat(1000), { minLength: 1, maxLength: 80 }).map((picks) => {
	const pool = everyEvent(stepsOf(syringeKit)).filter(({ type }) => type !== 'walk.abandoned');
	let log = emptyLog;
	for (const [i, pick] of picks.entries()) {
		const { at: _at, entryId: _id, ...event } = pool[pick % pool.length]!;
		// Step ends are drawn more often than they would be by chance, or few logs get anywhere.
		const open = replayWalk(log).snapshot.context;
		const step = open.steps[open.stepIndex];
		const next: WalkEvent =
			pick % 3 === 0 && step ? { type: 'step.done', stepId: step.id } : (event as WalkEvent);
		const longer = withEvent(log, { id: `e${i}`, at: i * 1000, event: next });
		if (!replayWalk(longer).refused) log = longer;
	}
	return log;
});

const stateOf = (log: WalkLog) => {
	const { snapshot, aside } = replayWalk(log);
	return { value: snapshot.value, context: snapshot.context, aside };
};

describe('taking back and putting right', () => {
	it('undone and done again is as it was, for every entry of any log', () => {
		fc.assert(
			fc.property(takenLog, fc.nat(), (log, pick) => {
				fc.pre(log.entries.length > 0);
				const { id } = log.entries[pick % log.entries.length]!;
				const undone = withUndo(log, { id: 'undo', at: 99_000, undoes: id });
				const redone = withUndo(undone, { id: 'redo', at: 99_001, undoes: 'undo' });
				expect(liveEntries(undone.entries).map((entry) => entry.id)).not.toContain(id);
				expect(stateOf(redone)).toEqual(stateOf(log));
			}),
			{ numRuns: 100 }
		);
	});

	it('the last thing undone leaves the state before it', () => {
		fc.assert(
			fc.property(takenLog, (log) => {
				fc.pre(log.entries.length > 0);
				const { id } = log.entries.at(-1)!;
				const undone = withUndo(log, { id: 'undo', at: 99_000, undoes: id });
				expect(stateOf(undone)).toEqual(stateOf({ ...log, entries: log.entries.slice(0, -1) }));
			}),
			{ numRuns: 100 }
		);
	});

	it('nothing that was written is ever changed', () => {
		const log = loadWalkLog(golden());
		const before = structuredClone(log.entries);
		const changed = withAmendment(withUndo(log, { id: 'u', at: 9e12, undoes: 'g0' }), {
			id: 'm',
			at: 9e12,
			amends: 'g4',
			event: { type: 'vial.rinsed', ware: 'vial', with: 'tap' }
		});
		expect(log.entries).toEqual(before);
		expect(changed.entries.slice(0, before.length)).toEqual(before);
		expect(kindsIn(changed.kit, liveEntries(changed.entries))).toEqual(['wareNotRinsed']);
	});

	it('an amendment that is undone gives the old mark back', () => {
		const log = loadWalkLog(golden());
		const amendment = log.entries.find((entry) => 'amends' in entry);
		const undone = withUndo(log, { id: 'u', at: 9e12, undoes: amendment!.id });
		const read = liveEntries(undone.entries).find(({ event }) => event.type === 'marks.read');
		expect(read?.event).toMatchObject({ marks: { sealMl: 0.45 } });
	});

	it('an entry that is not there cannot be taken back or put right', () => {
		expect(() => withUndo(emptyLog, { id: 'u', at: 0, undoes: 'x' })).toThrow(/entry x/);
		const event: WalkEvent = { type: 'wait.over' };
		expect(() => withAmendment(emptyLog, { id: 'u', at: 0, amends: 'x', event })).toThrow(
			/entry x/
		);
	});
});

it('a log keeps its kit: another table later does not change an old test', () => {
	const log = loadWalkLog(golden());
	expect(log.kit.conversion).toEqual((golden() as WalkLog).kit.conversion);
	const entries: Entry<WalkEvent>[] = log.entries;
	expect(replayWalk({ ...log, entries }).snapshot.context.kit).toBe(log.kit);
});
