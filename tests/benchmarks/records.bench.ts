import 'fake-indexeddb/auto';
import Dexie from 'dexie';
import { beforeAll, bench, describe } from 'vitest';
import { openRecords, type Records } from '../../src/lib/records';
import { summary, testHeader } from '../records/made';

// The database is a stand-in in memory: only the ratios mean something.
const many = 5_000;
const day = 86_400_000;
const name = 'records-bench';
let records: Records;
let plain: Dexie;

beforeAll(async () => {
	records = await openRecords(name);
	const logs = Array.from({ length: many }, (_, i) => ({
		header: testHeader(`test-${i}`, {
			startedAtEpochMs: i * day,
			summary: summary(7 + (i % 20) / 10)
		}),
		entries: []
	}));
	await records.tests.addAll(logs);
	plain = await new Dexie(name).open();
}, 120_000);

describe(`the newest hundred of ${many} tests`, () => {
	bench('through the index, so many', async () => {
		await records.tests.list({ analyte: 'alkalinity', limit: 100 });
	});
	bench('all of them, sorted and cut', async () => {
		const all = (await plain.table('tests').toArray()) as { startedAtEpochMs: number }[];
		all.sort((a, b) => b.startedAtEpochMs - a.startedAtEpochMs).slice(0, 100);
	});
});

describe(`a picture of three months of ${many} tests`, () => {
	bench('through the index', async () => {
		const to = many * day;
		await records.tests.points({ analyte: 'alkalinity', from: to - 92 * day, to });
	});
	bench('out of all of them', async () => {
		const all = (await plain.table('tests').toArray()) as { startedAtEpochMs: number }[];
		all.filter(({ startedAtEpochMs }) => startedAtEpochMs >= (many - 92) * day);
	});
});
