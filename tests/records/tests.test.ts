import 'fake-indexeddb/auto';
import Dexie from 'dexie';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { loadTestLog } from '../../src/lib/procedure';
import { openRecords, type Records } from '../../src/lib/records';
import { fell, kitRow, summary, testHeader, testLog } from './made';

let n = 0;
let name: string;
beforeEach(() => (name = `tests-${n++}`));
afterEach(() => {
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
});

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

describe.each(kinds)('tests %s', (_, open) => {
	const filled = async () => {
		const records = await open();
		const add = (id: string, at: number, more: Parameters<typeof testHeader>[1] = {}) =>
			records.tests.begin(testHeader(id, { startedAtEpochMs: at, ...more }));
		await add('a', 10, { summary: summary(7) });
		await add('b', 30);
		// Two of the same moment: a page between them must neither skip nor repeat one.
		await add('d', 20, { summary: summary(8) });
		await add('c', 20, { analyte: 'other', kitId: 'another' });
		await add('left', 40, { state: 'unfinished' });
		await add('gone', 50, { state: 'removed', summary: summary(9) });
		return records;
	};

	test('are listed begun last first, kept ones unless others are asked for', async () => {
		const { tests } = await filled();
		expect(ids(await tests.list())).toEqual(['b', 'd', 'c', 'a']);
		expect(ids(await tests.list({ analyte: 'alkalinity' }))).toEqual(['b', 'd', 'a']);
		expect(ids(await tests.list({ state: 'removed' }))).toEqual(['gone']);
		expect(ids(await tests.unfinished())).toEqual(['left']);
	});
	test('come in pages that neither skip nor repeat', async () => {
		const { tests } = await filled();
		const pages: string[][] = [];
		for (let before; ;) {
			const page = await tests.list(before ? { limit: 1, before } : { limit: 1 });
			if (page.length === 0) break;
			pages.push(ids(page));
			before = page.at(-1);
		}
		expect(pages.flat()).toEqual(['b', 'd', 'c', 'a']);
		expect(ids(await tests.list({ before: 20 }))).toEqual(['a']);
		expect(ids(await tests.list({ analyte: 'alkalinity', before: 21, limit: 5 }))).toEqual([
			'd',
			'a'
		]);
	});
	test('are counted as they are listed', async () => {
		const { tests } = await filled();
		expect(await tests.count()).toBe(4);
		expect(await tests.count({ analyte: 'alkalinity' })).toBe(3);
		expect(await tests.count({ analyte: 'alkalinity', state: 'removed' })).toBe(1);
	});
	test('give a picture the kept ones of an analyte between two times, in order', async () => {
		const { tests } = await filled();
		const points = await tests.points({ analyte: 'alkalinity', from: 10, to: 20 });
		expect(points.map(({ id, summary: at }) => [id, at?.value])).toEqual([
			['a', 7],
			['d', 8]
		]);
		expect(await tests.points({ analyte: 'alkalinity', from: 11, to: 19 })).toEqual([]);
	});
	test('know the last kept one with a value before a time', async () => {
		const { tests } = await filled();
		const kitId = testHeader('x').kitId;
		expect((await tests.lastBefore(kitId, 100))?.id).toBe('d');
		expect((await tests.lastBefore(kitId, 20))?.id).toBe('a');
		expect(await tests.lastBefore(kitId, 10)).toBeNull();
		expect(await tests.lastBefore('nobody', 100)).toBeNull();
	});
	test('get another summary and keep their log', async () => {
		const { tests } = await filled();
		await tests.append('b', 0, fell('e'), testHeader('b', { startedAtEpochMs: 30 }));
		expect(await tests.resummarise('b', summary(7.7))).toEqual({ kept: true });
		expect((await tests.list({ limit: 1 }))[0]?.summary?.value).toBe(7.7);
		expect((await tests.load('b'))?.entries).toEqual([fell('e')]);
		expect(await tests.resummarise('b', null)).toEqual({ kept: true });
		expect(await tests.resummarise('b', null)).toEqual({ kept: true });
		expect(await tests.resummarise('nobody', null)).toMatchObject({ kept: false, why: 'gap' });
	});
	test('are listed without their heads and loaded with them', async () => {
		const { tests } = await filled();
		for (const header of await tests.list()) expect(header).not.toHaveProperty('head');
		const stored = await tests.load('a');
		expect(loadTestLog({ ...(stored!.header.head as object), entries: [] })).toEqual(testLog('a'));
	});
	test('take no entry that would stand alone: what is stored is the beginning of the log', async () => {
		const { tests } = await filled();
		expect(await tests.append('a', 1, fell('1'), testHeader('a'))).toMatchObject({
			kept: false,
			because: 'storage',
			why: 'gap'
		});
		expect(await tests.append('nobody', 0, fell('0'), testHeader('nobody'))).toMatchObject({
			why: 'gap'
		});
		expect(await tests.load('nobody')).toBeNull();
	});
	test('that cannot be read are listed like any other', async () => {
		const { tests } = await filled();
		await tests.append('a', 0, { nonsense: 1 }, testHeader('a', { startedAtEpochMs: 10 }));
		expect(ids(await tests.list())).toContain('a');
		const stored = await tests.load('a');
		const read = () =>
			loadTestLog({ ...(stored!.header.head as object), entries: stored!.entries });
		expect(read).toThrow(/entries\.0/);
	});
	test('go in whole, all or none', async () => {
		const { tests } = await filled();
		const whole = (id: string) => ({ header: testHeader(id), entries: [fell('0'), fell('1')] });
		expect(await tests.addAll([whole('x'), whole('a')])).toEqual({
			kept: false,
			because: 'elsewhere'
		});
		expect(await tests.load('x')).toBeNull();
		expect(await tests.addAll([whole('x'), whole('y')])).toEqual({ kept: true });
		expect((await tests.loadMany(['y', 'nobody', 'x'])).map(({ header }) => header.id)).toEqual([
			'y',
			'x'
		]);
	});
	test('kits: versions are added, and never overwritten', async () => {
		const { kits } = await open();
		await kits.add(kitRow('b', 0, 'b'));
		await kits.add(kitRow('a', 10, 'ten'));
		await kits.add(kitRow('a', 2, 'two'));
		expect(await kits.add(kitRow('a', 2, 'other'))).toEqual({ kept: false, because: 'elsewhere' });
		expect((await kits.all()).map(({ kit }) => (kit as { name: string }).name)).toEqual([
			'two',
			'ten',
			'b'
		]);
	});
});

