import 'fake-indexeddb/auto';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadCheckLog, replayCheck, type CheckEntry, type CheckLog } from '../../src/lib/procedure';
import {
	exportOne,
	exportOneCheck,
	exportRecords,
	importRecords,
	openRecords,
	type Records
} from '../../src/lib/records';
import {
	answered,
	checkHeader,
	checkLog,
	fell,
	readers,
	readingInQuestion,
	said,
	testLog,
	told
} from './made';

let names = 0;
const empty = () => openRecords(`checks-transfer-${names++}`);
const take = (text: string, records: Records) => importRecords(text, records, readers);

/** A file in which these checks stand, one on each line as the export writes it. */
function fileOf(logs: readonly unknown[]): string {
	const mark = '{"log":{}}';
	const lines = logs.map((log) => JSON.stringify({ log })).join(',\n');
	return exportOneCheck({}, 0).replace(mark, () => lines);
}
async function logsIn(records: Records): Promise<CheckLog[]> {
	const stored = await records.checks.loadMany(await records.checks.ids());
	return stored.map(({ header, entries }) => loadCheckLog({ ...(header.head as object), entries }));
}
const contents = async (records: Records) =>
	(await logsIn(records))
		.map(({ id, entries }) => `${id.split('~')[0]}: ${entries.map((entry) => entry.id).join(' ')}`)
		.sort();

const first = told('q', { type: 'evidence.given', evidence: readingInQuestion(7.1) });
const closed = told('z', { type: 'check.closed' });
const undone: CheckEntry = { id: 'u', at: 2500, undoes: 'q' };

/** Checks of few ids and few different entries, so that ids meet and beginnings are shared. */
const someChecks = fc.array(
	fc
		.record({
			id: fc.constantFrom('a', 'b'),
			kit: fc.constantFrom(undefined, null),
			entries: fc.array(
				fc.constantFrom(first, told('x', answered('light', 'white')), undone, closed),
				{ maxLength: 4 }
			)
		})
		.map(({ id, kit, entries }) =>
			checkLog(
				id,
				entries.map((entry, i) => ({ ...entry, id: `${entry.id}${i}` })),
				kit
			)
		),
	{ maxLength: 6 }
);
async function filled(logs: readonly CheckLog[]): Promise<Records> {
	const records = await empty();
	await take(fileOf(logs), records);
	return records;
}

describe('checks to a file and back', () => {
	test('are there again with their headers; a second time adds nothing', async () => {
		const [one, other] = [await empty(), await empty()];
		const whole = checkHeader('a', {
			where: 'done',
			summary: { value: 7.1, unit: 'dKH', expandedUncertainty: 0.5, verdict: 'leave' }
		});
		await one.checks.begin(whole);
		await one.checks.appendAll('a', 0, [first, closed], { ...whole, changedAtEpochMs: 4000 });
		const bare = { ...checkLog('n', [], null), entries: undefined };
		await one.checks.begin({
			...checkHeader('n', { kitId: null, state: 'removed', where: 'no reading yet' }),
			head: bare
		});
		await one.checks.append(
			'n',
			0,
			told('r', { type: 'check.removed' }),
			checkHeader('n', { kitId: null, state: 'removed', where: 'no reading yet' })
		);
		const text = await exportRecords(one, 123);
		expect(await take(text, other)).toMatchObject({ added: 2, damaged: [], refused: [] });
		for (const id of ['a', 'n']) {
			const { header, entries } = (await one.checks.load(id))!;
			expect(await other.checks.load(id)).toMatchObject({
				header: JSON.parse(JSON.stringify(header)) as object,
				entries
			});
		}
		expect((await other.checks.load('a'))?.header.summary?.verdict).toBe('leave');
		expect(await exportRecords(other, 123)).toBe(text);
		expect(await take(text, other)).toMatchObject({ added: 0, grown: 0, already: 2 });
	});
	test('any of them: the same again, played to the same state', () =>
		fc.assert(
			fc.asyncProperty(someChecks, async (logs) => {
				const one = await filled(logs);
				const text = await exportRecords(one, 0);
				const other = await empty();
				await take(text, other);
				expect(await logsIn(other)).toEqual(await logsIn(one));
				expect((await logsIn(other)).map(replayCheck)).toEqual(
					(await logsIn(one)).map(replayCheck)
				);
				expect(await take(text, other)).toMatchObject({ added: 0, grown: 0 });
			}),
			{ numRuns: 40 }
		));
	test('from two devices: the order does not matter, and nothing is lost', () =>
		fc.assert(
			fc.asyncProperty(someChecks, someChecks, async (some, others) => {
				const [here, there] = [await filled(some), await filled(others)];
				const [a, b] = [await exportRecords(here, 0), await exportRecords(there, 0)];
				await take(b, here);
				await take(a, there);
				const stored = await contents(here);
				expect(stored).toEqual(await contents(there));
				for (const { id, entries } of [...some, ...others]) {
					const words = `${id}: ${entries.map((entry) => entry.id).join(' ')}`;
					expect(stored.some((each) => `${each} `.startsWith(words.trim()))).toBe(true);
				}
			}),
			{ numRuns: 40 }
		));
	test('one that went on elsewhere grows here, and its header says how it stands', async () => {
		const records = await filled([checkLog('a', [first])]);
		expect((await records.checks.unfinished()).map(({ id }) => id)).toEqual(['a']);
		expect(await take(fileOf([checkLog('a', [first, closed])]), records)).toMatchObject({
			added: 0,
			grown: 1
		});
		expect((await records.checks.list()).map(({ id, summary }) => [id, summary?.value])).toEqual([
			['a', 7.1]
		]);
	});
	test('two that went different ways both stay, and the newcomer says so', async () => {
		const records = await filled([checkLog('a', [first, closed])]);
		const report = await take(fileOf([checkLog('a', [first, undone])]), records);
		expect(report.keptApart).toMatchObject([{ where: 'checks.0', of: 'a', because: 'diverged' }]);
		const apart = await records.checks.load(report.keptApart[0]!.id);
		expect(apart?.header.origin).toEqual({ of: 'a', because: 'diverged' });
	});
	test('advice of another sort than is known here is left out, the value stays', async () => {
		const records = await empty();
		const item = { log: checkLog('a', [first]), summary: { value: 9, verdict: 'dose at once' } };
		const text = JSON.stringify({ halfdrop: 'records', format: 2, checks: [item] });
		await take(text, records);
		expect((await records.checks.load('a'))?.header.summary).toEqual({
			value: 7.1,
			unit: 'dKH',
			expandedUncertainty: 0.5
		});
	});
});

