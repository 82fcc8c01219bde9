import { kitForTest, type KitVersion } from '$lib/kits';
import type { TestSummary } from '$lib/observation';
import { ownScatterOf, replayTest, summaryOf, testResult } from '$lib/procedure';
import { openRecords, type Records, type TestHeader } from '$lib/records';
import { logOf, storedKitVersions } from './test/open-test';

/**
 * Values all tests of a kit anew by the leaflet as it is now corrected. The logs stay as they are:
 * they hold the marks, and what lists show follows from them.
 *
 * @returns how many tests have another summary now
 */
export async function resummariseTests(kitId: string, opened?: Records): Promise<number> {
	const records = opened ?? (await openRecords());
	const versions = await storedKitVersions(records);
	const headers = (await records.tests.list({})).filter((header) => header.kitId === kitId);
	// From the first on: the scatter of these hands is known from the tests before.
	const earlier: TestSummary[] = [];
	let changed = 0;
	for (const header of headers.reverse()) {
		const summary = await summaryToday(records, versions, header, earlier);
		if (summary === undefined) continue;
		if (summary) earlier.push(summary);
		if (JSON.stringify(summary) === JSON.stringify(header.summary)) continue;
		await records.tests.resummarise(header.id, summary);
		changed += 1;
	}
	return changed;
}

/** What a test comes to by the leaflet in force; undefined when its log is damaged. */
async function summaryToday(
	records: Records,
	versions: readonly KitVersion[],
	header: TestHeader,
	earlier: readonly TestSummary[]
): Promise<TestSummary | null | undefined> {
	const stored = await records.tests.load(header.id);
	if (!stored) return undefined;
	try {
		const log = logOf(stored);
		const state = replayTest(log);
		const { kit, version, isCorrected } = kitForTest(versions, log);
		const plain = testResult(state, { kit });
		if (!plain) return null;
		const { tester } = state.circumstances;
		const sampleVolumeMl = plain.counted[0]?.sampleVolumeMl ?? Number.NaN;
		const own = ownScatterOf(earlier.slice(-200), { tester, sampleVolumeMl, unit: kit.unit });
		const result = (own && testResult(state, { kit, own })) ?? plain;
		return summaryOf(state, result, isCorrected ? version : undefined);
	} catch {
		// A damaged test keeps what it had; the log page shows it.
		return undefined;
	}
}