describe('a row that is missing', () => {
	test('leaves its place empty, so that the damage is named where it is', async () => {
		const { tests } = await openRecords(name);
		await tests.begin(testHeader('a'));
		for (let seq = 0; seq < 4; seq++)
			await tests.append('a', seq, fell(`e${seq}`), testHeader('a'));
		const database = await new Dexie(name).open();
		await database.table('testEntries').delete(['a', 2]);
		database.close();
		const stored = await tests.load('a');
		const read = () =>
			loadTestLog({ ...(stored!.header.head as object), entries: stored!.entries });
		expect(read).toThrow(/entries\.2/);
	});
});

describe('a database of the first version', () => {
	/** As the first version declared it. */
	async function older(): Promise<Dexie> {
		const database = new Dexie(name);
		database.version(1).stores({
			runs: 'id, scenarioId, state, changedAtEpochMs',
			entries: '[runId+seq], runId'
		});
		await database.open();
		const header = { scenarioId: 's', startedAtEpochMs: 1, where: 'drop', head: { seed: 7 } };
		await database.table('runs').bulkAdd([
			{ id: 'r', ...header, changedAtEpochMs: 2, state: 'unfinished' },
			{ id: 'q', ...header, changedAtEpochMs: 3, state: 'finished' }
		]);
		await database
			.table('entries')
			.bulkAdd(
				['r', 'q'].flatMap((runId) =>
					[0, 1, 2].map((seq) => ({ runId, seq, entry: `${runId}${seq}` }))
				)
			);
		return database;
	}
	test('is opened with its runs as they were, and they go on', async () => {
		(await older()).close();
		const { runs, tests, isLasting } = await openRecords(name);
		expect(isLasting).toBe(true);
		expect(ids(await runs.list())).toEqual(['q', 'r']);
		const stored = await runs.load('r');
		expect(stored).toMatchObject({ header: { head: { seed: 7 } }, entries: ['r0', 'r1', 'r2'] });
		const { head: _, ...header } = { ...stored!.header, where: 'read' };
		expect(await runs.append('r', 3, 'r3', header)).toEqual({ kept: true });
		await runs.append('r', 4, 'r4', header);
		expect(await runs.load('r')).toMatchObject({
			header: { where: 'read', head: { seed: 7 } },
			entries: ['r0', 'r1', 'r2', 'r3', 'r4']
		});
		expect(await tests.begin(testHeader('t'))).toEqual({ kept: true });
	});
	test('that another window holds open does not keep this one out for ever', async () => {
		vi.spyOn(console, 'warn').mockImplementation(() => undefined);
		const open = await older();
		// That window does not let go when asked to.
		open.on('versionchange').unsubscribe(Dexie.prototype.close as never);
		vi.spyOn(Dexie.prototype, 'close').mockImplementation(() => undefined);
		const opened = openRecords(name, { patienceMs: 1000 });
		const { trouble, isLasting, tests } = await opened;
		expect(isLasting).toBe(false);
		expect(trouble?.why).toBe('blocked');
		expect(await tests.begin(testHeader('t'))).toEqual({ kept: true });
	});
});

