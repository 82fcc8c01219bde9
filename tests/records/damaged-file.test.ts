import 'fake-indexeddb/auto';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadTestLog, type TestLog } from '../../src/lib/procedure';
import { exportOne, importRecords, openRecords, type Records } from '../../src/lib/records';
import { fell, kitRow, readers, said, testLog } from './made';

let names = 0;
const empty = () => openRecords(`damaged-${names++}`);
const logs = ['a', 'b', 'c', 'd'].map((id, i) =>
	testLog(id, [
		...Array.from({ length: i + 1 }, (_, n) => fell(`${id}${n}`)),
		said('z', 'test.closed')
	])
);

/** The file of these tests, one on each line as the export writes it. */
function fileOf(of: readonly unknown[]): string {
	const mark = '{"log":{}}';
	return exportOne({}, 0).replace(mark, () => of.map((log) => JSON.stringify({ log })).join(',\n'));
}
const file = fileOf(logs);
async function taken(text: string): Promise<{
	records: Records;
	damaged: { where: string; problem: string; raw: unknown }[];
	added: number;
}> {
	const records = await empty();
	return { records, ...(await importRecords(text, records, readers)) };
}
async function logsIn(records: Records): Promise<TestLog[]> {
	const stored = await records.tests.loadMany(await records.tests.ids());
	return stored.map(({ header, entries }) => loadTestLog({ ...(header.head as object), entries }));
}
const words = ({ entries, kit }: TestLog) => JSON.stringify([entries, kit]);

describe('one thing that is damaged', () => {
	test('an entry: named by its path, the rest of the test is kept beside and says so', async () => {
		const [a, b] = [logs[2]!, logs[3]!];
		const entries: unknown[] = [...b.entries];
		entries[3] = { ...b.entries[3], at: 'noon' };
		const { records, damaged } = await taken(fileOf([a, { ...b, entries }]));
		expect(damaged).toEqual([
			{
				where: 'tests.1 (id d)',
				problem: expect.stringMatching(/^the test is damaged at entries\.3/) as string,
				raw: entries[3]
			}
		]);
		const [whole, rescued] = await logsIn(records);
		expect(whole).toEqual(a);
		expect(rescued!.entries).toEqual(b.entries.filter((_, i) => i !== 3));
		expect((await records.tests.load(rescued!.id))?.header.origin).toEqual({
			of: 'd',
			because: 'damaged'
		});
	});
	test('an entry of a test that is here already: nothing is added', async () => {
		const b = logs[3]!;
		const { records } = await taken(file);
		const entries = b.entries.map((entry, i) => (i === 1 ? null : entry));
		const report = await importRecords(fileOf([{ ...b, entries }]), records, readers);
		expect(report).toMatchObject({ added: 0, already: 1, damaged: [{ raw: null }] });
		// And the other way round: the whole one comes after the damaged one.
		const other = await taken(fileOf([{ ...b, entries }]));
		await importRecords(fileOf([b]), other.records, readers);
		expect((await logsIn(other.records)).map(words)).toContain(words(b));
	});
	test('several entries of several tests are all named', async () => {
		const broken = logs.map((log) => ({ ...log, entries: [7, ...log.entries, 'x'] }));
		const { damaged, added } = await taken(fileOf(broken));
		expect(damaged).toHaveLength(8);
		expect(added).toBe(4);
		expect(damaged[1]!.problem).toContain('entries.3');
	});
	test('a leaflet: without it nothing of the test can be read, and it stands in the report', async () => {
		const broken = { ...logs[0]!, kit: { ...logs[0]!.kit, name: 3 } };
		const { damaged, records } = await taken(fileOf([broken, logs[1]]));
		expect(damaged).toEqual([
			{
				where: 'tests.0 (id a)',
				problem: 'the test is damaged at kit.name: expected string; found 3',
				raw: broken
			}
		]);
		expect(await logsIn(records)).toEqual([logs[1]]);
	});
	test.each([
		['null', null],
		['a number', 5],
		['a text', 'x'],
		['an empty list', []],
		['nothing in it', {}],
		['no log', { log: null }]
	])('an item that is %s', async (_, raw) => {
		const top = JSON.parse(file) as { tests: unknown[] };
		top.tests.splice(2, 0, raw);
		const { damaged, records } = await taken(JSON.stringify(top));
		expect(damaged.map(({ where }) => where)).toEqual(['tests.2']);
		expect(await logsIn(records)).toEqual(logs);
	});
	test('a kit', async () => {
		const top = {
			...(JSON.parse(file) as object),
			kits: [{ ...kitRow('mine', 1, 'x'), version: '1' }, kitRow('mine', 2, 'y')]
		};
		const { damaged, records } = await taken(JSON.stringify(top));
		expect(damaged[0]).toMatchObject({
			where: 'kits.0 (kit mine)',
			problem: 'the version of a kit is damaged at version: expected number; found "1"'
		});
		expect(await records.kits.all()).toHaveLength(1);
	});
	test('a list that is none', async () => {
		const { damaged, records } = await taken(
			JSON.stringify({ ...(JSON.parse(file) as object), runs: 'none' })
		);
		expect(damaged).toEqual([{ where: 'runs', problem: 'expected a list', raw: 'none' }]);
		expect(await logsIn(records)).toEqual(logs);
	});
});

