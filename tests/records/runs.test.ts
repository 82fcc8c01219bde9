import 'fake-indexeddb/auto';
import Dexie from 'dexie';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openRecords, type RunHeader, type RunRecords, type Whole } from '../../src/lib/records';

const openRuns = async (name: string) => (await openRecords(name)).runs;

let n = 0;
let name: string;
beforeEach(() => (name = `test-${n++}`));
afterEach(() => {
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
});

const header = (id: string, more: Partial<RunHeader> = {}): Whole<RunHeader> => ({
	id,
	scenarioId: 'sunday-evening',
	startedAtEpochMs: 1000,
	changedAtEpochMs: 1000,
	state: 'unfinished',
	where: 'sample',
	head: { seed: 7 },
	...more
});

/** Both kinds answer alike: what a page may rely on. */
const kinds: [string, () => Promise<RunRecords>][] = [
	['in the browser', () => openRuns(name)],
	[
		'in memory',
		() => {
			vi.spyOn(Dexie.prototype, 'open').mockImplementation(() => {
				throw new DOMException('not here', 'SecurityError');
			});
			return openRuns(name);
		}
	]
];

describe.each(kinds)('records %s', (kind, open) => {
	it('say whether they will be there tomorrow', async () => {
		expect((await open()).isLasting).toBe(kind === 'in the browser');
	});

	it('give back what was put in, in its order', async () => {
		const records = await open();
		await records.begin(header('a'));
		for (let seq = 0; seq < 12; seq++)
			expect(await records.append('a', seq, { seq }, header('a'))).toEqual({ kept: true });
		const stored = await records.load('a');
		expect(stored?.entries).toEqual(Array.from({ length: 12 }, (_, seq) => ({ seq })));
		expect(stored?.header.head).toEqual({ seed: 7 });
	});

	it('never write over an entry: the same number again is refused, and the first stays', async () => {
		const records = await open();
		await records.begin(header('a'));
		await records.append('a', 0, 'first', header('a'));
		const again = await records.append('a', 0, 'second', header('a', { where: 'lost' }));
		expect(again).toEqual({ kept: false, because: 'elsewhere' });
		const stored = await records.load('a');
		expect(stored?.entries).toEqual(['first']);
		expect(stored?.header.where).toBe('sample');
	});

	it('do not begin the same run twice', async () => {
		const records = await open();
		await records.begin(header('a'));
		expect(await records.begin(header('a', { where: 'other' }))).toEqual({
			kept: false,
			because: 'elsewhere'
		});
	});

	it('list runs newest first, and those that were left', async () => {
		const records = await open();
		await records.begin(header('old', { changedAtEpochMs: 1 }));
		await records.begin(header('new', { changedAtEpochMs: 3, state: 'finished' }));
		await records.begin(header('middle', { changedAtEpochMs: 2 }));
		expect((await records.list()).map(({ id }) => id)).toEqual(['new', 'middle', 'old']);
		expect((await records.unfinished()).map(({ id }) => id)).toEqual(['middle', 'old']);
	});

	it('move a run up when it goes on', async () => {
		const records = await open();
		await records.begin(header('a', { changedAtEpochMs: 1 }));
		await records.begin(header('b', { changedAtEpochMs: 2 }));
		await records.append('a', 0, {}, header('a', { changedAtEpochMs: 9, where: 'drop' }));
		expect((await records.list())[0]).toMatchObject({ id: 'a', where: 'drop' });
	});

	it('remove a run with its entries, and no other', async () => {
		const records = await open();
		for (const id of ['a', 'b']) {
			await records.begin(header(id));
			await records.append(id, 0, id, header(id));
		}
		expect(await records.remove('a')).toEqual({ kept: true });
		expect(await records.load('a')).toBeNull();
		expect((await records.load('b'))?.entries).toEqual(['b']);
	});

	it('know no run that was never begun', async () => {
		expect(await (await open()).load('nobody')).toBeNull();
	});
});

describe('two windows on the same run', () => {
	it('meet at the entry that both would add: the second is told, and nothing is lost', async () => {
		const [here, there] = [await openRuns(name), await openRuns(name)];
		await here.begin(header('a'));
		await here.append('a', 0, 'before', header('a'));
		expect((await there.load('a'))?.entries).toEqual(['before']);
		const [one, other] = await Promise.all([
			here.append('a', 1, 'mine', header('a')),
			there.append('a', 1, 'yours', header('a'))
		]);
		expect([one, other].filter(({ kept }) => kept)).toHaveLength(1);
		expect([one, other]).toContainEqual({ kept: false, because: 'elsewhere' });
		expect((await here.load('a'))?.entries).toHaveLength(2);
	});
});

describe('when storage fails', () => {
	it('and is not there at all, work goes on in memory', async () => {
		vi.spyOn(Dexie.dependencies, 'indexedDB', 'get').mockReturnValue(undefined as never);
		const records = await openRuns(name);
		expect(records.isLasting).toBe(false);
		expect(await records.begin(header('a'))).toEqual({ kept: true });
	});

	it('and is full, the write says so in words and the records no longer claim to last', async () => {
		const records = await openRuns(name);
		await records.begin(header('a'));
		vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
			throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
		});
		expect(await records.append('a', 0, {}, header('a'))).toMatchObject({
			kept: false,
			because: 'storage',
			detail: expect.stringContaining('quota') as string
		});
		expect(records.isLasting).toBe(false);
	});

	it('and cannot be read while the page is open, nothing is thrown', async () => {
		const records = await openRuns(name);
		await records.begin(header('a'));
		const fail = () => {
			throw new DOMException('The disk does not answer.', 'UnknownError');
		};
		vi.spyOn(IDBIndex.prototype, 'getAll').mockImplementation(fail);
		vi.spyOn(IDBObjectStore.prototype, 'get').mockImplementation(fail);
		expect(await records.list()).toEqual([]);
		expect(await records.load('a')).toBeNull();
		expect(records.isLasting).toBe(false);
	});
});
