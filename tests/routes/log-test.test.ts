// @vitest-environment node
import 'fake-indexeddb/auto';
import { describe, expect, test, vi } from 'vitest';
import { houseSyringeKit, type Kit } from '$lib/kits';
import { loadTestLog, replayTest, summaryOf, testResult, type TestLog } from '$lib/procedure';
import { openRecords, type Records } from '$lib/records';
import { fileOf, wholeTest } from '../browser/tank-logs';
import { openLogged } from '../../src/routes/log/test/open-logged';
import { takeIn } from '../../src/routes/settings/copies';

const at = Date.UTC(2026, 2, 28, 18);
const HOUR = 3_600_000;
const mine: Kit = { ...houseSyringeKit, id: 'mine', name: 'My kit', invented: false };
/** The leaflet as it should have been typed in: each row is worth a tenth more. */
const corrected: Kit = {
	...mine,
	conversion:
		mine.conversion.kind === 'rows'
			? {
					...mine.conversion,
					rows: mine.conversion.rows.map((row) => ({ ...row, value: row.value * 1.1 }))
				}
			: mine.conversion.kind === 'perMl'
				? { ...mine.conversion, valuePerMl: mine.conversion.valuePerMl * 1.1 }
				: mine.conversion
};
const version = (number: number, kind: 'new' | 'correction', kit: Kit) => ({
	format: 1,
	kitId: kit.id,
	version: number,
	savedAtEpochMs: at + number * 24 * HOUR,
	kind,
	kit
});
const logOf = (id: string, sealMl = 0.42): TestLog => ({ ...wholeTest(id, at, sealMl), kit: mine });

let opened = 0;
const fresh = () => openRecords(`log-test-${opened++}`);
async function found(records: Records, id: string) {
	const there = await openLogged(records, id, () => at + 48 * HOUR);
	if (there.kind !== 'test') throw new Error(`found ${there.kind}`);
	return there;
}
const stored = async (records: Records, id: string) =>
	(await records.tests.list()).find((header) => header.id === id);

describe('a test of the log', () => {
	test('is valued by the leaflet as it is corrected, and knows what it said on the day', async () => {
		const records = await fresh();
		await takeIn(fileOf([logOf('a')]), records);
		await records.kits.add(version(0, 'new', mine));
		await records.kits.add(version(1, 'correction', corrected));
		const { test: logged } = await found(records, 'a');
		const onTheDay = testResult(replayTest(logged.log));
		expect(logged.leaflet).toMatchObject({ version: 1, isCorrected: true });
		expect(logged.leaflet.savedAtEpochMs).toBe(at + 24 * HOUR);
		expect(logged.onTheDay?.value).toBeCloseTo(onTheDay?.value ?? NaN, 9);
		// Every row of the leaflet is a tenth more, so the value is.
		expect(logged.result?.value).toBeCloseTo(1.1 * (onTheDay?.value ?? NaN), 9);
	});

	test('with its leaflet as it was says nothing of a day', async () => {
		const records = await fresh();
		await takeIn(fileOf([logOf('a')]), records);
		const { test: logged } = await found(records, 'a');
		expect([logged.leaflet.isCorrected, logged.onTheDay]).toEqual([false, null]);
	});

	test('a mark corrected is valued by today’s leaflet in lists as well; the old one stays', async () => {
		const records = await fresh();
		await takeIn(fileOf([logOf('a')]), records);
		await records.kits.add(version(0, 'new', mine));
		await records.kits.add(version(1, 'correction', corrected));
		const { test: logged } = await found(records, 'a');
		const entries = logged.log.entries.length;
		logged.amendMarks(0, { sealMl: 0.24 });
		await vi.waitFor(async () => {
			const row = await stored(records, 'a');
			expect(row?.summary?.value).toBeCloseTo(logged.result?.value ?? NaN, 9);
			expect(row?.summary?.valuedAnewByVersion).toBe(1);
		}, 4000);
		expect(logged.log.entries).toHaveLength(entries + 1);
		const again = await records.tests.load('a');
		expect(JSON.stringify(again?.entries)).toContain('"sealMl":0.42');
		expect(JSON.stringify(again?.entries)).toContain('"sealMl":0.24');
	});

	test('removed, it leaves the list and is stored whole; put back, it is as before', async () => {
		const records = await fresh();
		await takeIn(fileOf([logOf('a'), logOf('b')]), records);
		const before = await stored(records, 'a');
		const { test: logged } = await found(records, 'a');
		logged.remove();
		await vi.waitFor(
			async () => expect((await records.tests.list()).map(({ id }) => id)).toEqual(['b']),
			4000
		);
		expect((await records.tests.list({ state: 'removed' })).map(({ id }) => id)).toEqual(['a']);
		logged.restore();
		await vi.waitFor(
			async () => expect((await stored(records, 'a'))?.summary).toEqual(before?.summary),
			4000
		);
		expect(await records.tests.list({ state: 'removed' })).toEqual([]);
	});

	test('that is not there, and one that cannot be read, are told apart', async () => {
		const records = await fresh();
		expect(await openLogged(records, 'nowhere', () => at)).toEqual({ kind: 'nothing' });
		const { entries, ...head } = logOf('torn');
		await records.tests.addAll([
			{
				header: {
					id: 'torn',
					kitId: 'mine',
					analyte: 'alkalinity',
					startedAtEpochMs: at,
					changedAtEpochMs: at,
					state: 'kept',
					where: 'done',
					summary: null,
					head
				},
				entries: [...entries.slice(0, 3), { id: 'e3', at: 'never' }]
			}
		]);
		const there = await openLogged(records, 'torn', () => at);
		expect(there).toMatchObject({
			kind: 'unreadable',
			why: expect.stringContaining('entries.3')
		});
	});
});

describe('a file taken in', () => {
	test('its tests are valued from their marks, not from what the file says', async () => {
		const records = await fresh();
		const log = logOf('a');
		const text = JSON.stringify({
			halfdrop: 'records',
			format: 1,
			exportedAtEpochMs: at,
			kits: [],
			tests: [{ log, summary: { value: 99, unit: 'dKH' } }],
			runs: []
		});
		expect(await takeIn(text, records)).toMatchObject({ added: 1, damaged: [] });
		const state = replayTest(loadTestLog(log));
		const result = testResult(state);
		if (!result) throw new Error('the test has a value');
		expect((await stored(records, 'a'))?.summary).toEqual(summaryOf(state, result));
	});

	test('a correction that comes with the file values its tests anew', async () => {
		const records = await fresh();
		const text = JSON.stringify({
			halfdrop: 'records',
			format: 1,
			exportedAtEpochMs: at,
			kits: [version(0, 'new', mine), version(1, 'correction', corrected)],
			tests: [{ log: logOf('a') }],
			runs: []
		});
		await takeIn(text, records);
		expect((await stored(records, 'a'))?.summary?.valuedAnewByVersion).toBe(1);
	});
});
