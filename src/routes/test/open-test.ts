import {
	convertValue,
	houseKits,
	kitInForce,
	loadKitVersion,
	type Analyte,
	type Kit,
	type KitVersion
} from '$lib/kits';
import { isOfTank, summaryFor, type Circumstances, type TestSummary } from '$lib/observation';
import { loadTestLog, ownScatterOf, replayTest, type TestLog } from '$lib/procedure';
import type { Records, StoredLog, TestHeader } from '$lib/records';
import { TankRun, type Known } from './tank-run.svelte';

/** A kit that a test can be done with, and the version of its leaflet. */
export type KitToTest = { kit: Kit; version: number; isOwn: boolean };

/** Leaflets as stored; one that cannot be read stays stored and is left out here. */
export async function storedKitVersions(records: Records): Promise<KitVersion[]> {
	return (await records.kits.all()).flatMap((row) => {
		try {
			return [loadKitVersion(row)];
		} catch {
			return [];
		}
	});
}

/** The keeper's own kits by name, then the made-up ones. */
export async function kitsToTest(records: Records): Promise<KitToTest[]> {
	const versions = await storedKitVersions(records);
	const ids = [...new Set(versions.map(({ kitId }) => kitId))];
	const own = ids.flatMap((kitId): KitToTest[] => {
		const inForce = kitInForce(versions, kitId);
		return inForce ? [{ kit: inForce.kit, version: inForce.version, isOwn: true }] : [];
	});
	own.sort((a, b) => a.kit.name.localeCompare(b.kit.name));
	return [...own, ...houseKits.map((kit) => ({ kit, version: 0, isOwn: false }))];
}

/** What is known of a kit from the tests before this one. */
export async function knownOf(
	records: Records,
	kit: Kit,
	before: Pick<TestHeader, 'startedAtEpochMs' | 'id'>
): Promise<Known> {
	const headers = await records.tests.list({ analyte: kit.analyte, limit: 200, before });
	const summaries = headers.flatMap(({ kitId, summary }) =>
		kitId === kit.id && summary ? [summary] : []
	);
	const last = summaries.find((summary) => !summary.isSuspect && isOfTank(summary));
	return {
		expected: last ? convertValue(last.value, last.unit, kit.unit, kit.analyte) : null,
		ownFor: (now) => ownScatterOf(summaries, { ...now, unit: kit.unit })
	};
}

/** What was noted before the last test that noted anything, to be offered again. */
export async function rememberedCircumstances(
	records: Records,
	butOfId: string
): Promise<Circumstances | null> {
	for (const header of await records.tests.list({ limit: 5 })) {
		const stored = header.id === butOfId ? null : await records.tests.load(header.id);
		if (!stored) continue;
		try {
			const { circumstances } = replayTest(logOf(stored));
			if (Object.keys(circumstances).length > 0) return circumstances;
		} catch {
			// A damaged test remembers nothing; the log page shows it.
		}
	}
	return null;
}

/** The last reading of the same analyte before a test, for 'change since last'; null when there is none. */
export async function lastReading(
	records: Records,
	log: TestLog
): Promise<(TestSummary & { kitId: string; testedAtEpochMs: number }) | null> {
	return lastReadingOf(records, log, log.kit.analyte);
}

/** The last reading of an analyte before a test, out of tests like it: their own, or by difference. */
export async function lastReadingOf(
	records: Records,
	log: TestLog,
	asked: Analyte
): Promise<(TestSummary & { kitId: string; testedAtEpochMs: number }) | null> {
	const { analyte } = log.kit;
	const headers = await records.tests.list({ analyte, before: log, limit: 20 });
	for (const { summary: whole, kitId, startedAtEpochMs: testedAtEpochMs } of headers) {
		const summary = whole && isOfTank(whole) ? summaryFor(whole, analyte, asked) : null;
		if (summary) return { ...summary, kitId, testedAtEpochMs };
	}
	return null;
}

/** A stored log put together. @throws RangeError saying which field is damaged */
export function logOf({ header, entries }: StoredLog<TestHeader>): TestLog {
	return loadTestLog({ ...(header.head as object), entries });
}

/** A test of which nothing was said yet; kept from its first entry on. */
export async function freshTest(
	records: Records,
	{ kit, version }: KitToTest,
	clock: () => number
): Promise<TankRun> {
	const startedAtEpochMs = Math.floor(clock());
	const log: TestLog = {
		format: 1,
		id: crypto.randomUUID?.() ?? `test-${startedAtEpochMs}`,
		startedAtEpochMs,
		kit,
		kitVersion: version,
		entries: []
	};
	return new TankRun(log, records.tests, await knownOf(records, kit, log), clock, null);
}

/**
 * A test from the records, as it was left; null when there is none of that id.
 *
 * @throws RangeError saying which field is damaged
 */
export async function storedTest(
	records: Records,
	id: string,
	clock: () => number
): Promise<TankRun | null> {
	const stored = await records.tests.load(id);
	if (!stored) return null;
	const log = logOf(stored);
	const known = await knownOf(records, log.kit, log);
	return new TankRun(log, records.tests, known, clock, stored.header);
}
