import type { StoredLog, Records, TestHeader } from '$lib/records';
import type { TakeOffCandidate } from '$lib/ui/test/result/difference/taken-off';
import type { LastReading } from '$lib/ui/test/result/since-last';
import { kitForTest } from '$lib/kits';
import { knownOf, lastReading, storedKitVersions, storedTest } from '../../test/open-test';
import { knownForDifference } from '../../test/for-difference';
import { LoggedTest } from './logged-test.svelte';

/** What is found at an address of the log. */
export type Found =
	| {
			kind: 'test';
			test: LoggedTest;
			last: LastReading | null;
			/** The reading before of what is left by difference, and what can be taken off. */
			lastLeft: LastReading | null;
			candidates: TakeOffCandidate[];
	  }
	/** It is there and cannot be read: what is wrong, and all that is stored of it. */
	| { kind: 'unreadable'; why: string; stored: StoredLog<TestHeader> }
	| { kind: 'nothing' };

/** Opens one test of the log, valued by its leaflet as that is taken to say today. */
export async function openLogged(
	records: Records,
	id: string,
	clock: () => number
): Promise<Found> {
	const stored = await records.tests.load(id);
	if (!stored) return { kind: 'nothing' };
	try {
		const run = await storedTest(records, id, clock);
		if (!run) return { kind: 'nothing' };
		const versions = await storedKitVersions(records);
		const { kit, version, isCorrected } = kitForTest(versions, run.log);
		const saved = versions.find(
			(each) => each.kitId === kit.id && each.version === version
		)?.savedAtEpochMs;
		const [known, last, forDifference] = await Promise.all([
			knownOf(records, kit, run.log),
			lastReading(records, run.log),
			knownForDifference(records, run.log)
		]);
		const leaflet = { kit, version, isCorrected, savedAtEpochMs: saved ?? null };
		return {
			kind: 'test',
			test: new LoggedTest(run, leaflet, records.tests, known.ownFor),
			last,
			...forDifference
		};
	} catch (error) {
		if (!(error instanceof RangeError)) throw error;
		return { kind: 'unreadable', why: error.message, stored };
	}
}
