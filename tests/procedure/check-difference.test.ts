import { describe, expect, it } from 'vitest';
import { diagnose } from '$lib/judgement';
import { houseHardnessKit } from '$lib/kits';
import { differenceFiguresOf, methodFiguresFor } from '$lib/metrology';
import {
	EvidenceSchema,
	type KnownSolution,
	type TakenOff,
	type TestEvent
} from '$lib/observation';
import { evidenceOfTest, loadCheckLog, replayTest, testResult } from '$lib/procedure';
import { logOf, onWalk, passed, walkOf } from './tank';

/** 1.61 mL over two fillings, 40 mmol/L each. */
const walked: TestEvent[] = [
	passed,
	...onWalk(
		0,
		...walkOf(houseHardnessKit, {
			filled: [{ type: 'titrant.drawn', sealMl: 1 }],
			titrated: [{ type: 'titrant.drawn', before: { sealMl: 0 }, sealMl: 1 }],
			read: [{ type: 'marks.read', marks: { sealMl: 0.39 } }]
		})
	)
];
const taken: TestEvent = {
	in: 'test',
	event: {
		type: 'difference.taken',
		less: {
			analyte: 'calcium',
			value: 420,
			unit: 'mg/L',
			standardUncertainty: 8,
			expandedUncertainty: 16,
			from: { is: 'typed', isAssumed: false }
		},
		inCommon: []
	}
};
/** The same with calcium of another origin. */
function takenFrom(from: TakenOff['from']): TestEvent {
	if (taken.in !== 'test' || taken.event.type !== 'difference.taken')
		throw new Error('no difference');
	return { in: 'test', event: { ...taken.event, less: { ...taken.event.less, from } } };
}
const MG_PER_MMOL = 24.305;
const PER_CALCIUM = 24.305 / 40.078;

describe('a test from which calcium was taken off', () => {
	const log = logOf(houseHardnessKit, [...walked, taken]);
	const result = testResult(replayTest(log));

	it('is judged as what is left: magnesium in mg/L, with the ± of the difference', () => {
		const [first] = evidenceOfTest(log);
		if (first?.kind !== 'test') throw new Error('a test was expected');
		expect(EvidenceSchema.parse(first)).toEqual(first);
		expect(first.reading.unit).toBe('mg/L');
		expect(result?.difference).not.toBeNull();
		// 420 mg/L of calcium are 10.48 mmol/L; 24.305 g/mol of magnesium (IUPAC weights).
		const byHand = ((result?.value ?? Number.NaN) - 420 / 40.078) * 24.305;
		expect(first.reading.value).toBeCloseTo(byHand, 1);
		expect(first.reading.expandedUncertainty).toBe(result?.difference?.expandedUncertainty);
	});
	it('carries what was taken off, by which its kit is described', () => {
		const [first] = evidenceOfTest(log);
		if (first?.kind !== 'test') throw new Error('a test was expected');
		expect(first.reading.takenOff).toEqual({ value: 420, expandedUncertainty: 16, unit: 'mg/L' });
		const usual = methodFiguresFor(houseHardnessKit, 'magnesium');
		const known = methodFiguresFor(houseHardnessKit, 'magnesium', { value: 480, unit: 'mg/L' });
		// Read the wrong way round, calcium is taken off twice: 2 × 60 mg/L, mole for mole.
		const apart = (usual.fullScale ?? Number.NaN) - (known.fullScale ?? Number.NaN);
		expect(apart).toBeCloseTo(120 * PER_CALCIUM, 1);
		expect(known.wholeOverValue).toBeGreaterThan(usual.wholeOverValue ?? Number.NaN);
	});
	it('answers how old the calcium was, where the log knows', () => {
		const DAY = 86_400_000;
		const asked = (from: TakenOff['from']) =>
			evidenceOfTest(logOf(houseHardnessKit, [...walked, takenFrom(from)])).find(
				(each) => each.kind === 'cue' && each.cue === 'whichCalcium'
			);
		const ofTest = (testedAtEpochMs: number): TakenOff['from'] => ({
			is: 'test',
			testId: 't',
			testedAtEpochMs,
			kitId: 'house-calcium',
			isSuspect: false
		});
		const { startedAtEpochMs } = log;
		expect(asked({ is: 'typed', isAssumed: true })).toMatchObject({ answer: 'usual' });
		expect(asked(ofTest(startedAtEpochMs - 3_600_000))).toMatchObject({ answer: 'today' });
		expect(asked(ofTest(startedAtEpochMs - 3 * DAY))).toMatchObject({ answer: 'before' });
		expect(asked({ is: 'typed', isAssumed: false })).toBeUndefined();
		// Of the whole nothing was taken off, and nothing is asked of it.
		const whole = evidenceOfTest(log, result, { analyte: 'hardness' });
		expect(whole.some((each) => each.kind === 'cue' && each.cue === 'whichCalcium')).toBe(false);
	});
	it('speaks of the whole where that is asked, as one does from which nothing was taken off', () => {
		const whole = evidenceOfTest(log, result, { analyte: 'hardness' });
		expect(whole[0]).toMatchObject({ reading: { unit: houseHardnessKit.unit } });
		expect(evidenceOfTest(logOf(houseHardnessKit, walked))[0]).toEqual(whole[0]);
	});
	it('says nothing of magnesium where nothing was taken off', () => {
		const plain = logOf(houseHardnessKit, walked);
		expect(evidenceOfTest(plain, testResult(replayTest(plain)), { analyte: 'magnesium' })).toEqual(
			[]
		);
	});
	it('can be diagnosed by the figures of its kit for magnesium', () => {
		const method = methodFiguresFor(houseHardnessKit, 'magnesium');
		expect(method).toEqual(differenceFiguresOf(houseHardnessKit, { value: 420, unit: 'mg/L' }));
		expect(() => methodFiguresFor(houseHardnessKit, 'calcium')).toThrow('analyte must be one');
		const found = diagnose(evidenceOfTest(log), { method, analyte: 'magnesium', unit: 'mg/L' });
		expect(found.trueValue.interval95[0]).toBeLessThan(result?.difference?.value ?? Number.NaN);
		expect(found.trueValue.interval95[1]).toBeGreaterThan(result?.difference?.value ?? Number.NaN);
	}, 60_000);
});

