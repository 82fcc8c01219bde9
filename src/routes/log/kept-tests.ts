import {
	analyteName,
	analytesGiving,
	houseKits,
	unitName,
	type Analyte,
	type Unit
} from '$lib/kits';
import { isOfTank, summaryFor, type TestSummary } from '$lib/observation';
import type { KitRow, Records, TestHeader, TestPoint } from '$lib/records';
import { inUnit, shownIn } from '$lib/ui/log/in-unit';
import type { LogRow } from '$lib/ui/log/LogRows.svelte';
import type { PicturePoint } from '$lib/ui/log/picture';
import { waterNames } from '$lib/ui/test/before/before-words';
import { isAnalyte, readFirst, soundSummary } from '../sound-summary';

/** So many rows at a time. */
export const PAGE = 100;

const DAY = 86_400_000;
/** How much of the past a picture shows. */
export const windows = [
	{ id: 'quarter', name: '3 months', ms: 92 * DAY },
	{ id: 'year', name: 'a year', ms: 366 * DAY },
	{ id: 'all', name: 'all', ms: Infinity }
] as const;
export type WindowId = (typeof windows)[number]['id'];

/** The shortest window in which the newest tests make a picture of at least five, or of all there are. */
export function windowFor(newestFirst: readonly number[], total: number): WindowId {
	const [newest = 0] = newestFirst;
	const enough = Math.min(5, total);
	const fits = windows.find(
		({ ms }) => newestFirst.filter((at) => newest - at <= ms).length >= enough
	);
	return fits?.id ?? 'all';
}

/** Whether a header can be listed as it stands; else the test is shown as unreadable. */
export function isHeaderSound(header: TestHeader): boolean {
	return (
		Number.isFinite(header.startedAtEpochMs) &&
		typeof header.kitId === 'string' &&
		isAnalyte(header.analyte) &&
		(header.summary === null || soundSummary(header.summary, header.analyte) !== null)
	);
}

/** Names of kits by their ids: as the newest leaflet has them, and those that come with the project. */
export function kitNamesOf(rows: readonly KitRow[]): Map<string, string> {
	const names = new Map(houseKits.map(({ id, name }) => [id, name]));
	for (const { kitId, kit } of rows) {
		const { name } = (kit ?? {}) as { name?: unknown };
		if (typeof name === 'string') names.set(kitId, name);
	}
	return names;
}

/** What a test says of an analyte, where it can be read and says something of it. */
export function summaryOfHeader(
	{ summary: stored, analyte: measured }: Pick<TestHeader, 'summary' | 'analyte'>,
	asked: Analyte
): TestSummary | null {
	const summary = soundSummary(stored, measured);
	return summary && summaryFor(summary, measured, asked);
}

/** Analytes of which these tests say something, in the order of the log. */
export function analytesIn(
	headers: readonly Pick<TestHeader, 'summary' | 'analyte'>[],
	order: readonly Analyte[]
): Analyte[] {
	return order.filter((analyte) =>
		headers.some(
			(header) => header.analyte === analyte || summaryOfHeader(header, analyte) !== null
		)
	);
}

/** A test as a row of the list. */
export function rowOf(
	header: TestHeader,
	{
		names,
		unitOf,
		hrefOf
	}: {
		names: Map<string, string>;
		unitOf: (analyte: Analyte) => Unit;
		hrefOf: (id: string) => string;
	}
): LogRow {
	const measured = header.analyte as Analyte;
	const whole = soundSummary(header.summary, measured);
	const read = whole ? readFirst(whole, measured) : measured;
	const summary = whole && (summaryFor(whole, measured, read) ?? whole);
	const shownUnit = unitOf(read);
	const marks = [
		whole?.difference?.isAssumed && 'by an assumed value',
		header.state === 'unfinished' && `unfinished: ${header.where}`,
		summary?.water && summary.water !== 'tank' && waterNames[summary.water],
		summary?.isSuspect && 'doubtful',
		summary?.valuedAnewByVersion !== undefined && 'from a corrected leaflet',
		header.origin?.because === 'diverged' && 'kept apart by an import',
		header.origin?.because === 'damaged' && 'saved from a damaged record'
	];
	return {
		id: header.id,
		href: hrefOf(header.id),
		at: header.startedAtEpochMs,
		shown: summary && shownIn(summary, shownUnit, read),
		unitName: unitName(shownUnit, read),
		analyteName: analyteName(read, 'start'),
		kitName: names.get(header.kitId) ?? 'A kit that is gone',
		tester: summary?.tester ?? null,
		...(whole && read !== measured
			? { beside: wholeWords(whole, measured, unitOf(measured)) }
			: {}),
		marks: marks.filter((mark): mark is string => typeof mark === 'string'),
		isSure: summary !== null && !summary.isSuspect
	};
}

