import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cues, diagnose, faults, rankChecks, type Diagnosis } from '../../src/lib/judgement';
import { convertValue, type Unit } from '../../src/lib/kits';
import { EvidenceSchema, type Evidence } from '../../src/lib/observation';
import { earlier, fault, inUnit, only, reading, reference, second, test } from './diagnosed';

const value = fc.double({ min: 5, max: 12, noNaN: true }).map((each) => Number(each.toFixed(2)));
const ids = fc.uuid();
const cueAnswer = fc.constantFrom(...cues).chain((cue) =>
	fc.constantFrom(...cue.answers).map(({ id }): Evidence => ({
		kind: 'cue',
		cue: cue.id,
		answer: id
	}))
);
const piece: fc.Arbitrary<Evidence> = fc.oneof(
	fc
		.tuple(
			ids,
			value,
			fc.constantFrom(
				'repeatFull',
				'repeatQuick',
				'freshLot',
				'freshSample',
				'largerSample',
				'smallerSample',
				'otherHands'
			)
		)
		.map(([id, y, from]) => test(id, y, from)),
	fc
		.tuple(ids, value, fc.constantFrom('seawater', 'purified', 'sodiumChloride'))
		.map(([id, y, matrix]) => reference(id, y, { matrix })),
	fc
		.tuple(ids, value, fc.constantFrom('kit', 'photometer', 'laboratory', 'probe'))
		.map(([id, y, method]) => second(id, y, 0.4, { method })),
	fc
		.tuple(ids, value, fc.integer({ min: 0, max: 60 }))
		.map(([id, y, days]) => earlier(id, y, days)),
	fc.tuple(ids, value).map(([id, y]): Evidence => ({
		kind: 'addition',
		reading: reading(id, y + 4),
		added: 4,
		addedExpandedUncertainty: 0.1
	})),
	fc.tuple(ids, fc.double({ min: -0.3, max: 1, noNaN: true })).map(([id, y]): Evidence => ({
		kind: 'blank',
		reading: reading(id, y),
		matrix: 'purified'
	})),
	fc
		.tuple(fc.constantFrom('sample', 'titrant'), fc.double({ min: 0.9, max: 1.1, noNaN: true }))
		.map(([ware, found]): Evidence => ({
			kind: 'weighing',
			ware,
			foundOverNominal: found,
			expandedUncertainty: 0.01
		})),
	cueAnswer
);
/** The test in question and up to six more pieces. */
const anyEvidence = fc
	.tuple(value, fc.array(piece, { maxLength: 6 }))
	.map(([y, others]): Evidence[] => [test('question', y), ...others]);

const probabilitiesOf = (diagnosis: Diagnosis): number[] => [
	...diagnosis.explanations.map(({ probability }) => probability),
	...Object.values(diagnosis.faults),
	...Object.values(diagnosis.classes),
	diagnosis.nothingWrong,
	diagnosis.waterChanged,
	diagnosis.noneOfThese
];

const runs = { numRuns: 40 };

