import 'fake-indexeddb/auto';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { houseDropperKit, houseSyringeKit, kitForTest, loadKitVersion } from '../../src/lib/kits';
import { loadTestLog, type TestLog } from '../../src/lib/procedure';
import {
	exportOne,
	exportRecords,
	importRecords,
	openRecords,
	type ImportReport,
	type Records
} from '../../src/lib/records';
import { readSummary } from '../../src/lib/records/transfer/summary';
import { fell, kitRow, readers, said, someLogs, summary, testHeader, testLog } from './made';

let names = 0;
const empty = () => openRecords(`transfer-${names++}`);

/** A file in which these tests stand, as the page of one test would write each. */
function fileOf(logs: readonly TestLog[]): string {
	const file = JSON.parse(exportOne({}, 0)) as { tests: unknown[] };
	return JSON.stringify({ ...file, tests: logs.map((log) => ({ log })) });
}
const take = (text: string, records: Records) => importRecords(text, records, readers);

async function filled(logs: readonly TestLog[]): Promise<Records> {
	const records = await empty();
	await take(fileOf(logs), records);
	return records;
}

async function logsIn(records: Records): Promise<TestLog[]> {
	const stored = await records.tests.loadMany(await records.tests.ids());
	return stored.map(({ header, entries }) => loadTestLog({ ...(header.head as object), entries }));
}
/** What is stored, whatever the ids of copies that went different ways. */
async function contents(records: Records): Promise<string[]> {
	return (await logsIn(records))
		.map(({ id, entries }) => `${id.split('~')[0]}: ${entries.map((entry) => entry.id).join(' ')}`)
		.sort();
}
const counts = ({ added, grown, already, damaged, refused }: ImportReport) => ({
	added,
	grown,
	already,
	damaged: damaged.length,
	refused: refused.length
});

async function full(): Promise<Records> {
	const records = await empty();
	await records.kits.add(kitRow('mine', 1, 'first'));
	await records.kits.add(kitRow('mine', 2, 'second', 2));
	const header = testHeader('t', {
		where: 'step 5',
		summary: summary(7.4),
		startedAtEpochMs: 1000
	});
	await records.tests.begin(header);
	for (const [seq, entry] of [fell('e0'), said('e1', 'test.closed')].entries())
		await records.tests.append('t', seq, entry, { ...header, changedAtEpochMs: 4000 });
	await records.tests.begin(testHeader('gone', { state: 'removed' }));
	await records.tests.append(
		'gone',
		0,
		said('r', 'test.removed'),
		testHeader('gone', { state: 'removed' })
	);
	const run = {
		format: 1,
		id: 'r',
		scenarioId: 'sunday-evening',
		seed: 7,
		coaching: 'silent',
		startedAtEpochMs: 5,
		kit: houseDropperKit
	};
	await records.runs.begin({
		id: 'r',
		scenarioId: 'sunday-evening',
		startedAtEpochMs: 5,
		changedAtEpochMs: 9,
		state: 'finished',
		where: 'the check',
		head: run
	});
	return records;
}

describe('to a file and back', () => {
	test('everything is there again, headers included', async () => {
		const [one, other] = [await full(), await empty()];
		const report = await take(await exportRecords(one, 123), other);
		expect(counts(report)).toEqual({ added: 5, grown: 0, already: 0, damaged: 0, refused: 0 });
		for (const id of ['t', 'gone'])
			expect(await other.tests.load(id)).toMatchObject((await one.tests.load(id))!);
		expect(await other.runs.load('r')).toEqual(await one.runs.load('r'));
		expect(await other.kits.all()).toEqual(await one.kits.all());
		expect(await exportRecords(other, 123)).toBe(await exportRecords(one, 123));
	});
	test('a damaged log that is stored goes into the file as it stands', async () => {
		const records = await empty();
		await records.tests.begin(testHeader('t'));
		await records.tests.append('t', 0, { nonsense: true }, testHeader('t'));
		expect(await exportRecords(records, 0)).toContain('{"nonsense":true}');
	});
	test('the file of one test that could not be kept is a file like any other', async () => {
		const records = await empty();
		const log = testLog('t', [fell('e0'), said('e1', 'test.closed')]);
		await take(exportOne(log, 0), records);
		expect(await logsIn(records)).toEqual([log]);
		expect((await records.tests.list()).map(({ id, state }) => [id, state])).toEqual([
			['t', 'kept']
		]);
	});
	test('a damaged difference is left out of a summary, and the rest stands', () => {
		const left = {
			analyte: 'magnesium',
			value: 1295,
			unit: 'mg/L',
			standardUncertainty: 22,
			expandedUncertainty: 45,
			repeatabilitySd: 9,
			isSuspect: false,
			isAssumed: false
		};
		const whole = { ...summary(63.6), difference: left };
		expect(readSummary(whole)).toEqual(whole);
		expect(readSummary({ ...whole, difference: { ...left, value: 'much' } })).toEqual(
			summary(63.6)
		);
		expect(readSummary({ ...whole, difference: 3 })).toEqual(summary(63.6));
	});

	test('what is handed in makes the summary; where it fails the log is kept all the same', async () => {
		const records = await empty();
		const text = fileOf([testLog('a', [fell('e0')]), testLog('b', [fell('e0')])]);
		const summarise = ({ id }: { id: string }) => {
			if (id === 'b') throw new RangeError('no value');
			return summary(8.1)!;
		};
		await importRecords(text, records, { ...readers, summarise });
		expect((await records.tests.load('a'))?.header.summary?.value).toBe(8.1);
		expect((await records.tests.load('b'))?.header.summary).toBeNull();
	});
	test('storage that cannot be read gives an error, never a file with less in it', async () => {
		const records = await full();
		const failing = { ...records, kits: records.kits, runs: records.runs, tests: records.tests };
		failing.tests.ids = () => Promise.reject(new Error('the disk does not answer'));
		await expect(exportRecords(failing, 0)).rejects.toThrow('the disk does not answer');
	});
});

