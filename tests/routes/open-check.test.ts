import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { houseDropperKit, houseHardnessKit, houseSyringeKit, type Kit } from '../../src/lib/kits';
import type { Circumstances, EvidenceOf, TestEvent } from '../../src/lib/observation';
import {
	replayCheck,
	replayTest,
	summaryOf,
	testResult,
	type TestLog
} from '../../src/lib/procedure';
import { openRecords, type Records } from '../../src/lib/records';
import { checkHeaderOf, whereOfCheck } from '../../src/routes/check/check-header';
import {
	checkLogOf,
	checkOfTest,
	freshCheck,
	furtherTest,
	keptReferences,
	storedCheck,
	type OpenedCheck
} from '../../src/routes/check/open-check';
import { loggedLines } from '../../src/routes/check/check-lines';
import { onWalk, passed, walkOf } from '../procedure/tank';

const DAY = 86_400_000;
const NOW = Date.UTC(2026, 2, 14, 18);
const clock = () => NOW + 0.5;
let names = 0;
const opened = () => openRecords(`open-check-${names++}`);

const lessCalcium = (value: number): TestEvent => ({
	in: 'test',
	event: {
		type: 'difference.taken',
		less: {
			analyte: 'calcium',
			value,
			unit: 'mg/L',
			standardUncertainty: 8,
			expandedUncertainty: 16,
			from: { is: 'typed', isAssumed: false }
		},
		inCommon: []
	}
});

/** A kept test that ended with the seal here (or so many drops), so many days ago. */
async function keep(
	records: Records,
	id: string,
	said: {
		daysAgo: number;
		read: number;
		circumstances?: Circumstances;
		kit?: Kit;
		/** As summaries were written before they said what was in the vial. */
		isOldSummary?: boolean;
		/** Volumes of the kit's fillings before the last. */
		refills?: number;
		/** Calcium taken off, mg/L. */
		lessCalcium?: number;
	}
): Promise<TestLog> {
	const { kit = houseSyringeKit, read, circumstances = {}, daysAgo } = said;
	const startedAtEpochMs = NOW - daysAgo * DAY;
	const marks = kit.delivery.by === 'dropper' ? { drops: read } : { sealMl: read };
	const events: TestEvent[] = [
		{ in: 'before', event: { type: 'circumstances.noted', circumstances } },
		passed,
		...onWalk(
			0,
			...walkOf(kit, {
				filled: kit.delivery.by === 'syringe' ? [{ type: 'titrant.drawn', sealMl: 1 }] : [],
				titrated: Array.from({ length: said.refills ?? 0 }, () => ({
					type: 'titrant.drawn' as const,
					before: { sealMl: 0 },
					sealMl: 1
				})),
				read: [{ type: 'marks.read', marks }]
			})
		),
		...(said.lessCalcium === undefined ? [] : [lessCalcium(said.lessCalcium)]),
		{ in: 'test', event: { type: 'test.closed' } }
	];
	const entries = events.map((event, i) => ({
		id: `e${i}`,
		at: startedAtEpochMs + 60_000 * (i + 1),
		event
	}));
	const log: TestLog = { format: 1, id, startedAtEpochMs, kit, kitVersion: 0, entries };
	const state = replayTest(log);
	const result = testResult(state);
	if (!result) throw new Error('a test with a value');
	const summary = summaryOf(state, result);
	if (said.isOldSummary) delete summary.water;
	const { entries: _, ...head } = log;
	await records.tests.addAll([
		{
			header: {
				id,
				kitId: kit.id,
				analyte: kit.analyte,
				startedAtEpochMs,
				changedAtEpochMs: startedAtEpochMs,
				state: 'kept',
				where: 'done',
				summary,
				head
			},
			entries
		}
	]);
	return log;
}
const earlier = ({ toGive }: OpenedCheck) =>
	toGive.flatMap(({ evidence }) => (evidence.kind === 'earlier' ? [evidence] : []));
const ids = (of: readonly EvidenceOf<'earlier'>[]) =>
	of.map(({ reading }) => reading.id.replace(' earlier', ''));
