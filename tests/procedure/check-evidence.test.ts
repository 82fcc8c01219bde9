import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { houseDropperKit, houseKitsFor, houseSyringeKit, type Kit } from '$lib/kits';
import { cues, cuesFor } from '$lib/judgement';
import { readingBudget } from '$lib/metrology';
import {
	EvidenceSchema,
	type Circumstances,
	type Evidence,
	type EvidenceOf,
	type TestEvent,
	type TitrationPurpose
} from '$lib/observation';
import {
	doneByOf,
	evidenceOfTest,
	loadTestLog,
	readingOfNumber,
	replayTest,
	testResult,
	whyNoEvidence,
	type DoneBy,
	type TestLog
} from '$lib/procedure';
import { slipAnswers } from '../../src/lib/procedure/check-cues';
import { logOf, onWalk, passed, walkOf } from './tank';

type Titrated = {
	/** Numeral at the seal at the end; null for one that was given up. */
	sealMl: number | null;
	purpose?: Exclude<TitrationPurpose, 'first'>;
	by?: string;
	volumeId?: string;
};
const kit: Kit = houseSyringeKit;

/** A test of titrations filled to the seal at 1.00. */
function testOf(
	circumstances: Circumstances,
	titrations: readonly Titrated[],
	of: Kit = kit
): TestLog {
	const events = titrations.flatMap(({ sealMl, purpose, by, volumeId }, i): TestEvent[] => {
		const begun: TestEvent[] =
			i === 0
				? []
				: [
						{
							in: 'test',
							event: {
								type: 'titration.begun',
								titration: i,
								purpose: purpose ?? 'repeat',
								...(by ? { by } : {})
							}
						}
					];
		if (sealMl === null) return [...begun, ...onWalk(i, { type: 'walk.abandoned' })];
		return [
			...begun,
			...onWalk(
				i,
				...walkOf(of, {
					before: volumeId ? [{ type: 'sample.chosen', volumeId }] : [],
					filled: [{ type: 'titrant.drawn', sealMl: 1 }],
					read: [{ type: 'marks.read', marks: { sealMl } }]
				})
			)
		];
	});
	const noted: TestEvent = { in: 'before', event: { type: 'circumstances.noted', circumstances } };
	return logOf(of, [noted, passed, ...events]);
}
const tests = (all: readonly Evidence[]) =>
	all.filter((each): each is EvidenceOf<'test'> => each.kind === 'test');
const answers = (all: readonly Evidence[]) =>
	Object.fromEntries(all.flatMap((each) => (each.kind === 'cue' ? [[each.cue, each.answer]] : [])));
const base = (log: TestLog): DoneBy => {
	const state = replayTest(log);
	const result = testResult(state);
	if (!result) throw new Error('a test with a value');
	return doneByOf(state, result);
};

