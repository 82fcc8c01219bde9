import { kitForTest, loadKitVersion } from '$lib/kits';
import type { TestSummary } from '$lib/observation';
import { loadRunLog, loadTestLog, replayTest, summaryOf, testResult } from '$lib/procedure';
import { exportRecords, importRecords, type ImportReport, type Records } from '$lib/records';
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
	// What the file says of tests is reckoned from their marks again, with the leaflets known here.
	const versions = await storedKitVersions(records);
	return importRecords(text, records, {
		test: loadTestLog,
		run: loadRunLog,
		kit: loadKitVersion,
		summarise: (imported): TestSummary | null => {
			const log = loadTestLog(imported);
			const state = replayTest(log);
			const { kit, version, isCorrected } = kitForTest(versions, log);
			const result = testResult(state, { kit });
			return result && summaryOf(state, result, isCorrected ? version : undefined);
		}
	});
}