/** The check after all that it began with was given. */
const begun = ({ log, toGive }: OpenedCheck) =>
	replayCheck({
		...log,
		entries: toGive.map(({ evidence, testId }, i) => ({
			id: `g${i}`,
			at: NOW,
			event: { type: 'evidence.given', evidence, ...(testId ? { testId } : {}) }
		}))
	});

test('a check of a stored test begins with the test and the readings before it', async () => {
	const records = await opened();
	await keep(records, 'before', { daysAgo: 8, read: 0.45, circumstances: { lot: 'A' } });
	await keep(records, 'other', { daysAgo: 5, read: 14, kit: houseDropperKit });
	await keep(records, 'q', { daysAgo: 1, read: 0.55, circumstances: { light: 'blue', lot: 'B' } });
	await keep(records, 'after', { daysAgo: 0.5, read: 0.5 });
	const check = await checkOfTest(records, 'q', clock);
	const state = begun(check!);
	expect(check).toMatchObject({
		stored: null,
		problem: null,
		log: { kit: { id: houseSyringeKit.id }, kitVersion: 0, analyte: 'alkalinity' }
	});
	expect(check?.log.startedAtEpochMs).toBe(NOW);
	expect(state.keptAside).toEqual([]);
	// Used 0.45 mL of 16 dKH each, less 0.30.
	expect(state.inQuestion?.reading.value).toBeCloseTo(6.9, 9);
	expect(state.evidence[0]?.testId).toBe('q');
	expect(state.evidence.map(({ evidence }) => evidence)).toContainEqual({
		kind: 'cue',
		cue: 'light',
		answer: 'tank'
	});
	expect(ids(earlier(check!))).toEqual(['before', 'other']);
	const [same, other] = earlier(check!);
	expect(same).toMatchObject({ daysAgo: 7, differs: { lot: 'A' } });
	expect(same).not.toHaveProperty('instrument');
	expect(other).toMatchObject({ daysAgo: 4, instrument: houseDropperKit.name });
});

test('what was not the tank’s water is no reading of the tank, also where only the log says so', async () => {
	const records = await opened();
	const reference = {
		nominal: 8,
		expandedUncertainty: 0.1,
		unit: 'dKH',
		matrix: 'seawater'
	} as const;
	await keep(records, 'tank', { daysAgo: 9, read: 0.45, circumstances: { water: 'tank' } });
	await keep(records, 'mix', { daysAgo: 7, read: 0.4, circumstances: { water: 'newMix' } });
	await keep(records, 'old', {
		daysAgo: 6,
		read: 0.4,
		circumstances: { water: 'newMix' },
		isOldSummary: true
	});
	await keep(records, 'known', {
		daysAgo: 5,
		read: 0.5,
		circumstances: { water: 'reference', reference, lot: 'A' }
	});
	await keep(records, 'q', { daysAgo: 1, read: 0.55 });
	const check = await checkOfTest(records, 'q', clock);
	expect(ids(earlier(check!))).toEqual(['tank']);
	expect(await checkOfTest(records, 'mix', clock)).toMatchObject({
		toGive: [],
		problem: 'It was a test of new salt water.'
	});
	expect(await checkOfTest(records, 'nobody', clock)).toBeNull();
	const kept = await keptReferences(records, {
		kitId: houseSyringeKit.id,
		unit: 'dKH',
		analyte: 'alkalinity'
	});
	// 0.5 mL of 16 dKH each, less 0.30.
	expect(kept).toMatchObject([
		{ testId: 'known', expected: 8, lot: 'A', value: expect.closeTo(7.7, 9) as number }
	]);
});