describe('the test in question', () => {
	it('is its first titration; the others are what they were done for', () => {
		const log = testOf({ tester: 'Mia' }, [
			{ sealMl: 0.47 },
			{ sealMl: 0.48 },
			{ sealMl: 0.46, purpose: 'otherPerson', by: 'Ben' },
			{ sealMl: 0.45, purpose: 'freshSample' }
		]);
		const found = tests(evidenceOfTest(log));
		expect(found.map(({ from, differs }) => [from, differs])).toEqual([
			['first', undefined],
			['repeatFull', undefined],
			['otherHands', { hands: 'Ben' }],
			['freshSample', { sampling: 'fresh water 3' }]
		]);
		expect(new Set(found.map(({ reading }) => reading.id)).size).toBe(4);
	});

	it('has for each titration the value and the ± that it has alone', () => {
		const log = testOf({ temperatureC: 25 }, [{ sealMl: 0.47 }, { sealMl: 0.48 }]);
		// The kit: 16 dKH a mL, less 0.30, for 6 mL: 0.53 mL are 8.18, 0.52 mL are 8.02.
		const [first, repeat] = tests(evidenceOfTest(log));
		expect(first?.reading.value).toBeCloseTo(8.18, 9);
		expect(repeat?.reading.value).toBeCloseTo(8.02, 9);
		const budget = readingBudget(kit, {
			value: 8.18,
			valuePerMl: 16,
			usedMl: 0.53,
			sampleVolumeMl: 6,
			isStartRead: true,
			temperatureC: 25
		});
		expect(first?.reading.expandedUncertainty).toBeCloseTo(budget.expandedUncertainty, 9);
		expect(first?.reading.repeatabilitySd).toBeCloseTo(budget.repeatabilitySd, 9);
		expect(first?.reading.marks).toEqual({ sealMl: 0.47 });
		// The mean of both is surer than either.
		const both = testResult(replayTest(log))?.expandedUncertainty ?? Number.NaN;
		expect(first?.reading.expandedUncertainty).toBeGreaterThan(both);
	});

	it('is what took the place of a first that was given up, and no fresh water', () => {
		const log = testOf({}, [
			{ sealMl: null },
			{ sealMl: 0.47, purpose: 'freshSample' },
			{ sealMl: 0.48 },
			{ sealMl: null },
			{ sealMl: 0.46, purpose: 'freshSample' }
		]);
		const found = tests(evidenceOfTest(log));
		expect(found.map(({ from, differs }) => [from, differs])).toEqual([
			['first', undefined],
			['repeatFull', undefined],
			['repeatFull', undefined]
		]);
	});

	it('leaves out what was set aside, and what others read off the same glass', () => {
		const log = testOf({}, [{ sealMl: 0.47 }, { sealMl: 0.2 }]);
		const more: TestEvent[] = [
			{ in: 'test', event: { type: 'titration.setAside', titration: 1, because: 'bubble' } },
			{
				in: 'test',
				event: { type: 'marks.readByOther', titration: 0, by: 'Ben', marks: { sealMl: 0.4 } }
			}
		];
		const entries = more.map((event, i) => ({ id: `m${i}`, at: log.startedAtEpochMs, event }));
		const found = tests(evidenceOfTest({ ...log, entries: [...log.entries, ...entries] }));
		expect(found.map(({ reading }) => reading.marks)).toEqual([{ sealMl: 0.47 }]);
	});

	it('says when a further titration took more water', () => {
		// 10 mL for 6: the house kit has both.
		const log = testOf({}, [{ sealMl: 0.47 }, { sealMl: 0.14, volumeId: 'fine' }]);
		const [, larger] = tests(evidenceOfTest(log));
		expect(larger?.from).toBe('largerSample');
		expect(larger?.differs?.sampleRatio).toBeCloseTo(10 / 6, 12);
	});

	it('of other waters, of an unknown solution or without a value is no evidence, and says why', () => {
		const why = (log: TestLog) => {
			const state = replayTest(log);
			return whyNoEvidence(state.circumstances, testResult(state));
		};
		const done = [{ sealMl: 0.47 }];
		for (const water of ['topOff', 'newMix', 'other', 'reference'] as const) {
			const log = testOf({ water }, done);
			expect(evidenceOfTest(log)).toEqual([]);
			expect(why(log)).toMatch(/^It was /);
		}
		expect(why(testOf({}, [{ sealMl: null }]))).toBe('The test has no value.');
		expect(evidenceOfTest(testOf({}, [{ sealMl: null }]))).toEqual([]);
		expect(why(testOf({ water: 'tank' }, done))).toBeNull();
		expect(why(testOf({}, done))).toBeNull();
	});
});

describe('a further test of the check', () => {
	const first = testOf({ tester: 'Mia', lot: 'A', takenAtEpochMs: 1 }, [{ sealMl: 0.47 }]);
	const inQuestion = base(first);

	it('is all what it was done for, and says in what it differs', () => {
		const log = testOf({ tester: 'Mia', lot: 'B', takenAtEpochMs: 1 }, [
			{ sealMl: 0.4 },
			{ sealMl: 0.41, by: 'Ben' }
		]);
		const found = tests(evidenceOfTest(log, undefined, { as: 'freshLot', inQuestion }));
		expect(found.map(({ from, differs }) => [from, differs])).toEqual([
			['freshLot', { lot: 'B' }],
			['freshLot', { lot: 'B', hands: 'Ben' }]
		]);
	});

	it('with water of another time is another portion; what was not said is not known to differ', () => {
		const later = testOf({ takenAtEpochMs: 2 }, [{ sealMl: 0.4 }]);
		const silent = testOf({}, [{ sealMl: 0.4 }]);
		const as = 'repeatFull' as const;
		const differs = (log: TestLog) =>
			tests(evidenceOfTest(log, undefined, { as, inQuestion }))[0]?.differs;
		expect(differs(later)).toEqual({ sampling: 'taken at 2' });
		expect(differs(silent)).toBeUndefined();
	});

	it('answers no questions: they are about the test in question', () => {
		const log = testOf({ light: 'blue' }, [{ sealMl: 0.4 }]);
		expect(answers(evidenceOfTest(log, undefined, { as: 'repeatFull', inQuestion }))).toEqual({});
	});

	it('with another kit is a second method by its name', () => {
		const log = logOf(houseDropperKit, [
			passed,
			...onWalk(
				0,
				...walkOf(houseDropperKit, { read: [{ type: 'marks.read', marks: { drops: 14 } }] })
			)
		]);
		const [found, ...others] = evidenceOfTest(log, undefined, { as: 'secondMethod', inQuestion });
		expect(others).toEqual([]);
		expect(found).toMatchObject({
			kind: 'secondMethod',
			method: 'kit',
			instrument: houseDropperKit.name,
			// 14 drops of 0.60 dKH, less 0.45.
			reading: { value: expect.closeTo(7.95, 9) as number, unit: 'dKH' }
		});
	});
});