describe('whatever the evidence', () => {
	it('it is evidence by its own schema', () => {
		fc.assert(
			fc.property(anyEvidence, (evidence) => {
				for (const each of evidence) EvidenceSchema.parse(each);
			}),
			runs
		);
	});

	it('probabilities sum to 1, and none is 0 or certain', () => {
		fc.assert(
			fc.property(anyEvidence, (evidence) => {
				const diagnosis = diagnose(evidence);
				const listed = diagnosis.explanations.reduce((sum, each) => sum + each.probability, 0);
				expect(listed + diagnosis.noneOfThese).toBeCloseTo(1, 4);
				for (const probability of probabilitiesOf(diagnosis)) {
					expect(probability).toBeGreaterThan(0);
					expect(probability).toBeLessThan(1);
				}
				const weights = diagnosis.mixture?.reduce((sum, { weight }) => sum + weight, 0);
				expect(weights).toBeCloseTo(1, 9);
			}),
			runs
		);
	});

	it('a pair counts for both: each fault is at least as likely as its explanations together', () => {
		fc.assert(
			fc.property(anyEvidence, (evidence) => {
				const { explanations, faults: found } = diagnose(evidence);
				for (const [id, probability] of Object.entries(found)) {
					const sum = explanations
						.filter((each) => each.faults.includes(id))
						.reduce((total, each) => total + each.probability, 0);
					expect(Math.abs(sum - probability)).toBeLessThan(0.05);
				}
			}),
			runs
		);
	});

	/** Contradictions by what they are about, wherever it stands. */
	const piecesApart = (evidence: readonly Evidence[], found: Diagnosis['contradictions']) =>
		(found ?? [])
			.map(({ at, difference, ordinary }) =>
				[
					...at.map((i) => JSON.stringify(evidence[i])).sort(),
					Math.abs(difference).toFixed(9),
					ordinary.toFixed(9)
				].join(' ')
			)
			.sort();

	it('the order in which it came is irrelevant, to the last digit', () => {
		fc.assert(
			fc.property(anyEvidence, fc.infiniteStream(fc.nat()), (evidence, stream) => {
				const keys = evidence.map(() => stream.next().value ?? 0);
				const other = evidence
					.map((each, i) => ({ each, key: keys[i] ?? 0 }))
					.sort((a, b) => a.key - b.key)
					.map(({ each }) => each);
				const { cumulative: _, unused: _1, contradictions: ofOne, ...one } = diagnose(evidence);
				const { cumulative: _2, unused: _3, contradictions: ofTwo, ...two } = diagnose(other);
				expect(two).toEqual(one);
				expect(piecesApart(other, ofTwo)).toEqual(piecesApart(evidence, ofOne));
			}),
			runs
		);
	});

	it('two known solutions are the same two in either order', () => {
		const question = test('question', 5);
		const inSalt = reference('one', 7.15, { matrix: 'seawater' });
		const inPlain = reference('two', 5.86, { matrix: 'purified' });
		expect(diagnose([question, inPlain, inSalt]).groups).toEqual(
			diagnose([question, inSalt, inPlain]).groups
		);
	});

	it.each<[Unit, number]>([
		['meq/L', convertValue(1, 'dKH', 'meq/L')],
		['ppm CaCO3', convertValue(1, 'dKH', 'ppm CaCO3')],
		['mmol/L', convertValue(1, 'dKH', 'mmol/L')]
	])('pieces in dKH and in %s side by side say the same', (unit, size) => {
		fc.assert(
			fc.property(anyEvidence, fc.infiniteStream(fc.boolean()), (evidence, stream) => {
				const mixed = evidence.map((each) =>
					stream.next().value ? inUnit(each, unit, size) : each
				);
				const one = diagnose(evidence, { unit: 'dKH' });
				const two = diagnose(mixed, { unit });
				expect(two.trueValue.mean / size).toBeCloseTo(one.trueValue.mean, 6);
				expect(two.nothingWrong).toBeCloseTo(one.nothingWrong, 6);
				expect(two.classes.technique).toBeCloseTo(one.classes.technique, 6);
				expect(two.cumulative(8 * size)).toBeCloseTo(one.cumulative(8), 4);
			}),
			runs
		);
	});

	it('what is sent between threads says the same', () => {
		fc.assert(
			fc.property(anyEvidence, (evidence) => {
				const { cumulative, ...plain } = diagnose(evidence);
				expect(structuredClone(plain)).toEqual(plain);
				expect(typeof cumulative(8)).toBe('number');
			}),
			{ numRuns: 10 }
		);
	});

	it('an answer that only one fault makes likelier raises that fault', () => {
		const telling = cues.flatMap((cue) =>
			cue.answers.flatMap(({ id }) => {
				const raised = Object.entries(cue.likelihoods.byFault).filter(
					([, row]) => (row[id] ?? 0) > 1.2 * (cue.likelihoods.otherwise[id] ?? 0)
				);
				const [only] = raised;
				const fault = faults.find((each) => each.id === only?.[0]);
				const isForSyringe = fault?.deliveries?.includes('syringe') ?? true;
				const isOfTest = fault && !['solution', 'instrument'].includes(fault.scope);
				return raised.length === 1 && only && isForSyringe && isOfTest
					? [{ cue: cue.id, answer: id, fault: only[0] }]
					: [];
			})
		);
		const evidence = [test('question', 7.3), test('again', 7.4, 'repeatFull')];
		const before = diagnose(evidence).faults;
		// What the readings rule out altogether stays at the floor of all probabilities.
		const possible = telling.filter(({ fault }) => (before[fault] ?? 0) > 1e-5);
		expect(possible.length).toBeGreaterThan(5);
		for (const { cue, answer, fault } of possible) {
			const after = diagnose([...evidence, { kind: 'cue', cue, answer }]).faults;
			expect(after[fault], `${cue}: ${answer}`).toBeGreaterThan(before[fault] ?? 1);
		}
	});
});

