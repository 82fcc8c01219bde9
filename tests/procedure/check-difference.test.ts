import { describe, expect, it } from 'vitest';
import { diagnose } from '$lib/judgement';
import { houseHardnessKit } from '$lib/kits';
import { differenceFiguresOf, methodFiguresFor } from '$lib/metrology';
import { EvidenceSchema, type TestEvent } from '$lib/observation';
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
