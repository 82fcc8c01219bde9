import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import 'fake-indexeddb/auto';
import { houseSyringeKit, type Kit, type KitVersion } from '../../src/lib/kits';
import { replayTest } from '../../src/lib/procedure';
import { openRecords, type Records } from '../../src/lib/records';
import { resummariseTests } from '../../src/routes/resummarise';
import { freshTest, kitsToTest, lastReading, storedTest } from '../../src/routes/test/open-test';
import type { TankRun } from '../../src/routes/test/tank-run.svelte';
import { walkOf } from '../procedure/tank';

const kit: Kit = {
	...houseSyringeKit,
	id: 'own',
	name: 'My kit',
	conversion: { kind: 'perMl', valuePerMl: 16, offset: -0.3 }
};
const version = (number: number, kind: KitVersion['kind'], of: Kit): KitVersion => ({
	format: 1,
	kitId: of.id,
	version: number,
	savedAtEpochMs: 1000 + number,
	kind,
	kit: of
});

let names = 0;
const opened = () => openRecords(`tank-${names++}`);
let time = Date.UTC(2026, 2, 14, 18);
const clock = () => (time += 1000);
/** The end of the turn in which something was said. */
const nextTurn = () => Promise.resolve();

async function begin(records: Records): Promise<TankRun> {
	return freshTest(records, { kit, version: 0, isOwn: true }, clock);
}
/** Says what a whole walk says, a turn for each event. */
async function walkThrough(run: TankRun, sealMl: number): Promise<void> {
	for (const event of walkOf(kit, {
		filled: [{ type: 'titrant.drawn', sealMl: 1 }],
		read: [{ type: 'marks.read', marks: { sealMl } }]
	})) {
		expect(run.say(event)).toBe(true);
		await nextTurn();
	}
}
async function wholeTest(records: Records, sealMl: number): Promise<TankRun> {
	const run = await begin(records);
	run.passCircumstances();
	await nextTurn();
	await walkThrough(run, sealMl);
	await run.kept.settled();
	return run;
}
async function reopened(records: Records, run: TankRun): Promise<TankRun> {
	await run.kept.settled();
	const again = await storedTest(records, run.log.id, clock);
	if (!again) throw new Error('the test is not stored');
	return again;
}
afterEach(() => vi.restoreAllMocks());

test('after every single entry the stored test is the test', async () => {
	const records = await opened();
	const run = await begin(records);
	run.noteCircumstances({ water: 'tank', tester: 'Ada' });
	await nextTurn();
	run.passCircumstances();
	await nextTurn();
	for (const event of walkOf(kit, {
		filled: [{ type: 'titrant.drawn', sealMl: 1 }],
		titrated: [{ type: 'titrant.fell', drops: 1 }],
		read: [{ type: 'marks.read', marks: { sealMl: 0.52 } }]
	})) {
		run.say(event);
		await nextTurn();
		const again = await reopened(records, run);
		expect(again.log).toEqual(run.log);
		expect(again.state).toEqual(run.state);
	}
	// 0.48 mL at 16 dKH, less 0.3.
	expect(run.result?.value).toBeCloseTo(7.38, 10);
});

test('what one tap says is stored whole or not at all', async () => {
	const records = await opened();
	const stored = vi.spyOn(records.tests, 'appendAll');
	const run = await begin(records);
	run.passCircumstances();
	await run.kept.settled();
	run.say({ type: 'sample.chosen', volumeId: 'fine' });
	run.say({ type: 'step.done', stepId: 'choose' });
	await run.kept.settled();
	expect(stored.mock.calls.map(([, first, entries]) => [first, entries.length])).toEqual([
		[0, 1],
		[1, 2]
	]);
	expect((await reopened(records, run)).log).toEqual(run.log);
});