describe('evidence that cannot be used is named', () => {
	it('an unknown question, an unknown answer, a test that is none of the tank', () => {
		const evidence: Evidence[] = [
			test('question', 8),
			{ kind: 'cue', cue: 'noSuchQuestion', answer: 'yes' },
			{ kind: 'cue', cue: 'light', answer: 'noSuchAnswer' },
			test('odd', 7, 'blank')
		];
		const { unused, trueValue } = diagnose(evidence);
		expect(unused.map(({ at }) => at)).toEqual([1, 2, 3]);
		for (const { why } of unused) expect(why).toMatch(/[a-z]{4}/);
		expect(trueValue.mean).toBeCloseTo(diagnose([test('question', 8)]).trueValue.mean, 9);
	});

	it('a question answered twice alike counts once', () => {
		const light: Evidence = { kind: 'cue', cue: 'light', answer: 'tank' };
		const once = diagnose([test('question', 8), light]);
		const twice = diagnose([test('question', 8), light, light]);
		expect(twice.faults).toEqual(once.faults);
	});

	it.each([
		[
			'a test that does not say where it is from',
			{ kind: 'test', reading: reading('a', 8) },
			'from'
		],
		['no kind of evidence', { kind: 'feeling', answer: 'odd' }, 'kind'],
		[
			'a ± of nothing',
			{ ...test('a', 8), reading: reading('a', 8, { expandedUncertainty: 0 }) },
			'reading.expandedUncertainty'
		],
		['a value in words', { ...test('a', 8), reading: { ...reading('a', 8), value: '8' } }, 'value'],
		['a field that means nothing', { ...second('s', 8, 0.4), colour: 'mauve' }, 'colour']
	])('a case written by hand with %s is refused by piece and field', (_, piece, field) => {
		const evidence = [test('first', 8), piece as Evidence];
		for (const asked of [diagnose, rankChecks])
			expect(() => asked(evidence)).toThrow(
				expect.objectContaining({
					name: 'RangeError',
					message: expect.stringMatching(new RegExp(`evidence\\[1\\].*${field}`))
				})
			);
	});

	it('priors and factors out of range are refused by name', () => {
		expect(() => diagnose([test('a', 8)], { priors: { lotOff: 1.2 } })).toThrow('lotOff');
		expect(() => diagnose([test('a', 8)], { pairFactor: -1 })).toThrow('pairFactor');
		expect(() => diagnose([test('a', 8)], { noneOfThesePrior: 2 })).toThrow('noneOfThesePrior');
	});

	it('a prior of what is no fault is refused with the names there are', () => {
		const priors = { lotOff: 0.1, lotOf: 0.1 };
		for (const asked of [diagnose, rankChecks])
			expect(() => asked([test('a', 8)], { priors })).toThrow(
				expect.objectContaining({
					name: 'RangeError',
					message: expect.stringMatching(
						/^priors must be by ids of .*lotOff, .*realChange.*; found lotOf$/
					)
				})
			);
		const own = only([
			fault('mine', {
				target: 'gain',
				scope: 'lot',
				prior: 0.1,
				sizes: [{ weight: 1, mean: 0.1, sd: 0.02, of: 'share' }]
			})
		]);
		expect(() =>
			diagnose([test('a', 8)], { ...own, priors: { mine: 0.2, realChange: 0.1 } })
		).not.toThrow();
		expect(() => diagnose([test('a', 8)], { ...own, priors: { lotOff: 0.2 } })).toThrow(
			'found lotOff'
		);
	});

	it.each<[Evidence, string]>([
		[
			test('b', -1, 'repeatFull'),
			'evidence[1].reading.value must be between -0.75 and 1000 dKH; found -1'
		],
		[
			test('b', 8000, 'repeatFull'),
			'evidence[1].reading.value must be between -0.75 and 1000 dKH; found 8000'
		],
		[second('s', 8000), 'evidence[1].reading.value must be between -0.75 and 1000 dKH; found 8000'],
		[earlier('e', -3, 7), 'evidence[1].reading.value must be between -0.75 and 1000 dKH; found -3'],
		[
			reference('r', 8, { nominal: 8000 }),
			'evidence[1].nominal must be between -0.75 and 1000 dKH; found 8000'
		],
		[
			inUnit(test('b', -1, 'repeatFull'), 'meq/L', 0.35665),
			'evidence[1].reading.value must be between -0.27 and 1000 meq/L; found -0.35665'
		]
	])('a number that nobody can have read is refused (%#)', (piece, message) => {
		for (const asked of [diagnose, rankChecks])
			expect(() => asked([test('a', 8), piece])).toThrow(new RangeError(message));
	});

	it('a blank may read below nothing as far as a scale goes past its end', () => {
		const blank = (value: number): Evidence => ({
			kind: 'blank',
			reading: reading('b', value),
			matrix: 'sodiumChloride'
		});
		expect(() => diagnose([test('a', 8), blank(-2.6)])).not.toThrow();
		expect(() => diagnose([test('a', 8), blank(-8)])).toThrow('evidence[1].reading.value');
	});

	it('what any unit of the analyte makes of a tank, and water that holds nothing, can have been read', () => {
		// 12 dKH are 4.28 meq/L, 214 mg/L of CaCO3 and 261 mg/L of HCO3, by definition of the units.
		for (const value of [-0.3, 0, 4.28, 12, 214, 261])
			expect(() => diagnose([test('a', 8), test('b', value, 'repeatFull')])).not.toThrow();
	});

	it('a fault with a prior of 0 is taken out', () => {
		const { faults: found } = diagnose([test('a', 8)], { priors: { lotOff: 0 } });
		expect(found).not.toHaveProperty('lotOff');
		expect(found).toHaveProperty('titrantStronger');
	});

	it('without a test in question the water alone is asked about', () => {
		const { trueValue, faults: found, unit } = diagnose([second('s', 8.2, 0.4)]);
		expect(Math.abs(trueValue.mean - 8.2)).toBeLessThan(0.1);
		expect(found).not.toHaveProperty('titrantStronger');
		expect(unit).toBe('dKH');
	});

	it.each<[string, Evidence[], RegExp]>([
		[
			'two tests in question',
			[test('a', 8), test('b', 8)],
			/one test from 'first'.*found 2, at 0 and 1/
		],
		[
			'a repeat of nothing',
			[test('a', 8, 'repeatFull')],
			/evidence must hold the test in question/
		],
		[
			'one id twice',
			[test('a', 8), second('a', 8)],
			/evidence\[1\]\.reading\.id .*found a, as in evidence\[0\]/
		]
	])('%s is refused', (_, evidence, words) => {
		expect(() => diagnose(evidence)).toThrow(RangeError);
		expect(() => diagnose(evidence)).toThrow(words);
	});
	it('a unit of another analyte is refused where it stands, with what would tell the analyte', () => {
		const calcium = test('a', 430);
		if (calcium.kind === 'test') calcium.reading = { ...calcium.reading, unit: 'mg/L' };
		expect(() => diagnose([calcium])).toThrow(
			/evidence\[0\]\.reading\.unit must be one of dKH.*neither method nor analyte; found mg\/L/
		);
		expect(() => diagnose([calcium], { analyte: 'alkalinity' })).toThrow(
			/as options\.analyte says/
		);
		expect(diagnose([calcium], { analyte: 'calcium' }).unit).toBe('mg/L');
	});
	it('a question answered in two ways is said to be', () => {
		const answers = ['white', 'tank'].map((answer): Evidence => ({
			kind: 'cue',
			cue: 'light',
			answer
		}));
		expect(diagnose([test('a', 8), ...answers]).unused).toEqual([
			{ at: 2, why: expect.stringMatching(/light was answered in two ways/) }
		]);
	});
	it('half the water is taken for a smaller sample that does not say its ratio', () => {
		const of = (more?: { sampleRatio: number }) =>
			diagnose([test('a', 8), test('b', 7, 'smallerSample', more)]).trueValue.mean;
		expect(of()).toBe(of({ sampleRatio: 0.5 }));
		expect(of()).not.toBe(of({ sampleRatio: 1 }));
	});
	it('without anything there is the broad belief about tanks', () => {
		const { trueValue, nothingWrong } = diagnose([]);
		expect(trueValue.standardDeviation).toBeGreaterThan(1.5);
		expect(nothingWrong).toBeGreaterThan(0.5);
	});
});
