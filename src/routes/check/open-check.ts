import {
	analyteName,
	analytesGiving,
	kitForTest,
	type Analyte,
	type Kit,
	type Unit
} from '$lib/kits';
import {
	liveEntries,
	summaryFor,
	type Evidence,
	type EvidenceOf,
	type TestSummary,
	type WaterTested
} from '$lib/observation';
import {
	doneByOf,
	earlierEvidence,
	evidenceOfTest,
	loadCheckLog,
	referenceChecksOf,
	replayTest,
	testResult,
	whyNoEvidence,
	type CheckLog,
	type DoneBy,
	type EarlierTest,
	type KeptReference,
	type TestLog,
	type TestResult,
	type TestRole,
	type TestState
} from '$lib/procedure';
import type { CheckHeader, Records, StoredLog, TestHeader } from '$lib/records';
import { kitNamesOf } from '../log/kept-tests';
import { soundSummary } from '../sound-summary';
import { knownOf, logOf, storedKitVersions, type KitToTest } from '../test/open-test';

/** A piece of evidence, and the stored test it came from. */
export type ToGive = { evidence: Evidence; testId?: string };

/** A check ready to be gone on with. */
export type OpenedCheck = {
	log: CheckLog;
	/** The header it is stored under; null for a check of which nothing is stored yet. */
	stored: CheckHeader | null;
	/** What is known when it begins, to be given in one turn; nothing for a stored one. */
	toGive: readonly ToGive[];
	/** Why the test that was asked for says nothing, in a sentence. */
	problem: string | null;
};

/** A stored check put together. @throws RangeError saying which field is damaged */
export function checkLogOf({ header, entries }: StoredLog<CheckHeader>): CheckLog {
	return loadCheckLog({ ...(header.head as object), entries });
}

/**
 * A check from the records, as it was left; null when there is none of that id.
 *
 * @throws RangeError saying which field is damaged
 */
export async function storedCheck(records: Records, id: string): Promise<OpenedCheck | null> {
	const stored = await records.checks.load(id);
	if (!stored) return null;
	return { log: checkLogOf(stored), stored: stored.header, toGive: [], problem: null };
}

function emptyLog(
	line: Pick<KitToTest, 'kit' | 'version'> | null,
	analyte: Analyte,
	at: number
): CheckLog {
	const startedAtEpochMs = Math.floor(at);
	return {
		format: 1,
		id: crypto.randomUUID?.() ?? `check-${startedAtEpochMs}`,
		startedAtEpochMs,
		analyte,
		kit: line?.kit ?? null,
		kitVersion: line?.version ?? null,
		entries: []
	};
}

/**
 * A check of which nothing was said yet but what the log knows: a number will be typed in.
 *
 * @param line the kit that read it; null where nobody knows
 */
export async function freshCheck(
	records: Records,
	line: Pick<KitToTest, 'kit' | 'version'> | null,
	clock: () => number,
	analyte: Analyte = line?.kit.analyte ?? 'alkalinity'
): Promise<OpenedCheck> {
	const log = emptyLog(line, analyte, clock());
	const { startedAtEpochMs } = log;
	const inQuestion = {
		id: log.id,
		kitId: line?.kit.id ?? null,
		startedAtEpochMs,
		sampleVolumeMl: line?.kit.sample.volumes[0]?.volumeMl ?? Number.NaN
	};
	const toGive = (await earlierIn(records, analyte, inQuestion)).map((evidence) => ({ evidence }));
	return { log, stored: null, toGive, problem: null };
}

/**
 * A check of a stored test, with what the test and the log before it know; null when there is no such
 * test.
 *
 * @throws RangeError saying which field of the test is damaged
 */
export async function checkOfTest(
	records: Records,
	testId: string,
	clock: () => number
): Promise<OpenedCheck | null> {
	const test = await keptTest(records, testId);
	if (!test) return null;
	const { log: testLog, state, result, kit, version, own } = test;
	const analyte = result?.difference?.analyte ?? kit.analyte;
	const log = emptyLog({ kit, version }, analyte, clock());
	const problem = whyNoEvidence(state.circumstances, result);
	if (problem !== null || !result) return { log, stored: null, toGive: [], problem };
	const inQuestion = {
		...doneByOf(state, result),
		id: testId,
		startedAtEpochMs: testLog.startedAtEpochMs
	};
	const earlier = await earlierIn(records, analyte, inQuestion);
	const toGive = [
		...evidenceOfTest(testLog, result, { kit, own, analyte }).map((evidence) => ({
			evidence,
			testId
		})),
		...earlier.map((evidence) => ({ evidence }))
	];
	return { log, stored: null, toGive, problem: null };
}

/**
 * A further stored test as evidence in a check; null when there is no such test.
 *
 * @param as what the test was done for
 * @throws RangeError saying which field of a test is damaged
 */