test('a further test says what it was done for; a damaged one is told where', async () => {
	const records = await opened();
	await keep(records, 'q', { daysAgo: 1, read: 0.55, circumstances: { lot: 'A' } });
	await keep(records, 'fresh', { daysAgo: 0.9, read: 0.45, circumstances: { lot: 'B' } });
	await keep(records, 'mix', { daysAgo: 0.8, read: 0.4, circumstances: { water: 'newMix' } });
	const check = { kitId: houseSyringeKit.id, testInQuestionId: 'q' };
	expect(await furtherTest(records, check, 'fresh', 'freshLot')).toMatchObject({
		problem: null,
		toGive: [
			{ testId: 'fresh', evidence: { kind: 'test', from: 'freshLot', differs: { lot: 'B' } } }
		]
	});
	expect(await furtherTest(records, check, 'mix', 'repeatFull')).toEqual({
		toGive: [],
		problem: 'It was a test of new salt water.'
	});
	// Of a number that was typed in nobody knows the lot, and nothing is known to differ.
	const typed = { ...check, testInQuestionId: null };
	const further = await furtherTest(records, typed, 'fresh', 'freshLot');
	expect(further?.toGive[0]?.evidence).not.toHaveProperty('differs');
	expect(await furtherTest(records, check, 'nobody', 'freshLot')).toBeNull();
	const [header] = await records.tests.list({ limit: 1 });
	await records.tests.append(
		'mix',
		(await records.tests.load('mix'))!.entries.length,
		{ x: 1 },
		header!
	);
	await expect(furtherTest(records, check, 'mix', 'repeatFull')).rejects.toThrow(/entries\.\d+/);
});

test('a known solution that was tested during the check is offered as one, and taken as one', async () => {
	const records = await opened();
	await keep(records, 'q', { daysAgo: 1, read: 0.55, circumstances: { lot: 'A' } });
	await keep(records, 'known', {
		daysAgo: 0.9,
		read: 0.5,
		circumstances: {
			water: 'reference',
			lot: 'A',
			reference: { nominal: 8, expandedUncertainty: 0.1, unit: 'dKH', matrix: 'seawater' }
		}
	});
	const about = { analyte: 'alkalinity' as const, unit: 'dKH' as const, now: NOW, but: 'q' };
	const lines = await loggedLines(records, { ...about, kitId: houseSyringeKit.id });
	expect(lines).toMatchObject([{ id: 'known', holds: '8.00 ± 0.10 dKH', isSameKit: true }]);
	const check = { kitId: houseSyringeKit.id, testInQuestionId: 'q' };
	const found = await furtherTest(records, check, 'known', 'reference');
	expect(found?.problem).toBeNull();
	expect(found?.toGive).toMatchObject([
		{
			testId: 'known',
			evidence: {
				kind: 'reference',
				nominal: 8,
				nominalExpandedUncertainty: 0.1,
				matrix: 'seawater'
			}
		}
	]);
	// The same bottle as that of the test in question.
	expect(found?.toGive[0]?.evidence).not.toHaveProperty('differs');
});

test('a check of magnesium by difference takes what speaks of magnesium, and says why something does not', async () => {
	const records = await opened();
	const ofBoth = { kit: houseHardnessKit, refills: 1 };
	const reference = {
		nominal: 64,
		expandedUncertainty: 0.5,
		unit: 'mmol/L',
		matrix: 'seawater'
	} as const;
	await keep(records, 'before', { ...ofBoth, daysAgo: 8, read: 0.4, lessCalcium: 410 });
	await keep(records, 'q', { ...ofBoth, daysAgo: 1, read: 0.35, lessCalcium: 430 });
	await keep(records, 'plain', { ...ofBoth, daysAgo: 0.9, read: 0.37 });
	await keep(records, 'anew', { ...ofBoth, daysAgo: 0.8, read: 0.37, lessCalcium: 450 });
	await keep(records, 'known', {
		...ofBoth,
		daysAgo: 0.7,
		read: 0.36,
		circumstances: { water: 'reference', reference }
	});
	await keep(records, 'alkalinity', { daysAgo: 0.6, read: 0.5 });
	const opening = await checkOfTest(records, 'q', clock);
	expect(opening?.log.analyte).toBe('magnesium');
	expect(ids(earlier(opening!))).toEqual(['before']);
	expect(begun(opening!).inQuestion?.reading.takenOff).toMatchObject({ value: 430 });

	const { kitId, analyte } = { kitId: houseHardnessKit.id, analyte: 'magnesium' as const };
	const lines = await loggedLines(records, { analyte, kitId, unit: 'mg/L', now: NOW, but: 'q' });
	expect(lines.map(({ id, holds }) => [id, holds])).toEqual([
		['known', '64.0 ± 0.5 mmol/L'],
		['anew', undefined],
		['before', undefined]
	]);
	const check = { kitId, testInQuestionId: 'q', analyte };
	const further = (id: string, as: 'repeatFull' | 'takenOffAnew' | 'reference') =>
		furtherTest(records, check, id, as);
	expect(await further('plain', 'repeatFull')).toEqual({
		toGive: [],
		problem: 'Nothing was taken off in that test: it says nothing of magnesium alone.'
	});
	expect((await further('anew', 'takenOffAnew'))?.toGive).toMatchObject([
		{ evidence: { kind: 'test', from: 'takenOffAnew', reading: { takenOff: { value: 450 } } } }
	]);
	expect((await further('known', 'reference'))?.toGive).toMatchObject([
		{ testId: 'known', evidence: { kind: 'reference', reading: { unit: 'mg/L' } } }
	]);
	const known = await furtherTest(records, { ...check, analyte: 'calcium' }, 'known', 'reference');
	expect(known).toEqual({
		toGive: [],
		problem: 'It was a known solution, tested with a kit that says nothing of calcium.'
	});
});

