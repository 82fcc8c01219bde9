import { houseKits } from '$lib/kits';
import { isOfTank } from '$lib/observation';
import type { TestLog } from '$lib/procedure';
import type { Records } from '$lib/records';
import type { TakeOffCandidate } from '$lib/ui/test/result/difference/taken-off';
import type { LastReading } from '$lib/ui/test/result/since-last';
import { soundSummary } from '../sound-summary';
import { lastReadingOf, storedKitVersions } from './open-test';

/** So many tests are offered to be taken off, out of so many of the newest. */
const OFFERED = 5;
const LOOKED_THROUGH = 60;

export type ForDifference = { lastLeft: LastReading | null; candidates: TakeOffCandidate[] };

/** What a test by difference needs from the log: the reading before, and tests to be taken off. */
export async function knownForDifference(records: Records, log: TestLog): Promise<ForDifference> {
	const { byDifference } = log.kit;
	if (!byDifference) return { lastLeft: null, candidates: [] };
	const [lastLeft, candidates] = await Promise.all([
		lastReadingOf(records, log, byDifference.gives),
		candidatesFor(records, log.startedAtEpochMs, byDifference.less)
	]);
	return { lastLeft, candidates };
}

/** Kept tests of the tank, the nearest in time first. */
async function candidatesFor(
	records: Records,
	atEpochMs: number,
	analyte: string
): Promise<TakeOffCandidate[]> {
	const headers = await records.tests.list({ analyte, limit: LOOKED_THROUGH });
	if (headers.length === 0) return [];
	const versions = await storedKitVersions(records);
	const nameOf = (id: string) =>
		versions.findLast(({ kitId }) => kitId === id)?.kit.name ??
		houseKits.find((kit) => kit.id === id)?.name ??
		'a kit that is gone';
	return headers
		.flatMap(({ id, kitId, startedAtEpochMs, summary: stored }): TakeOffCandidate[] => {
			const summary = soundSummary(stored, analyte);
			if (!summary || !isOfTank(summary) || !Number.isFinite(startedAtEpochMs)) return [];
			const testedAtEpochMs = startedAtEpochMs;
			return [{ testId: id, summary, kitId, kitName: nameOf(kitId), testedAtEpochMs }];
		})
		.sort((a, b) => awayFrom(a) - awayFrom(b))
		.slice(0, OFFERED);

	function awayFrom({ testedAtEpochMs }: TakeOffCandidate): number {
		return Math.abs(testedAtEpochMs - atEpochMs);
	}
}