describe('the text of the file', () => {
	test('cut off anywhere: whole items before the break are there, and it says so', () =>
		fc.assert(
			fc.asyncProperty(fc.integer({ min: 60, max: file.length - 10 }), async (at) => {
				const text = file.slice(0, at);
				const { records, damaged } = await taken(text);
				const whole = logs.filter((log) => text.includes(JSON.stringify({ log })));
				expect(await logsIn(records)).toEqual(whole);
				expect(damaged.some(({ where }) => where === 'the end of the file')).toBe(true);
			}),
			{ numRuns: 60 }
		));
	test('cut off in the middle of a test: that one is named', async () => {
		const at = file.indexOf('"id":"c"') + 40;
		const { damaged } = await taken(file.slice(0, at));
		expect(damaged[0]).toMatchObject({
			where: 'tests.2',
			problem: 'the file ends in the middle of it'
		});
		expect(damaged[1]!.problem).toBe('the file is cut short: what came after tests.1 is missing');
	});
	test('damaged anywhere below its first line: no undamaged test is lost', () =>
		fc.assert(
			fc.asyncProperty(
				fc.double({ min: 0, max: 1, noNaN: true }),
				fc.integer({ min: 1, max: 60 }),
				fc.oneof(
					fc.string({ maxLength: 60 }),
					fc.constantFrom('', '"', '\\', '\n', '{', ']}', '},\n{')
				),
				async (place, length, junk) => {
					const from = file.indexOf('\n') + 1;
					const at = from + Math.floor(place * (file.length - from));
					const text = file.slice(0, at) + junk + file.slice(at + length);
					const { records } = await taken(text);
					const stored = (await logsIn(records)).map(words);
					for (const log of logs) {
						const start = file.indexOf(JSON.stringify({ log }));
						const end = start + JSON.stringify({ log }).length;
						const isUntouched = at >= end || at + length <= start;
						if (isUntouched) expect(stored).toContain(words(log));
					}
				}
			),
			{ numRuns: 300 }
		));
	test('a byte order mark and other ends of lines', async () => {
		const { records, damaged } = await taken(`\uFEFF${file.replaceAll('\n', '\r\n')}`);
		expect(damaged).toEqual([]);
		expect(await logsIn(records)).toEqual(logs);
		const cut = `\uFEFF${file.replaceAll('\n', '\r\n').slice(0, -6)}`;
		expect(await logsIn((await taken(cut)).records)).toEqual(logs);
	});
	test.each([
		['', 'the file is empty'],
		['  \n', 'the file is empty'],
		['Dear diary', 'the file holds no records of Halfdrop: expected JSON as exported here'],
		['{"halfdrop"', 'the file holds no records of Halfdrop'],
		['[1, 2]', 'the file holds no records of Halfdrop'],
		['null', 'the file holds no records of Halfdrop'],
		['{"some":"other"}', 'the file holds no records of Halfdrop'],
		['{"halfdrop":"records","format":3,"tests":[]}', 'format must be at most 2; found 3'],
		['{"halfdrop":"records","format":9,\n"tests":[', 'format must be at most 2; found 9']
	])('%j is refused in words', async (text, said) => {
		await expect(taken(text)).rejects.toThrow(said);
		await expect(taken(text)).rejects.toBeInstanceOf(RangeError);
	});
	test('an empty file of records is no fault', async () => {
		expect(await taken('{"halfdrop":"records","format":1,"tests":[]}')).toMatchObject({
			added: 0,
			damaged: []
		});
	});
});