describe('files of the first form', () => {
	test('are read as they are', async () => {
		const records = await empty();
		const test = testLog('t', [fell('e0'), said('e1', 'test.closed')]);
		const text = JSON.stringify({
			halfdrop: 'records',
			format: 1,
			exportedAtEpochMs: 5,
			kits: [],
			tests: [{ log: test }],
			runs: []
		});
		expect(await take(text, records)).toMatchObject({ added: 1, damaged: [] });
		expect((await records.tests.list()).map(({ id }) => id)).toEqual(['t']);
		expect(await records.checks.ids()).toEqual([]);
	});
	test('and those of the second say that they are', () => {
		expect(JSON.parse(exportOneCheck(checkLog('a'), 0))).toMatchObject({
			halfdrop: 'records',
			format: 2,
			tests: [],
			checks: [{ log: { id: 'a' } }]
		});
		expect(JSON.parse(exportOne(testLog('t'), 0))).toMatchObject({ format: 2, checks: [] });
	});
});

describe('a damaged check', () => {
	const logs = ['a', 'b', 'c'].map((id) =>
		checkLog(id, [first, told(`${id}1`, answered('light', 'white')), closed])
	);
	test('loses the damaged entry, which is named, and is kept beside', async () => {
		const [, b] = logs;
		const broken = {
			...b!,
			entries: b!.entries.map((e, i) => (i === 1 ? { ...e, at: 'noon' } : e))
		};
		const records = await empty();
		const report = await take(fileOf([logs[0], broken, logs[2]]), records);
		expect(report.damaged).toMatchObject([
			{
				where: 'checks.1 (id b)',
				problem: expect.stringMatching(/^the check is damaged at entries\.1/) as string
			}
		]);
		const rescued = (await logsIn(records)).find(({ id }) => id.startsWith('b~'));
		expect(rescued?.entries).toEqual([b!.entries[0], b!.entries[2]]);
		expect(await contents(records)).toContain('a: q a1 z');
	});
	test('without what says what it is about stands in the report as a check', async () => {
		const { analyte: _, ...headless } = logs[0]!;
		const records = await empty();
		const report = await take(fileOf([headless, logs[1]]), records);
		expect(report.damaged).toMatchObject([
			{
				where: 'checks.0 (id a)',
				problem: expect.stringMatching(/^the check is damaged at analyte/) as string
			}
		]);
		expect(await contents(records)).toEqual(['b: q b1 z']);
	});
	test('in a file that is damaged anywhere below its first line: no other is lost', () => {
		const file = fileOf(logs);
		return fc.assert(
			fc.asyncProperty(
				fc.double({ min: 0, max: 1, noNaN: true }),
				fc.integer({ min: 1, max: 60 }),
				fc.constantFrom('', '"', '\\', '\n', '{', ']}', '},\n{'),
				async (place, length, junk) => {
					const from = file.indexOf('\n') + 1;
					const at = from + Math.floor(place * (file.length - from));
					const records = await empty();
					await take(file.slice(0, at) + junk + file.slice(at + length), records);
					const stored = await logsIn(records);
					for (const log of logs) {
						const text = JSON.stringify({ log });
						const start = file.indexOf(text);
						const isUntouched = at >= start + text.length || at + length <= start;
						const alike = stored.map(({ entries }) => JSON.stringify(entries));
						if (isUntouched) expect(alike).toContain(JSON.stringify(log.entries));
					}
				}
			),
			{ numRuns: 150 }
		);
	});
	test('that is stored goes into the file as it stands', async () => {
		const records = await empty();
		await records.checks.begin(checkHeader('a'));
		await records.checks.append('a', 0, { nonsense: true }, checkHeader('a'));
		expect(await exportRecords(records, 0)).toContain('{"nonsense":true}');
	});
});
