import 'fake-indexeddb/auto';
import Dexie from 'dexie';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { loadCheckLog, loadTestLog, replayCheck } from '../../src/lib/procedure';
import { openRecords, type Records } from '../../src/lib/records';
import {
	answered,
	checkHeader,
	checkLog,
	fell,
	kitRow,
	readingInQuestion,
	summary,
	testHeader,
	testLog,
	told
} from './made';

let n = 0;
let name: string;
beforeEach(() => (name = `checks-${n++}`));
afterEach(() => vi.restoreAllMocks());

const inMemory = () => {
	vi.spyOn(Dexie.prototype, 'open').mockImplementation(() => {
		throw new DOMException('not here', 'SecurityError');
	});
	return openRecords(name);
};
const kinds: [string, () => Promise<Records>][] = [
	['in the browser', () => openRecords(name)],
	['in memory', inMemory]
];
const ids = (headers: readonly { id: string }[]) => headers.map(({ id }) => id);
const first = told('e0', { type: 'evidence.given', evidence: readingInQuestion(7.1) });
const light = told('e1', answered('light', 'white'));

describe.each(kinds)('checks %s', (_, open) => {
	const filled = async () => {
		const records = await open();
		const add = (id: string, at: number, more: Parameters<typeof checkHeader>[1] = {}) =>
			records.checks.begin(checkHeader(id, { startedAtEpochMs: at, ...more }));
		await add('a', 10);
		await add('b', 30);
		// Two of the same moment: a page between them must neither skip nor repeat one.
		await add('d', 20, { kitId: null });
		await add('c', 20, { analyte: 'other' });
		await add('left', 40, { state: 'unfinished' });
		await add('gone', 50, { state: 'removed' });
		return records;
	};

	test('are listed begun last first, in pages, by analyte and state', async () => {
		const { checks, tests } = await filled();
		expect(ids(await checks.list())).toEqual(['b', 'd', 'c', 'a']);
		expect(ids(await checks.list({ analyte: 'alkalinity' }))).toEqual(['b', 'd', 'a']);
		expect(ids(await checks.list({ state: 'removed' }))).toEqual(['gone']);
		expect(ids(await checks.unfinished())).toEqual(['left']);
		const [, second] = await checks.list({ limit: 2 });
		expect(ids(await checks.list({ before: second! }))).toEqual(['c', 'a']);
		expect([await checks.count(), await checks.count({ analyte: 'alkalinity' })]).toEqual([4, 3]);
		// And are no tests.
		expect(await tests.list()).toEqual([]);
	});
	test('are kept entry by entry, and are the same check again', async () => {
		const { checks } = await open();
		const log = checkLog('a', [first, light]);
		await checks.begin(checkHeader('a'));
		expect(await checks.append('a', 0, first, checkHeader('a'))).toEqual({ kept: true });
		const after = checkHeader('a', { state: 'unfinished', where: '2 things known' });
		expect(await checks.appendAll('a', 1, [light], after)).toEqual({ kept: true });
		const stored = await checks.load('a');
		const loaded = loadCheckLog({
			...(stored!.header.head as object),
			entries: stored!.entries
		});
		expect(loaded).toEqual(log);
		expect(replayCheck(loaded)).toEqual(replayCheck(log));
		const [header] = await checks.unfinished();
		expect(header).toMatchObject({ where: '2 things known' });
		expect(header).not.toHaveProperty('head');
	});
	test('take no number twice, and no entry that would stand alone', async () => {
		const { checks } = await open();
		await checks.begin(checkHeader('a'));
		await checks.append('a', 0, first, checkHeader('a'));
		expect(await checks.append('a', 0, light, checkHeader('a'))).toEqual({
			kept: false,
			because: 'elsewhere'
		});
		expect(await checks.append('a', 2, light, checkHeader('a'))).toMatchObject({ why: 'gap' });
		expect((await checks.load('a'))?.entries).toEqual([first]);
	});
	test('may bear the id of a test', async () => {
		const { checks, tests } = await open();
		await tests.begin(testHeader('same'));
		await tests.append('same', 0, fell('f'), testHeader('same'));
		await checks.begin(checkHeader('same'));
		await checks.append('same', 0, first, checkHeader('same'));
		expect((await checks.load('same'))?.entries).toEqual([first]);
		expect((await tests.load('same'))?.entries).toEqual([fell('f')]);
	});
});

