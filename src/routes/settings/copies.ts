import { loadKitVersion } from '$lib/kits';
import type { TestSummary } from '$lib/observation';
import {
	checkSummaryOf,
	loadCheckLog,
	loadRunLog,
	loadTestLog,
	replayCheck,
	replayTest,
	summaryOf,
	testResult
} from '$lib/procedure';
import { exportRecords, importRecords, type ImportReport, type Records } from '$lib/records';
import { resummariseTests } from '../resummarise';
import { storedKitVersions } from '../test/open-test';

/** Name of a file that holds everything, by its day. */
export function copyName(atEpochMs: number): string {
	const at = new Date(atEpochMs);
	const two = (n: number) => String(n).padStart(2, '0');
	return `halfdrop-${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}.json`;
}

/** Everything that is kept in this browser as the text of one file. */
export const everything = (records: Records, atEpochMs: number): Promise<string> =>
	exportRecords(records, atEpochMs);

/**
 * Brings the records of a file into those of this browser.
 *
 * @throws RangeError for a file that holds no records
 */
export async function takeIn(text: string, records: Records): Promise<ImportReport> {
	const report = await importRecords(text, records, {
		test: loadTestLog,
		check: loadCheckLog,
		run: loadRunLog,
		kit: loadKitVersion,
		// What a file says of its tests is reckoned from their marks again.
		summarise: (imported): TestSummary | null => {
			const state = replayTest(loadTestLog(imported));
			const result = testResult(state);
			return result && summaryOf(state, result);
		},
		summariseCheck: (imported, verdict) =>
			checkSummaryOf(replayCheck(loadCheckLog(imported)), verdict)
	});
	// A leaflet of the file may correct one that is known here, or the other way round.
	const versions = await storedKitVersions(records);
	const corrected = versions.filter(({ kind }) => kind === 'correction');
	for (const kitId of new Set(corrected.map((version) => version.kitId)))
		await resummariseTests(kitId, records);
	return report;
}
