// @vitest-environment node
// The stand-in for IndexedDB takes no keys of another realm, and jsdom makes one.
import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { houseSyringeKit, unitsOf, type Analyte } from '$lib/kits';
import type { TestSummary } from '$lib/observation';
import { openRecords, type Records, type TestHeader, type TestPoint } from '$lib/records';
import { unitsShown } from '$lib/ui/state';
import {
	analytesIn,
	isHeaderSound,
	kitNamesOf,
	openLog,
	PAGE,
	picturePoints,
	pointsIn,
	rowOf,
	summaryOfHeader,
	windowFor
} from '../../src/routes/log/kept-tests';
import { rateSentence } from '../../src/routes/log/rate';
import { unreadableAmong } from '../../src/routes/log/unreadable';
import { homeReadings } from '../../src/routes/home-readings';

const DAY = 86_400_000;
const start = Date.UTC(2026, 0, 5, 18);
const summary = (value: number, more: Partial<TestSummary> = {}): TestSummary => ({
	value,
	unit: 'dKH',
	standardUncertainty: 0.2,
	expandedUncertainty: 0.4,
	repeatabilitySd: 0.1,
	values: [value],
	sampleVolumeMl: 4,
	isSuspect: false,
	...more
});
const header = (day: number, more: Partial<TestHeader> = {}): TestHeader => ({
	id: `t${String(day).padStart(5, '0')}`,
	kitId: houseSyringeKit.id,
	analyte: 'alkalinity',
	startedAtEpochMs: start + day * DAY,
	changedAtEpochMs: start + day * DAY,
	state: 'kept',
	where: 'done',
	summary: summary(8 - day / 100),
	...more
});
const headOf = ({ id, startedAtEpochMs }: TestHeader) => ({
	format: 1,
	id,
	startedAtEpochMs,
	kit: houseSyringeKit,
	kitVersion: 0
});

let opened = 0;
async function recordsOf(
	headers: readonly TestHeader[],
	entries: unknown[] = []
): Promise<Records> {
	const records = await openRecords(`log-page-${opened++}`);
	const logs = headers.map((each) => ({ header: { ...each, head: headOf(each) }, entries }));
	expect(await records.tests.addAll(logs)).toEqual({ kept: true });
	return records;
}