describe('taking back', () => {
	test('what one tap said goes together; the entries stay in the log', async () => {
		const records = await opened();
		const run = await begin(records);
		run.passCircumstances();
		await nextTurn();
		const before = run.state;
		run.say({ type: 'sample.chosen', volumeId: 'fine' });
		run.say({ type: 'step.done', stepId: 'choose' });
		await nextTurn();
		const grown = run.log.entries.length;
		expect(run.titration.walk.context.stepIndex).toBe(1);
		run.undo();
		await nextTurn();
		expect(run.titration).toEqual(before.titrations[0]);
		expect(run.log.entries.length).toBe(grown + 2);
		expect((await reopened(records, run)).state).toEqual(run.state);
	});

	test('down to the sheet before the number, and no further', async () => {
		const run = await begin(await opened());
		run.noteCircumstances({ tester: 'Ada' });
		await nextTurn();
		run.passCircumstances();
		await nextTurn();
		run.undo();
		expect(run.state.phase).toBe('before');
		expect(run.state.circumstances).toEqual({ tester: 'Ada' });
		expect(run.canUndo).toBe(false);
	});
});

test('times never run backwards, whatever the clock of the device does', async () => {
	let now = 5000;
	const run = await freshTest(await opened(), { kit, version: 0, isOwn: true }, () => now);
	for (const each of [5000, 4000, 9000]) {
		now = each;
		run.writeNote(`at ${each}`);
		await nextTurn();
	}
	const at = run.log.entries.map((entry) => entry.at);
	expect(at).toEqual([5001, 5002, 9000]);
});

test('a fresh sample gives the walk up and begins another, in one tap', async () => {
	const run = await begin(await opened());
	run.passCircumstances();
	await nextTurn();
	run.beginAgain();
	await nextTurn();
	expect(run.state.titrations.map(({ purpose }) => purpose)).toEqual(['first', 'freshSample']);
	expect(run.state.phase).toBe('walk');
	run.undo();
	expect(run.state.titrations).toHaveLength(1);
	expect(run.titration.walk.status).toBe('active');
});

test('a filling written down wrong is corrected; what stood there stays in the log', async () => {
	const records = await opened();
	const run = await wholeTest(records, 0.52);
	run.amendFilling(0, { sealMl: 0.9 });
	await nextTurn();
	// 0.38 mL at 16 dKH each, less 0.30.
	expect(run.result?.value).toBeCloseTo(0.38 * 16 - 0.3, 10);
	expect(JSON.stringify(run.log)).toContain('"sealMl":1}');
	const again = await reopened(records, run);
	expect(again.result?.value).toBeCloseTo(0.38 * 16 - 0.3, 10);
	const [header] = await records.tests.list({});
	expect(header?.summary?.value).toBeCloseTo(0.38 * 16 - 0.3, 10);
});

test('somebody else who begins again is still somebody else', async () => {
	const records = await opened();
	const run = await wholeTest(records, 0.52);
	run.begin('otherPerson', 'Ben');
	await nextTurn();
	run.beginAgain();
	expect(run.titration).toMatchObject({ number: 2, purpose: 'otherPerson', by: 'Ben' });
});

test('a second window that goes on with the same test is refused and says so', async () => {
	const records = await opened();
	const first = await begin(records);
	first.passCircumstances();
	const second = await reopened(records, first);
	first.say({ type: 'step.done', stepId: 'choose' });
	await first.kept.settled();
	second.say({ type: 'step.skipped', stepId: 'choose' });
	await second.kept.settled();
	expect(first.storage).toBe('kept');
	expect(second.storage).toBe('elsewhere');
	expect((await reopened(records, first)).log).toEqual(first.log);
});

test('a corrected leaflet values old tests anew, and says by which version', async () => {
	const records = await opened();
	await records.kits.add(version(0, 'new', kit));
	const run = await wholeTest(records, 0.52);
	const corrected: Kit = { ...kit, conversion: { kind: 'perMl', valuePerMl: 15, offset: -0.3 } };
	await records.kits.add(version(1, 'correction', corrected));
	expect(await resummariseTests('own', records)).toBe(1);
	const [header] = await records.tests.list({});
	expect(header?.summary?.value).toBeCloseTo(0.48 * 15 - 0.3, 10);
	expect(header?.summary?.valuedAnewByVersion).toBe(1);
	// The log itself is as it was, leaflet and all.
	expect((await reopened(records, run)).log).toEqual(run.log);
	expect(await resummariseTests('own', records)).toBe(0);
});