describe('a known solution', () => {
	const reference = {
		nominal: 2.5,
		expandedUncertainty: 0.02,
		unit: 'meq/L' as const,
		matrix: 'purified' as const,
		name: 'of March'
	};
	it('is a reference, in the unit of the reading', () => {
		const log = testOf({ water: 'reference', reference, tester: 'Mia', light: 'blue' }, [
			{ sealMl: 0.55 },
			{ sealMl: 0.54 }
		]);
		const found = evidenceOfTest(log);
		expect(found.map(({ kind }) => kind)).toEqual(['reference', 'reference']);
		// 1 dKH is 0.35664 meq/L (10 mg of CaO in a litre; CaO 56.0774 g/mol, IUPAC): 2.5 are 7.0098.
		expect(found[0]).toMatchObject({
			nominal: expect.closeTo(7.0098, 3) as number,
			nominalExpandedUncertainty: expect.closeTo(0.05608, 4) as number,
			matrix: 'purified',
			solution: 'of March',
			reading: { unit: 'dKH', label: 'Known solution' }
		});
		expect(found[0]).not.toHaveProperty('instrument');
	});
	it('says the lot and the kit that read it, where they are others, and never the sampling', () => {
		const first = base(testOf({ lot: 'A', takenAtEpochMs: 1 }, [{ sealMl: 0.47 }]));
		const log = testOf({ water: 'reference', reference, lot: 'B', takenAtEpochMs: 5 }, [
			{ sealMl: 0.55 }
		]);
		const options = { as: 'reference' as const, inQuestion: first };
		expect(evidenceOfTest(log, undefined, options)[0]).toMatchObject({ differs: { lot: 'B' } });
		expect(evidenceOfTest(log, undefined, options)[0]).not.toHaveProperty('differs.sampling');
		const other = { ...options, inQuestion: { ...first, kitId: 'another' } };
		expect(evidenceOfTest(log, undefined, other)[0]).toMatchObject({ instrument: kit.name });
	});
});