describe('the log page', () => {
	test('opens with the newest page, what was left and what was removed', async () => {
		const kept = Array.from({ length: 250 }, (_, day) => header(day));
		const records = await recordsOf([
			...kept,
			header(300, { state: 'unfinished', where: 'step 5, swirl', summary: null }),
			header(20.5, { state: 'removed' })
		]);
		const log = await openLog(records);
		expect(log.total).toBe(250);
		expect(log.newest).toHaveLength(PAGE);
		expect(log.newest[0]?.id).toBe('t00249');
		expect(log.unfinished.map(({ where }) => where)).toEqual(['step 5, swirl']);
		expect(log.removed).toHaveLength(1);
	});

	test('a picture reads its window, up to the newest test, and no further', async () => {
		const records = await recordsOf([0, 100, 180, 190, 200].map((day) => header(day)));
		const found = await pointsIn(records, 'alkalinity', 'quarter');
		expect(found.map(({ startedAtEpochMs }) => (startedAtEpochMs - start) / DAY)).toEqual([
			180, 190, 200
		]);
		expect(await pointsIn(records, 'alkalinity', 'all')).toHaveLength(5);
	});

	test('a test whose time is damaged spoils neither the picture nor the first page', async () => {
		const damaged = header(250, { startedAtEpochMs: 'yesterday' as never });
		const records = await recordsOf([header(190), header(200), damaged]);
		const found = await pointsIn(records, 'alkalinity', 'all');
		expect(found.map(({ id }) => id)).toEqual([header(190).id, header(200).id]);
		const lines = homeReadings([damaged, header(200)], () => 'dKH', start + 201 * DAY);
		expect(lines.map(({ id }) => id)).toEqual([header(200).id]);
	});

	test('the first window is the shortest that shows five tests, or all there are', () => {
		const days = (...ago: number[]) => ago.map((each) => start - each * DAY);
		expect(windowFor(days(0, 7, 14, 21, 28, 300), 6)).toBe('quarter');
		expect(windowFor(days(0, 60, 120, 180, 240), 5)).toBe('year');
		expect(windowFor(days(0, 400, 800), 3)).toBe('all');
		expect(windowFor(days(0), 1)).toBe('quarter');
	});

	test('a row is told in the chosen unit, with what should be known of it', () => {
		const words = {
			names: kitNamesOf([]),
			unitOf: () => 'meq/L' as const,
			hrefOf: (id: string) => id
		};
		const row = rowOf(
			header(0, {
				summary: summary(8, { isSuspect: true, valuedAnewByVersion: 2, tester: 'Ada' })
			}),
			words
		);
		// 8 dKH × 0.3566 meq/L per dKH = 2.85; 1 dKH is 10 mg of CaO in a litre (Höll 1986, from memory).
		expect(row.shown).toEqual({ value: '2.85', band: '0.14' });
		expect(row.marks).toEqual(['doubtful', 'from a corrected leaflet']);
		const known = header(1, { summary: summary(8, { water: 'reference' }) });
		expect(rowOf(known, words).marks).toEqual(['known solution']);
		expect([row.kitName, row.tester, row.isSure]).toEqual([houseSyringeKit.name, 'Ada', false]);
	});

	describe('of both together, with calcium taken off', () => {
		const both = (day: number, magnesium: number | null, more: Partial<TestSummary> = {}) =>
			header(day, {
				analyte: 'hardness',
				summary: {
					...summary(63.6, { unit: 'mmol/L', expandedUncertainty: 1.9 }),
					...(magnesium === null
						? {}
						: {
								difference: {
									analyte: 'magnesium',
									value: magnesium,
									unit: 'mg/L',
									standardUncertainty: 22,
									expandedUncertainty: 45,
									repeatabilitySd: 9,
									isSuspect: false,
									isAssumed: day === 8
								}
							}),
					...more
				}
			});
		const unitOf = (analyte: Analyte) => (analyte === 'hardness' ? 'mmol/L' : 'mg/L');
		const words = { names: kitNamesOf([]), unitOf, hrefOf: (id: string) => id };

		test('magnesium is what a row and the first page show, the whole stands beside it', () => {
			const row = rowOf(both(0, 1295), words);
			expect([row.analyteName, row.shown, row.unitName]).toEqual([
				'Magnesium',
				{ value: '1300', band: '50' },
				'mg/L'
			]);
			expect(row.beside).toBe('calcium and magnesium together 63.6 ± 1.9 mmol/L');
			expect(row.marks).toEqual([]);
			expect(rowOf(both(8, 1295), words).marks).toContain('by an assumed value');
			const plain = rowOf(both(0, null), words);
			expect([plain.analyteName, plain.shown?.value]).toEqual([
				'Calcium and magnesium together',
				'63.6'
			]);
			const [home] = homeReadings([both(0, 1295)], unitOf, start + DAY);
			expect(home).toMatchObject({
				name: 'Magnesium',
				value: '1300',
				band: '50',
				unitName: 'mg/L'
			});
		});

		test('both are drawn; a picture of magnesium takes tests of it and those by difference', async () => {
			const own = header(3, {
				analyte: 'magnesium',
				summary: summary(1310, { unit: 'mg/L', expandedUncertainty: 60 })
			});
			const records = await recordsOf([both(0, 1295), both(1, null), own, both(8, 1330)]);
			const listed = await records.tests.list({});
			expect(analytesIn(listed, ['alkalinity', 'calcium', 'magnesium', 'hardness'])).toEqual([
				'magnesium',
				'hardness'
			]);
			const drawn = picturePoints(
				await pointsIn(records, 'magnesium', 'quarter'),
				'mg/L',
				'magnesium'
			);
			expect(drawn.map(({ value }) => value)).toEqual([1295, 1310, 1330]);
			const together = picturePoints(
				await pointsIn(records, 'hardness', 'quarter'),
				'mmol/L',
				'hardness'
			);
			expect(together.map(({ value }) => value)).toEqual([63.6, 63.6, 63.6]);
			expect(await pointsIn(records, 'calcium', 'all')).toEqual([]);
		});

		test('what storage has spoiled of it is left out alone', () => {
			const spoilt = both(0, Number.NaN);
			expect(isHeaderSound(spoilt)).toBe(true);
			expect(rowOf(spoilt, words).analyteName).toBe('Calcium and magnesium together');
			expect(summaryOfHeader(spoilt, 'magnesium')).toBeNull();
			expect(isHeaderSound(header(0, { analyte: 'gold' }))).toBe(false);
			// Degrees of carbonate hardness are no unit of calcium.
			expect(isHeaderSound(header(0, { analyte: 'calcium' }))).toBe(false);
		});
	});

	test('a kit is called by its newest leaflet', () => {
		const versions = ['Old name', 'New name'].map((name, version) => ({
			kitId: 'mine',
			version,
			savedAtEpochMs: start,
			kind: 'new',
			kit: { name }
		}));
		expect(kitNamesOf(versions).get('mine')).toBe('New name');
	});

	test('a summary that storage has spoiled is not drawn and not trusted', () => {
		const spoilt = header(0, { summary: { ...summary(8), value: 'eight' } as never });
		expect(isHeaderSound(spoilt)).toBe(false);
		expect(picturePoints([spoilt], 'dKH', 'alkalinity')).toEqual([]);
		expect(isHeaderSound(header(0))).toBe(true);
		expect(isHeaderSound(header(0, { summary: null }))).toBe(true);
	});

	test('tests that cannot be read are found without holding up the page', async () => {
		const headers = [header(0), header(1), header(2)];
		const records = await recordsOf(headers.slice(0, 2));
		const torn = headers[2];
		if (!torn) throw new Error('three headers');
		await records.tests.addAll([
			{ header: { ...torn, head: headOf(torn) }, entries: [{ id: 'x', at: 'never' }] }
		]);
		const found: string[] = [];
		await new Promise<void>((resolve) => {
			unreadableAmong(records, headers, ({ id }) => {
				found.push(id);
				resolve();
			});
		});
		expect(found).toEqual(['t00002']);
	});
});