describe('what is wrong with storage is said', () => {
	test('full', async () => {
		const records = await openRecords(name);
		await records.tests.begin(testHeader('a'));
		vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
			throw new DOMException('Quota exceeded.', 'QuotaExceededError');
		});
		const kept = await records.tests.append('a', 0, fell('0'), testHeader('a'));
		expect(kept).toEqual({
			kept: false,
			because: 'storage',
			why: 'full',
			detail: 'the storage of this browser is full: Quota exceeded.'
		});
		expect(records.trouble?.why).toBe('full');
		// One failure tells for all tables.
		expect([records.runs.isLasting, records.kits.isLasting]).toEqual([false, false]);
	});
	test('missing', async () => {
		vi.spyOn(Dexie.dependencies, 'indexedDB', 'get').mockReturnValue(undefined as never);
		expect((await openRecords(name)).trouble?.why).toBe('missing');
	});
	test('refused', async () => {
		expect((await inMemory()).trouble?.why).toBe('missing');
	});
});

describe('storage that lasts', () => {
	const stub = (persisted: boolean) => {
		const storage = {
			persisted: vi.fn(() => Promise.resolve(persisted)),
			persist: vi.fn(() => Promise.resolve(true))
		};
		vi.stubGlobal('navigator', { storage });
		return storage;
	};
	test('is asked for once a test is kept, and not while it goes on', async () => {
		const storage = stub(false);
		const { tests } = await openRecords(name);
		const going = testHeader('a', { state: 'unfinished' });
		await tests.begin(going);
		await tests.append('a', 0, fell('0'), going);
		expect(storage.persist).not.toHaveBeenCalled();
		await tests.append('a', 1, fell('1'), testHeader('a'));
		await vi.waitFor(() => expect(storage.persist).toHaveBeenCalledTimes(1));
	});
	test('is not asked for again where it was granted', async () => {
		const storage = stub(true);
		const { tests } = await openRecords(name);
		await tests.addAll([{ header: testHeader('a'), entries: [] }]);
		await vi.waitFor(() => expect(storage.persisted).toHaveBeenCalled());
		expect(storage.persist).not.toHaveBeenCalled();
	});
});