describe('questions that notes have answered', () => {
	const answered = (circumstances: Circumstances, titrations = [{ sealMl: 0.47 }]) =>
		answers(evidenceOfTest(testOf(circumstances, titrations)));

	it('are those of the circumstances, as far as they were said', () => {
		const startedAt = testOf({}, []).startedAtEpochMs;
		const day = 86_400_000;
		expect(answered({})).toEqual({ marksUsed: 'sealBoth' });
		expect(
			answered({
				light: 'blue',
				hoursSinceDose: 0.5,
				dosingRuns: 'no',
				lotOpenedAtEpochMs: startedAt - 2 * day
			})
		).toMatchObject({
			light: 'tank',
			whereTaken: 'soon',
			dosing: 'stopped',
			titrantBottle: 'new'
		});
		expect(
			answered({
				light: 'white',
				hoursSinceDose: 3,
				dosingRuns: 'unsure',
				lotOpenedAtEpochMs: startedAt - 30 * day
			})
		).toEqual({ marksUsed: 'sealBoth', light: 'white' });
		expect(answered({ light: 'dim', dosingRuns: 'yes' })).toMatchObject({
			light: 'dim',
			dosing: 'asAlways'
		});
	});

	it('is no question of marks where the value was counted through the tip', () => {
		const log = logOf(kit, [
			passed,
			...onWalk(
				0,
				...walkOf(kit, {
					filled: [{ type: 'titrant.drawn', lineMl: 1 }],
					read: [{ type: 'marks.read', marks: { sealMl: 0.4 } }]
				})
			)
		]);
		expect(answers(evidenceOfTest(log))).toEqual({});
	});

	it('are known to the catalogue, by question and answer', () => {
		for (const given of Object.values(slipAnswers)) {
			const cue = cues.find(({ id }) => id === given.cue);
			expect(cue?.answers.map(({ id }) => id)).toContain(given.answer);
		}
		const all = answered({
			light: 'blue',
			hoursSinceDose: 0.5,
			dosingRuns: 'no',
			lotOpenedAtEpochMs: testOf({}, []).startedAtEpochMs
		});
		expect(Object.keys(all).sort()).toEqual(
			['dosing', 'light', 'marksUsed', 'titrantBottle', 'whereTaken'].sort()
		);
	});

	it('are asked of a kit of that sort only', () => {
		const log = logOf(houseDropperKit, [
			passed,
			...onWalk(
				0,
				...walkOf(houseDropperKit, { read: [{ type: 'marks.read', marks: { drops: 14 } }] })
			)
		]);
		const asked = cuesFor({ analyte: 'alkalinity', delivery: 'dropper' }).map(({ id }) => id);
		for (const cue of Object.keys(answers(evidenceOfTest(log)))) expect(asked).toContain(cue);
	});
});

describe('all of it can be written down and read again', () => {
	it.each(['syringe', 'dropper'])('from a kept test by %s', (name) => {
		const file = new URL(`golden/test-log-format-1-${name}.json`, import.meta.url);
		const found = evidenceOfTest(loadTestLog(JSON.parse(readFileSync(file, 'utf8'))));
		expect(found.length).toBeGreaterThan(0);
		for (const each of found) expect(EvidenceSchema.parse(each)).toEqual(each);
	});
	it('names of any length included', () => {
		const long = 'x'.repeat(200);
		const log = { ...testOf({ tester: long, lot: long }, [{ sealMl: 0.4 }]), id: 'y'.repeat(400) };
		const renamed = { ...log, kit: { ...log.kit, name: 'k'.repeat(300) } };
		const inQuestion = { kitId: 'another', sampleVolumeMl: 6, lot: 'A', tester: 'B' };
		for (const options of [{}, { as: 'repeatFull' as const, inQuestion }])
			for (const each of evidenceOfTest(renamed, undefined, options))
				expect(EvidenceSchema.safeParse(each).success).toBe(true);
	});
});

describe('nothing but a number', () => {
	it('gets the ± that its kit can claim, in the unit in which it was said', () => {
		for (const each of houseKitsFor('alkalinity')) {
			const inDkh = readingOfNumber(8, 'dKH', each, { id: 'n' });
			const inMeq = readingOfNumber(8 * 0.35664, 'meq/L', each, { id: 'n' });
			expect(inDkh.isAssumed).toBe(false);
			expect(inDkh.because).toContain(each.name);
			expect(inMeq.reading.expandedUncertainty).toBeCloseTo(
				inDkh.reading.expandedUncertainty * 0.35664,
				3
			);
			expect(
				EvidenceSchema.safeParse({ kind: 'test', from: 'first', reading: inMeq.reading }).success
			).toBe(true);
		}
	});
	it('gets an assumed ± without a kit, says so, and is never surer than with one', () => {
		for (const value of [0, 2, 5, 8, 12]) {
			const bare = readingOfNumber(value, 'dKH', null, { id: 'n' });
			expect(bare.isAssumed).toBe(true);
			expect(bare.because).toContain('assumed');
			for (const each of houseKitsFor('alkalinity')) {
				const known = readingOfNumber(value, 'dKH', each, { id: 'n' }).reading.expandedUncertainty;
				expect(bare.reading.expandedUncertainty).toBeGreaterThanOrEqual(known);
			}
		}
		expect(readingOfNumber(8, 'dKH', null, { id: 'n' }).reading).not.toHaveProperty(
			'repeatabilitySd'
		);
	});
	it.each([-0.1, Number.NaN, Number.POSITIVE_INFINITY])('%s is refused', (value) => {
		expect(() => readingOfNumber(value, 'dKH', null)).toThrow(
			`value must be a number of 0 or above; found ${value}`
		);
	});
});
