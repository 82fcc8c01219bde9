import { kitForTest } from '$lib/kits';
import { loadTestLog, ownScatterOf, replayTest, summaryOf, testResult } from '$lib/procedure';
import { openRecords, type Records } from '$lib/records';
import { storedKitVersions } from './test/open-test';

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
	let changed = 0;
	for (const header of headers) {
		const stored = await records.tests.load(header.id);
		if (!stored) continue;
		try {
			const log = loadTestLog({ ...(stored.header.head as object), entries: stored.entries });
			const state = replayTest(log);
			const { kit, version, isCorrected } = kitForTest(versions, log);
			const plain = testResult(state, { kit });
			const { tester } = state.circumstances;
			const sampleVolumeMl = plain?.counted[0]?.sampleVolumeMl ?? Number.NaN;
			const earlier = headers.flatMap(({ startedAtEpochMs, summary }) =>
				startedAtEpochMs < log.startedAtEpochMs && summary ? [summary] : []
			);
			const own = ownScatterOf(earlier, { tester, sampleVolumeMl, unit: kit.unit });
			const result = own ? testResult(state, { kit, own }) : plain;
			const summary = result && summaryOf(state, result, isCorrected ? version : undefined);
			if (JSON.stringify(summary) === JSON.stringify(header.summary)) continue;
			await records.tests.resummarise(header.id, summary);
			changed += 1;
		} catch {
			// A damaged test keeps what it had; the log page shows it.
		}
	}
	return changed;
}