/** The whole that something was taken off: 'calcium and magnesium together 63.6 ± 1.9 mmol/L'. */
function wholeWords(summary: TestSummary, analyte: Analyte, unit: Unit): string {
	const { value, band } = shownIn(summary, unit, analyte);
	return `${analyteName(analyte)} ${value} ± ${band} ${unitName(unit, analyte)}`;
}

/** Tests of the tank as points of a picture, in its unit; those without a value are left out. */
export function picturePoints(
	points: readonly TestPoint[],
	unit: Unit,
	analyte: Analyte
): PicturePoint[] {
	return points.flatMap(({ id, startedAtEpochMs, summary: stored }): PicturePoint[] => {
		const summary = soundSummary(stored, analyte);
		if (!summary || !isOfTank(summary)) return [];
		return [
			{
				id,
				at: startedAtEpochMs,
				...inUnit(summary, unit, analyte),
				isSuspect: summary.isSuspect,
				isDosed: summary.dosed !== undefined
			}
		];
	});
}

/** What the log page shows first: the newest page, what was left, what was removed. */
export async function openLog(records: Records) {
	const [total, newest, unfinished, removedTotal, removed] = await Promise.all([
		records.tests.count(),
		records.tests.list({ limit: PAGE }),
		records.tests.unfinished(),
		records.tests.count({ state: 'removed' }),
		records.tests.list({ state: 'removed', limit: PAGE })
	]);
	return { total, newest, unfinished, removedTotal, removed };
}

/**
 * Points of one analyte in a window that ends with its newest test: its own tests, and those of others
 * that say something of it by difference. Each holds what its test says of this analyte.
 */
export async function pointsIn(
	records: Records,
	analyte: Analyte,
	window: WindowId
): Promise<TestPoint[]> {
	const sources = analytesGiving(analyte);
	const newest = await Promise.all(sources.map((source) => newestOf(records, source, analyte)));
	const to = Math.max(...newest);
	if (!Number.isFinite(to)) return [];
	const span = windows.find(({ id }) => id === window)?.ms ?? Infinity;
	const from = span === Infinity ? 0 : to - span;
	const found = await Promise.all(
		sources.map(async (source) =>
			(await records.tests.points({ analyte: source, from, to })).flatMap((point): TestPoint[] => {
				const summary = summaryOfHeader({ ...point, analyte: source }, analyte);
				// A test of its own without a value stands for itself; another says nothing then.
				return summary || source === analyte ? [{ ...point, summary }] : [];
			})
		)
	);
	return found.flat().sort((a, b) => a.startedAtEpochMs - b.startedAtEpochMs);
}

/** When the newest test of a source was that says something of an analyte; −Infinity without one. */
async function newestOf(records: Records, source: Analyte, analyte: Analyte): Promise<number> {
	// A damaged time may sort before all others, and something may have been taken off few of them.
	const limit = source === analyte ? 10 : 200;
	const listed = await records.tests.list({ analyte: source, limit });
	const newest = listed.find(
		(header) =>
			Number.isFinite(header.startedAtEpochMs) &&
			(source === analyte || summaryOfHeader(header, analyte) !== null)
	);
	return newest?.startedAtEpochMs ?? -Infinity;
}