describe('a known solution that was tested with such a kit', () => {
	const reference: KnownSolution = {
		nominal: 64,
		expandedUncertainty: 0.5,
		unit: 'mmol/L',
		matrix: 'seawater'
	};
	const known = logOf(houseHardnessKit, [
		{
			in: 'before',
			event: { type: 'circumstances.noted', circumstances: { water: 'reference', reference } }
		},
		...walked
	]);
	const whole = evidenceOfTest(known, undefined, { as: 'reference' })[0];
	const left = evidenceOfTest(known, undefined, { as: 'reference', analyte: 'magnesium' })[0];

	it('speaks of magnesium by its error, mole for mole, and by the proportions of the sea', () => {
		if (whole?.kind !== 'reference' || left?.kind !== 'reference') throw new Error('two solutions');
		expect(EvidenceSchema.parse(left)).toEqual(left);
		const errorOfWhole = whole.reading.value - whole.nominal;
		expect(left.reading.value - left.nominal).toBeCloseTo(errorOfWhole * MG_PER_MMOL, 6);
		expect(left.reading.expandedUncertainty).toBeCloseTo(
			whole.reading.expandedUncertainty * MG_PER_MMOL,
			6
		);
		expect(left.nominalExpandedUncertainty).toBeCloseTo(0.5 * MG_PER_MMOL, 6);
		// The sea has 5.14 of magnesium for each of calcium (Millero and others 2008, from memory), tanks
		// about as much: 64 mmol/L of both are some 53.5 of magnesium.
		expect(Math.abs(left.nominal / MG_PER_MMOL - 53.5)).toBeLessThan(1);
	});
	it('is nothing to calcium, which this kit never gives alone', () => {
		expect(evidenceOfTest(known, undefined, { as: 'reference', analyte: 'calcium' })).toEqual([]);
	});
	it('puts a reading right that is as far off as it is', () => {
		if (left?.kind !== 'reference') throw new Error('a solution');
		const method = methodFiguresFor(houseHardnessKit, 'magnesium');
		const [first] = evidenceOfTest(logOf(houseHardnessKit, [...walked, taken]));
		if (first?.kind !== 'test') throw new Error('a test was expected');
		const found = (by: number) =>
			diagnose(
				[
					first,
					{ ...left, reading: { ...left.reading, id: 'once', value: left.nominal + by } },
					{ ...left, reading: { ...left.reading, id: 'again', value: left.nominal + by } }
				],
				{ method, analyte: 'magnesium', unit: 'mg/L' }
			).trueValue.mean;
		const change = found(150) - found(0);
		expect(change).toBeLessThan(-50);
		expect(change).toBeGreaterThan(-150);
	}, 60_000);
});

describe('a check of it', () => {
	const check = (analyte: string) => ({
		format: 1,
		id: 'c',
		startedAtEpochMs: 0,
		analyte,
		kit: houseHardnessKit,
		kitVersion: 0,
		entries: []
	});
	it('can be stored with the kit that gives it, and not with one that does not', () => {
		for (const analyte of ['magnesium', 'hardness'])
			expect(loadCheckLog(check(analyte)).analyte).toBe(analyte);
		expect(() => loadCheckLog(check('calcium'))).toThrow('gives by difference');
	});
});
