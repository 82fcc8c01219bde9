import 'fake-indexeddb/auto';
import Dexie from 'dexie';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { openRecords } from '../../src/lib/records';
import { glanceAtRecords } from '../../src/lib/records/glance';
import { checkHeader, kitRow, summary, testHeader } from './made';

let names = 0;
const nothing = {
	runs: [],
	unfinishedTest: null,
	unfinishedCheck: null,
	latest: [],
	hasKits: false
};
const newName = () => `glance-${names++}`;
afterEach(() => vi.unstubAllGlobals());

describe('a glance at the records', () => {
	test('sees what the records themselves tell', async () => {
		const name = newName();
		const records = await openRecords(name);
		for (const [id, at] of [1, 2, 3, 4, 5].map((each) => [`t${each}`, each * 10] as const)) {
			const more = { startedAtEpochMs: at, summary: summary(at) };
			await records.tests.begin(testHeader(id, more));
			await records.tests.begin(testHeader(`left-${id}`, { ...more, state: 'unfinished' }));
			await records.tests.begin(testHeader(`gone-${id}`, { ...more, state: 'removed' }));
			await records.checks.begin(
				checkHeader(`c${id}`, { startedAtEpochMs: at, state: 'unfinished' })
			);
			await records.checks.begin(checkHeader(`done-${id}`, { startedAtEpochMs: at + 100 }));
			await records.runs.begin({
				id: `r${id}`,
				scenarioId: 's',
				startedAtEpochMs: 1,
				changedAtEpochMs: 100 - at,
				state: 'unfinished',
				where: 'drop',
				head: {}
			});
		}
		await records.kits.add(kitRow('mine', 0, 'mine'));
		expect(await glanceAtRecords(3, name)).toEqual({
			runs: await records.runs.list(),
			unfinishedTest: (await records.tests.unfinished())[0],
			unfinishedCheck: (await records.checks.unfinished())[0],
			latest: await records.tests.list({ limit: 3 }),
			hasKits: true
		});
		expect((await glanceAtRecords(3, name)).latest).toHaveLength(3);
	});
	test('makes no database where there is none', async () => {
		const name = newName();
		expect(await glanceAtRecords(3, name)).toEqual(nothing);
		expect(await Dexie.exists(name)).toBe(false);
		const records = await openRecords(name);
		expect(records.isLasting).toBe(true);
		expect(await glanceAtRecords(3, name)).toEqual(nothing);
	});
	test('reads a database of the first version', async () => {
		const name = newName();
		const database = new Dexie(name);
		database.version(1).stores({
			runs: 'id, scenarioId, state, changedAtEpochMs',
			entries: '[runId+seq], runId'
		});
		await database.open();
		await database.table('runs').add({ id: 'r', changedAtEpochMs: 1, head: {} });
		database.close();
		expect(await glanceAtRecords(3, name)).toEqual({
			...nothing,
			runs: [{ id: 'r', changedAtEpochMs: 1 }]
		});
	});
	test('sees nothing where storage is missing or refused', async () => {
		vi.stubGlobal('indexedDB', undefined);
		expect(await glanceAtRecords(3)).toEqual(nothing);
		vi.stubGlobal('indexedDB', {
			open: () => {
				throw new DOMException('not here', 'SecurityError');
			}
		});
		expect(await glanceAtRecords(3)).toEqual(nothing);
	});
	test('stands in nobody’s way', async () => {
		const name = newName();
		await (await openRecords(name)).tests.begin(testHeader('a'));
		await glanceAtRecords(3, name);
		const newer = new Dexie(name);
		newer.version(4).stores({});
		await newer.open();
		expect(newer.verno).toBe(4);
		newer.close();
	});
});