test('another leaflet leaves old tests as they are', async () => {
	const records = await opened();
	await records.kits.add(version(0, 'new', kit));
	await wholeTest(records, 0.52);
	const other: Kit = { ...kit, conversion: { kind: 'perMl', valuePerMl: 15, offset: -0.3 } };
	await records.kits.add(version(1, 'change', other));
	expect(await resummariseTests('own', records)).toBe(0);
	const [line] = await kitsToTest(records);
	expect(line).toMatchObject({ version: 1, isOwn: true });
});

test('what the tests before know: the last value, and the scatter of these hands', async () => {
	const records = await opened();
	const run = await wholeTest(records, 0.52);
	run.begin('repeat');
	await nextTurn();
	await walkThrough(run, 0.5);
	await run.kept.settled();
	const next = await begin(records);
	expect(next.expected).toBeCloseTo(run.result?.value ?? Number.NaN, 10);
	expect((await lastReading(records, next.log))?.value).toBeCloseTo(next.expected ?? 0, 10);
	expect(await lastReading(records, run.log)).toBeNull();
	// A test of another water in between is no reading of the tank.
	const mix = await begin(records);
	mix.noteCircumstances({ water: 'newMix' });
	await nextTurn();
	mix.passCircumstances();
	await nextTurn();
	await walkThrough(mix, 0.1);
	await mix.kept.settled();
	const after = await begin(records);
	expect(after.expected).toBeCloseTo(next.expected ?? Number.NaN, 10);
	expect((await lastReading(records, after.log))?.value).toBeCloseTo(next.expected ?? 0, 10);
});

test('an entry that does not belong is taken back, and the test goes on from before it', async () => {
	const records = await opened();
	const run = await begin(records);
	run.passCircumstances();
	await run.kept.settled();
	const header = (await records.tests.unfinished())[0];
	if (!header) throw new Error('no header');
	await records.tests.append(
		run.log.id,
		1,
		{
			id: 'odd',
			at: time,
			event: { in: 'walk', titration: 0, event: { type: 'step.done', stepId: 'read' } }
		},
		header
	);
	const again = await reopened(records, run);
	expect(again.state.refused).toBeNull();
	expect(again.say({ type: 'step.done', stepId: 'choose' })).toBe(true);
	const third = await reopened(records, again);
	expect(replayTest(third.log).refused).toBeNull();
});

test('however much is said, taken back, corrected and noted in between, the test is what its log makes of it', async () => {
	await fc.assert(
		fc.asyncProperty(
			fc.array(fc.constantFrom('say', 'say', 'say', 'say', 'undo', 'amend', 'note'), {
				minLength: 20,
				maxLength: 60
			}),
			async (deeds) => {
				const run = await begin(await opened());
				const ahead = walkOf(kit, {
					filled: [{ type: 'titrant.drawn', sealMl: 1 }],
					titrated: [{ type: 'titrant.fell', drops: 1 }],
					read: [{ type: 'marks.read', marks: { sealMl: 0.52 } }]
				});
				run.passCircumstances();
				await nextTurn();
				let next = 0;
				for (const deed of deeds) {
					const event = ahead[next];
					if (deed === 'say' && event && run.say(event)) next++;
					else if (deed === 'undo' && next > 0) {
						run.undo();
						next--;
					}
					if (deed === 'amend') run.amendFilling(0, { sealMl: 0.98 });
					if (deed === 'note') run.noteCircumstances({ tester: 'Ada' });
					await nextTurn();
					expect(run.state).toEqual(replayTest(run.log));
				}
			}
		),
		{ numRuns: 40 }
	);
});