test('a number begins with what the log knows, with its kit or without', async () => {
	const records = await opened();
	await keep(records, 'before', { daysAgo: 8, read: 0.45 });
	const withKit = await freshCheck(records, { kit: houseSyringeKit, version: 3 }, clock);
	expect(withKit.log).toMatchObject({ kitVersion: 3, entries: [] });
	expect(earlier(withKit)[0]).not.toHaveProperty('instrument');
	const bare = await freshCheck(records, null, clock);
	expect(bare.log).toMatchObject({ kit: null, kitVersion: null, analyte: 'alkalinity' });
	expect(earlier(bare)[0]).toMatchObject({ instrument: houseSyringeKit.name });
	expect((await freshCheck(await opened(), null, clock)).toGive).toEqual([]);
});

test('a stored check is found again as it was left, with its advice and origin', async () => {
	const records = await opened();
	await keep(records, 'q', { daysAgo: 1, read: 0.55 });
	const check = (await checkOfTest(records, 'q', clock))!;
	const log = {
		...check.log,
		entries: check.toGive.map(({ evidence }, i) => ({
			id: `g${i}`,
			at: NOW + i,
			event: { type: 'evidence.given' as const, evidence }
		}))
	};
	const state = replayCheck(log);
	const header = checkHeaderOf(log, state, { now: NOW, verdict: 'check', stored: null });
	expect(header).toMatchObject({
		state: 'unfinished',
		where: `${state.evidence.length} things known`,
		summary: { value: state.inQuestion?.reading.value, verdict: 'check' }
	});
	await records.checks.begin(header);
	await records.checks.appendAll(log.id, 0, log.entries, header);
	const again = await storedCheck(records, log.id);
	expect(again).toMatchObject({ log, toGive: [], stored: { id: log.id } });
	expect(again?.stored).not.toBeNull();
	// Opened again, nothing is advised yet: the list keeps what was.
	const origin = { of: 'x', because: 'diverged' as const };
	const stored = { ...again!.stored!, origin };
	const next = checkHeaderOf(log, state, { now: NOW + 1, verdict: null, stored });
	expect([next.summary?.verdict, next.origin, next.changedAtEpochMs]).toEqual([
		'check',
		origin,
		NOW + 1
	]);
	expect(await storedCheck(records, 'nobody')).toBeNull();
	const kept = (await records.checks.load(log.id))!;
	expect(() => checkLogOf({ ...kept, entries: [null] })).toThrow(/entries\.0/);
});

test('where a check stands is said in a few words', () => {
	const state = replayCheck({
		format: 1,
		id: 'a',
		startedAtEpochMs: 1,
		analyte: 'alkalinity',
		kit: null,
		kitVersion: null,
		entries: []
	});
	expect(whereOfCheck(state)).toBe('no reading yet');
	expect(whereOfCheck({ ...state, isEmergency: true })).toBe('something that needs no number');
	expect(whereOfCheck({ ...state, isClosed: true, isEmergency: true })).toBe('done');
});