describe('two windows with one check', () => {
	test('the one left behind is told, and its next entry is refused; nothing is overwritten', async () => {
		const [here, there] = [await openRecords(name), await openRecords(name)];
		await here.checks.begin(checkHeader('a'));
		await here.checks.append('a', 0, first, checkHeader('a'));
		const left = vi.fn();
		const stop = here.watchLog('a', left);
		await there.checks.append('a', 1, light, checkHeader('a'));
		await vi.waitFor(() => expect(left).toHaveBeenCalledTimes(1));
		const mine = told('mine', answered('light', 'tank'));
		expect(await here.checks.append('a', 1, mine, checkHeader('a'))).toEqual({
			kept: false,
			because: 'elsewhere'
		});
		expect((await there.checks.load('a'))?.entries).toEqual([first, light]);
		stop();
	});
});

describe('storage that takes no more', () => {
	test('is told, and what was kept stays', async () => {
		const { checks, ...records } = await openRecords(name);
		await checks.begin(checkHeader('a'));
		await checks.append('a', 0, first, checkHeader('a'));
		vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
			throw new DOMException('Quota exceeded.', 'QuotaExceededError');
		});
		expect(await checks.append('a', 1, light, checkHeader('a'))).toMatchObject({
			kept: false,
			because: 'storage',
			why: 'full'
		});
		// One failure tells for all tables.
		expect([checks.isLasting, records.tests.isLasting]).toEqual([false, false]);
		expect((await checks.load('a'))?.entries).toEqual([first]);
	});
});

describe('a database of the second version', () => {
	/** As the second version declared it. */
	async function older(): Promise<Dexie> {
		const database = new Dexie(name);
		database.version(1).stores({
			runs: 'id, scenarioId, state, changedAtEpochMs',
			entries: '[runId+seq], runId'
		});
		database.version(2).stores({
			runHeads: 'id',
			tests:
				'id, [state+startedAtEpochMs+id], [state+analyte+startedAtEpochMs+id], ' +
				'[state+kitId+startedAtEpochMs]',
			testHeads: 'id',
			testEntries: '[testId+seq]',
			kits: '[kitId+version]'
		});
		await database.open();
		const tables = ['runs', 'runHeads', 'entries', 'tests', 'testHeads', 'testEntries', 'kits'];
		expect(database.tables.map((each) => each.name).sort()).toEqual(tables.sort());
		for (const [id, at] of [['t', 5] as const, ['s', 7] as const]) {
			const { head, ...header } = testHeader(id, { startedAtEpochMs: at, summary: summary(at) });
			await database.table('tests').add(header);
			await database.table('testHeads').add({ id, head });
			for (let seq = 0; seq < 3; seq++)
				await database.table('testEntries').add({ testId: id, seq, entry: fell(`${id}${seq}`) });
		}
		await database.table('kits').add(kitRow('mine', 4, 'mine'));
		await database.table('runs').add({
			id: 'r',
			scenarioId: 'x',
			startedAtEpochMs: 1,
			changedAtEpochMs: 2,
			state: 'finished',
			where: 'done'
		});
		await database.table('runHeads').add({ id: 'r', head: { seed: 7 } });
		await database.table('entries').add({ runId: 'r', seq: 0, entry: 'r0' });
		return database;
	}

	test('is opened with all that is in it, which goes on, and takes checks', async () => {
		(await older()).close();
		const records = await openRecords(name);
		expect(records.trouble).toBeNull();
		expect(ids(await records.tests.list())).toEqual(['s', 't']);
		for (const id of ['s', 't']) {
			const { header, entries } = (await records.tests.load(id))!;
			expect(loadTestLog({ ...(header.head as object), entries })).toEqual(
				testLog(id, [fell(`${id}0`), fell(`${id}1`), fell(`${id}2`)])
			);
		}
		expect((await records.tests.lastBefore(testHeader('x').kitId, 100))?.id).toBe('s');
		expect(await records.kits.all()).toEqual([kitRow('mine', 4, 'mine')]);
		expect(await records.runs.load('r')).toMatchObject({
			header: { head: { seed: 7 } },
			entries: ['r0']
		});
		expect(await records.tests.append('t', 3, fell('t3'), testHeader('t'))).toEqual({ kept: true });
		expect(await records.checks.begin(checkHeader('a'))).toEqual({ kept: true });
		expect(await records.checks.append('a', 0, first, checkHeader('a'))).toEqual({ kept: true });
	});
	test('that another window holds open keeps this one at work in memory', async () => {
		vi.spyOn(console, 'warn').mockImplementation(() => undefined);
		const open = await older();
		// That window does not let go when asked to.
		open.on('versionchange').unsubscribe(Dexie.prototype.close as never);
		vi.spyOn(Dexie.prototype, 'close').mockImplementation(() => undefined);
		const { trouble, checks } = await openRecords(name, { patienceMs: 1000 });
		expect(trouble?.why).toBe('blocked');
		expect(await checks.begin(checkHeader('a'))).toEqual({ kept: true });
	});
});