export async function furtherTest(
	records: Records,
	check: { kitId: string | null; testInQuestionId: string | null; analyte?: Analyte },
	testId: string,
	as: Exclude<TestRole, 'first'>
): Promise<{ toGive: ToGive[]; problem: string | null } | null> {
	const test = await keptTest(records, testId);
	if (!test) return null;
	const { log, state, result, kit, own } = test;
	const { analyte = kit.analyte } = check;
	const problem =
		whyNoEvidence(state.circumstances, result) ?? whySilentOn(analyte, kit, state, result);
	const first = check.testInQuestionId && (await keptTest(records, check.testInQuestionId));
	const base: DoneBy = { kitId: check.kitId ?? '', sampleVolumeMl: Number.NaN };
	const inQuestion = first && first.result ? doneByOf(first.state, first.result) : base;
	const evidence =
		problem === null ? evidenceOfTest(log, result, { as, inQuestion, kit, own, analyte }) : [];
	return { toGive: evidence.map((each) => ({ evidence: each, testId })), problem };
}

/** Why a test says nothing of an analyte, in a sentence; null when it does. */
function whySilentOn(
	analyte: Analyte,
	kit: Kit,
	{ circumstances }: TestState,
	result: TestResult | null
): string | null {
	if (analyte === kit.analyte) return null;
	const name = analyteName(analyte);
	if (circumstances.water === 'reference')
		return kit.byDifference?.gives === analyte
			? null
			: `It was a known solution, tested with a kit that says nothing of ${name}.`;
	return result?.difference?.analyte === analyte
		? null
		: `Nothing was taken off in that test: it says nothing of ${name} alone.`;
}

/** Kept tests of known solutions with one kit, in the order of time, for control charts. */
export async function keptReferences(
	records: Records,
	asked: { kitId: string; unit: Unit; analyte: Analyte }
): Promise<KeptReference[]> {
	return referenceChecksOf(await records.tests.list({ analyte: asked.analyte }), asked);
}

/** A stored test, valued by the leaflet as it is now corrected and with what is known of these hands. */
async function keptTest(records: Records, id: string) {
	const stored = await records.tests.load(id);
	if (!stored) return null;
	const log = logOf(stored);
	const state = replayTest(log);
	const { kit, version } = kitForTest(await storedKitVersions(records), log);
	const plain = testResult(state, { kit });
	const sampleVolumeMl = plain?.counted[0]?.sampleVolumeMl ?? Number.NaN;
	const { tester } = state.circumstances;
	const own = (await knownOf(records, kit, log)).ownFor({
		...(tester ? { tester } : {}),
		sampleVolumeMl
	});
	return { log, state, kit, version, own, result: testResult(state, { kit, own }) };
}

/** So many tests before the one in question are looked at. */
const LOOKED_AT = 30;

async function earlierIn(
	records: Records,
	analyte: Analyte,
	inQuestion: Parameters<typeof earlierEvidence>[1] & { id: string; startedAtEpochMs: number }
): Promise<EvidenceOf<'earlier'>[]> {
	const before = { startedAtEpochMs: inQuestion.startedAtEpochMs, id: inQuestion.id };
	const lists = await Promise.all(
		analytesGiving(analyte).map((measured) =>
			records.tests.list({ analyte: measured, before, limit: LOOKED_AT })
		)
	);
	const headers = lists.flat();
	const names = kitNamesOf(await records.kits.all());
	const tests = await Promise.all(
		headers.map(async (header): Promise<EarlierTest> => ({
			id: header.id,
			kitId: header.kitId,
			startedAtEpochMs: header.startedAtEpochMs,
			kitName: names.get(header.kitId) ?? 'a kit that is gone',
			summary: await saidOf(analyte, records, header)
		}))
	);
	return earlierEvidence(tests, inQuestion);
}

/** What a test from before says of an analyte. */
async function saidOf(
	asked: Analyte,
	records: Records,
	header: TestHeader
): Promise<TestSummary | null> {
	const summary = await withWater(records, header);
	return summary && summaryFor(summary, header.analyte, asked);
}

/**
 * A summary that says what was in the vial. One written before that was kept in summaries does not:
 * its log does.
 */
async function withWater(
	records: Records,
	{ id, analyte, summary: stored }: TestHeader
): Promise<TestSummary | null> {
	const summary = soundSummary(stored, analyte);
	if (!summary || !Array.isArray(summary.values)) return null;
	if (summary.water !== undefined) return summary;
	const log = await records.tests.load(id);
	try {
		const water = log ? waterIn(logOf(log)) : undefined;
		return water ? { ...summary, water } : summary;
	} catch {
		// Of a damaged test nobody knows what was in the vial.
		return null;
	}
}

/** What the log says was in the vial; the walks need not be played for that. */
function waterIn({ entries }: TestLog): WaterTested | undefined {
	const noted = liveEntries(entries).findLast(
		({ event }) => event.in === 'before' && event.event.type === 'circumstances.noted'
	)?.event;
	return noted?.in === 'before' && noted.event.type === 'circumstances.noted'
		? noted.event.circumstances.water
		: undefined;
}