describe('rate per day', () => {
	const points = (
		values: readonly number[],
		more: (i: number) => Partial<TestSummary> = () => ({})
	) =>
		values.map((value, i): TestPoint => ({
			id: `p${i}`,
			kitId: 'one',
			startedAtEpochMs: start + i * DAY,
			summary: summary(value, more(i))
		}));

	test('is the slope with its ±, in the chosen unit', () => {
		// By hand: days 0…6 have a spread of 28; u of the slope = 0.1/√28 = 0.0189, × 1.960 = 0.037.
		const falling = points([8, 7.9, 7.8, 7.7, 7.6, 7.5, 7.4]);
		expect(rateSentence(falling, 'dKH', 'alkalinity')).toBe(
			'On average it fell by 0.10 ± 0.04 dKH per day (95 %), over 7 tests with one kit in 6 days.'
		);
		expect(rateSentence(falling, 'meq/L', 'alkalinity')).toContain(
			'fell by 0.036 ± 0.013 meq/L per day'
		);
	});

	test('within its ± it is said that nothing can be told', () => {
		expect(rateSentence(points([8, 8.1, 7.9, 8, 8.05, 7.95, 8]), 'dKH', 'alkalinity')).toContain(
			'No rise or fall can be told'
		);
	});

	test('is not given for two tests, nor for readings in doubt', () => {
		expect(rateSentence(points([8, 7]), 'dKH', 'alkalinity')).toBeNull();
		expect(
			rateSentence(
				points([8, 7.9, 7.8, 7.7], () => ({ isSuspect: true })),
				'dKH',
				'alkalinity'
			)
		).toBeNull();
	});

	test('is that of the tank: a known solution or a new mix between has no part in it', () => {
		const falling = [8, 7.9, 7.8, 7.7, 7.6, 7.5, 7.4];
		const others = points([3, 12, 20], (i) => ({ water: i === 1 ? 'reference' : 'newMix' }));
		const alone = rateSentence(points(falling), 'dKH', 'alkalinity');
		// Of another kit, and the newest: it does not choose the kit either.
		const last = { ...others[2]!, startedAtEpochMs: start + 20 * DAY, kitId: 'two' };
		const mixed = [...points(falling), ...others.slice(0, 2), last];
		expect(rateSentence(mixed, 'dKH', 'alkalinity')).toBe(alone);
		expect(alone).toContain('fell by 0.10');
		expect(picturePoints(others, 'dKH', 'alkalinity')).toEqual([]);
	});

	test('is not given where no line fits', () => {
		expect(rateSentence(points([8, 9.5, 8, 9.5, 8, 9.5]), 'dKH', 'alkalinity')).toContain(
			'no straight line'
		);
	});
});

test('the settings offer every unit of alkalinity', () => {
	expect([...unitsShown.alkalinity].sort()).toEqual([...unitsOf('alkalinity')].sort());
});