describe('merging', () => {
	test('export and import into nothing gives the same; a second time adds nothing', () =>
		fc.assert(
			fc.asyncProperty(someLogs, async (logs) => {
				const one = await filled(logs);
				const text = await exportRecords(one, 0);
				const other = await empty();
				await take(text, other);
				expect(await logsIn(other)).toEqual(await logsIn(one));
				expect(counts(await take(text, other))).toMatchObject({ added: 0, grown: 0 });
				expect(await logsIn(other)).toEqual(await logsIn(one));
			}),
			{ numRuns: 40 }
		));
	test('the order of imports does not matter', () =>
		fc.assert(
			fc.asyncProperty(someLogs, someLogs, async (some, others) => {
				const [here, there] = [await filled(some), await filled(others)];
				const [a, b] = [await exportRecords(here, 0), await exportRecords(there, 0)];
				await take(b, here);
				await take(a, there);
				expect(await contents(here)).toEqual(await contents(there));
			}),
			{ numRuns: 60 }
		));
	test('nothing is lost: every log is there, or one that it is the beginning of', () =>
		fc.assert(
			fc.asyncProperty(someLogs, someLogs, async (some, others) => {
				const records = await filled(some);
				await take(fileOf(others), records);
				const stored = await contents(records);
				for (const { id, entries } of [...some, ...others]) {
					const words = `${id}: ${entries.map((entry) => entry.id).join(' ')}`;
					expect(stored.some((each) => `${each} `.startsWith(words.trim()))).toBe(true);
				}
			}),
			{ numRuns: 60 }
		));
	test('the longer of two stays, and says what came with it', async () => {
		const records = await filled([testLog('a', [fell('0')])]);
		const longer = testLog('a', [fell('0'), fell('1'), said('2', 'test.closed')]);
		expect(counts(await take(fileOf([longer]), records))).toMatchObject({ added: 0, grown: 1 });
		expect((await records.tests.load('a'))?.header.state).toBe('kept');
		expect(counts(await take(fileOf([testLog('a', [fell('0')])]), records))).toMatchObject({
			already: 1
		});
		expect(await logsIn(records)).toEqual([longer]);
	});
	test('two that went different ways both stay, and the newcomer’s id and header say so', async () => {
		const here = testLog('a', [fell('0'), fell('here')]);
		const records = await filled([here]);
		const there = testLog('a', [fell('0'), fell('there')]);
		const report = await take(fileOf([there]), records);
		const [apart] = report.keptApart;
		expect(apart).toMatchObject({ where: 'tests.0', of: 'a', because: 'diverged' });
		expect(apart!.id).toMatch(/^a~/);
		expect(await logsIn(records)).toEqual([here, { ...there, id: apart!.id }]);
		expect((await records.tests.load(apart!.id))?.header.origin).toEqual({
			of: 'a',
			because: 'diverged'
		});
		// The other device goes on with its copy: ours of it grows.
		const further = { ...there, entries: [...there.entries, fell('2')] };
		expect(counts(await take(fileOf([further]), records))).toMatchObject({ added: 0, grown: 1 });
		expect(await contents(records)).toEqual(['a: 0 here', 'a: 0 there 2']);
	});
	test('the same entries under another leaflet are another test', async () => {
		const records = await filled([testLog('a', [fell('0')])]);
		const kit = { ...houseSyringeKit, name: 'corrected' };
		expect((await take(fileOf([testLog('a', [fell('0')], kit)]), records)).keptApart).toHaveLength(
			1
		);
	});
	test('a leaflet under a number that is taken gets a higher one that corrects nothing; again it is known', async () => {
		const [records, other] = [await empty(), await empty()];
		await records.kits.add(kitRow('mine', 1, 'first'));
		await records.kits.add(kitRow('mine', 2, 'mine', 5));
		await other.kits.add(kitRow('mine', 1, 'first'));
		await other.kits.add(kitRow('mine', 2, 'theirs', 6));
		const text = await exportRecords(other, 0);
		const report = await take(text, records);
		expect(counts(report)).toMatchObject({ added: 1, already: 1 });
		expect(report.keptApart[0]).toMatchObject({ id: 'mine, version 4', of: 'mine' });
		const versions = (await records.kits.all()).map(loadKitVersion);
		const ofMine = { kit: versions[1]!.kit, kitVersion: 2 };
		expect(kitForTest(versions, ofMine).isCorrected).toBe(false);
		const names = (await records.kits.all()).map(({ kit }) => (kit as { name: string }).name);
		expect(names).toEqual(['first', 'mine', 'theirs']);
		expect(counts(await take(text, records))).toMatchObject({ added: 0, already: 2 });
		// And back: both devices hold the same three.
		await take(await exportRecords(records, 0), other);
		expect(await other.kits.all()).toHaveLength(3);
	});
	test('what storage refuses is reported with its place', async () => {
		const records = await empty();
		records.tests.addAll = () =>
			Promise.resolve({ kept: false, because: 'storage', why: 'full', detail: 'full' });
		const report = await take(fileOf([testLog('a'), testLog('b')]), records);
		expect(report.refused).toEqual([
			{ where: 'tests.0', kept: false, because: 'storage', why: 'full', detail: 'full' },
			{ where: 'tests.1', kept: false, because: 'storage', why: 'full', detail: 'full' }
		]);
		expect(report.added).toBe(0);
	});
});
