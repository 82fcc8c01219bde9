import { houseKits, unitName, type Analyte, type Unit } from '$lib/kits';
import { isOfTank } from '$lib/observation';
import type { KitRow, Records, TestHeader, TestPoint } from '$lib/records';
import { inUnit, shownIn } from '$lib/ui/log/in-unit';
import type { LogRow } from '$lib/ui/log/LogRows.svelte';
import type { PicturePoint } from '$lib/ui/log/picture';
import { waterNames } from '$lib/ui/test/before/before-words';
import { soundSummary, unitFor } from '../sound-summary';

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
		(header.summary === null || soundSummary(header.summary) !== null)
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

/** A test as a row of the list. */
export function rowOf(
	header: TestHeader,
	{
		names,
		unit,
		hrefOf
	}: { names: Map<string, string>; unit: Unit; hrefOf: (id: string) => string }
): LogRow {
	const summary = soundSummary(header.summary);
	const shownUnit = unitFor(header.analyte as Analyte, unit);
	const marks = [
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
		shown: summary && shownIn(summary, shownUnit),
		unitName: unitName(shownUnit),
		kitName: names.get(header.kitId) ?? 'A kit that is gone',
		tester: summary?.tester ?? null,
		marks: marks.filter((mark): mark is string => typeof mark === 'string'),
		isSure: summary !== null && !summary.isSuspect
	};
}

/** Tests of the tank as points of a picture, in its unit; those without a value are left out. */
export function picturePoints(points: readonly TestPoint[], unit: Unit): PicturePoint[] {
	return points.flatMap(({ id, startedAtEpochMs, summary: stored }): PicturePoint[] => {
		const summary = soundSummary(stored);
		if (!summary || !isOfTank(summary)) return [];
		return [
			{
				id,
				at: startedAtEpochMs,
				...inUnit(summary, unit),
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

/** Points of one analyte in a window that ends with its newest test. */
export async function pointsIn(
	records: Records,
	analyte: Analyte,
	window: WindowId
): Promise<TestPoint[]> {
	// A damaged time may sort before all others.
	const listed = await records.tests.list({ analyte, limit: 10 });
	const newest = listed.find(({ startedAtEpochMs }) => Number.isFinite(startedAtEpochMs));
	if (!newest) return [];
	const to = newest.startedAtEpochMs;
	const span = windows.find(({ id }) => id === window)?.ms ?? Infinity;
	const from = span === Infinity ? 0 : to - span;
	return records.tests.points({ analyte, from, to });
}
