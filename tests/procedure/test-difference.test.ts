import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { convertValue, unitsOf, type Kit } from '$lib/kits';
import type {
	Circumstances,
	TakenOff,
	TestEvent,
	ThingInCommon,
	WalkEvent
} from '$lib/observation';
import { summaryFor } from '$lib/observation';
import {
	differenceRemarks,
	loadTestLog,
	replayTest,
	summaryOf,
	testResult,
	withUndo,
	type TestResult,
	type TestState
} from '$lib/procedure';
import { logOf, onWalk, passed, TEN_PAST_SIX, walkOf } from './tank';
import { calciumKit, hardnessKit } from './tank-kits';

const HOUR = 3_600_000;
const refill: WalkEvent = { type: 'titrant.drawn', before: { sealMl: 0.02 }, sealMl: 1 };
const filled: WalkEvent[] = [{ type: 'titrant.drawn', sealMl: 1 }];
/** 1.59 mL over two fillings: 0.98 and 0.61. At 40 mmol/L each, 63.6 mmol/L of both. */
const titrated = onWalk(
	0,
	...walkOf(hardnessKit, {
		filled,
		titrated: [refill],
		read: [{ type: 'marks.read', marks: { sealMl: 0.39 } }]
	})
);
const taken = (less: TakenOff, inCommon: ThingInCommon[] = []): TestEvent => ({
	in: 'test',
	event: { type: 'difference.taken', less, inCommon }
});
const calcium = (more: Partial<TakenOff> = {}): TakenOff => ({
	analyte: 'calcium',
	value: 412.8,
	unit: 'mg/L',
	standardUncertainty: 8,
	expandedUncertainty: 16,
	from: { is: 'typed', isAssumed: false },
	...more
});
function testedWith(events: TestEvent[], kit: Kit = hardnessKit) {
	const log = logOf(kit, [passed, ...titrated, ...events]);
	const state = replayTest(log);
	expect(state.refused).toBeNull();
	const result = testResult(state, { kit });
	if (!result) throw new Error('a result expected');
	return { log, state, result };
}
function leftOf({ difference }: TestResult) {
	if (!difference) throw new Error('a difference expected');
	return difference;
}
const remarksOf = (state: TestState, result: TestResult, circumstances: Circumstances = {}) =>
	differenceRemarks(leftOf(result), {
		testedAtEpochMs: TEN_PAST_SIX,
		circumstances,
		kit: state.kit
	});

describe('magnesium as what is left of both', () => {
	test('by hand: 63.6 less 10.3 mmol/L is 53.3, 1295 mg/L', () => {
		const { result } = testedWith([taken(calcium())]);
		expect(result.value).toBeCloseTo(63.6, 9);
		expect(result.counted[0]?.refills).toBe(1);
		const left = leftOf(result);
		// IUPAC abridged atomic weights: Ca 40.078, Mg 24.305 g/mol.
		expect(left.sum.less.value).toBeCloseTo(412.8 / 40.078, 9);
		expect(left.sum.left.value).toBeCloseTo(63.6 - 412.8 / 40.078, 9);
		expect(left).toMatchObject({ analyte: 'magnesium', unit: 'mg/L' });
		expect(left.value).toBeCloseTo((63.6 - 412.8 / 40.078) * 24.305, 6);
		// JCGM 100:2008, eq. 10, in moles.
		const u = Math.hypot(result.standardUncertainty, 8 / 40.078) * 24.305;
		expect(left.standardUncertainty).toBeCloseTo(u, 6);
		// 24.305 / 40.078: what an error of calcium does to magnesium.
		expect(left.perUnitTakenOff).toBeCloseTo(0.60644, 5);
	});

	test('the sample syringe, bottle and barrel in common make it surer, and only they', () => {
		const shared = { sampleVolume: 6, titrantStrength: 4 };
		const of = (things: ThingInCommon[]) =>
			leftOf(testedWith([taken(calcium({ shared }), things)]).result).standardUncertainty;
		const separate = of([]);
		expect(of(['delivery'])).toBeCloseTo(separate, 9);
		expect(of(['sampler'])).toBeLessThan(separate);
		expect(of(['sampler', 'titrant'])).toBeLessThan(of(['sampler']));
		// By hand, eq. 16: −2 · 0.9 · (63.6 mmol/L share of the syringe) · (6 mg/L).
		const { result } = testedWith([]);
		const ofWhole = result.lines.find(({ id }) => id === 'sampleVolume')?.contribution ?? 0;
		expect(ofWhole).toBeGreaterThan(0.5);
		const covariance = 0.9 * ofWhole * (6 / 40.078) * 24.305 ** 2;
		expect(of(['sampler']) ** 2).toBeCloseTo(separate ** 2 - 2 * covariance, 4);
	});

	test('in whatever units both were given, the same moles are left', () => {
		const units = fc.record({
			whole: fc.constantFrom(...unitsOf('hardness')),
			less: fc.constantFrom(...unitsOf('calcium')),
			value: fc.double({ min: 200, max: 600, noNaN: true })
		});
		fc.assert(
			fc.property(units, ({ whole, less, value }) => {
				const size = convertValue(1, 'mmol/L', whole, 'hardness');
				const kit: Kit = {
					...hardnessKit,
					unit: whole,
					conversion: { kind: 'perMl', valuePerMl: 40 * size, offset: 0 }
				};
				const inUnit = (mgPerL: number) => convertValue(mgPerL, 'mg/L', less, 'calcium');
				const other = calcium({
					value: inUnit(value),
					unit: less,
					standardUncertainty: inUnit(8),
					expandedUncertainty: inUnit(16)
				});
				const left = leftOf(testedWith([taken(other)], kit).result);
				const same = leftOf(testedWith([taken(calcium({ value }))]).result);
				expect(left.value).toBeCloseTo(same.value, 6);
				expect(left.expandedUncertainty).toBeCloseTo(same.expandedUncertainty, 6);
			}),
			{ numRuns: 60 }
		);
	});

	test('another one takes its place, taken back the one before stands again', () => {
		const { log, state } = testedWith([taken(calcium()), taken(calcium({ value: 430 }))]);
		expect(state.difference?.less.value).toBe(430);
		const last = log.entries.at(-1);
		const once = withUndo(log, { id: 'u1', at: TEN_PAST_SIX + 1e6, undoes: last?.id ?? '' });
		expect(replayTest(once).difference?.less.value).toBe(412.8);
		const first = log.entries.at(-2);
		const twice = withUndo(once, { id: 'u2', at: TEN_PAST_SIX + 2e6, undoes: first?.id ?? '' });
		expect(replayTest(twice).difference).toBeNull();
		expect(testResult(replayTest(twice))?.difference).toBeNull();
		// All of it is still in the log, and goes out and in as a file does.
		expect(loadTestLog(JSON.parse(JSON.stringify(twice)))).toEqual(twice);
	});

	test('a corrected leaflet values it anew', () => {
		const { state } = testedWith([taken(calcium())]);
		const corrected: Kit = {
			...hardnessKit,
			conversion: { kind: 'perMl', valuePerMl: 41, offset: 0 }
		};
		const result = testResult(state, { kit: corrected });
		expect(result?.difference?.value).toBeCloseTo((1.59 * 41 - 412.8 / 40.078) * 24.305, 6);
	});

	test('nothing is taken off where the kit is for no such thing, or before anything was tested', () => {
		const wrongUnit = replayTest(
			logOf(hardnessKit, [passed, ...titrated, taken(calcium({ unit: 'dKH' }))])
		);
		expect(wrongUnit.refused).not.toBeNull();
		const early = replayTest(logOf(hardnessKit, [taken(calcium())]));
		expect(early.refused).not.toBeNull();
		const plain = replayTest(
			logOf(calciumKit, [
				passed,
				...onWalk(
					0,
					...walkOf(calciumKit, { filled, read: [{ type: 'marks.read', marks: { sealMl: 0.3 } }] })
				),
				taken(calcium())
			])
		);
		expect(plain.refused).not.toBeNull();
	});
});

describe('what is kept of it', () => {
	test('a summary of both says magnesium too, and nothing of calcium', () => {
		const { state, result } = testedWith([taken(calcium())]);
		const summary = summaryOf(state, result);
		expect(summaryFor(summary, 'hardness', 'hardness')).toBe(summary);
		expect(summaryFor(summary, 'hardness', 'calcium')).toBeNull();
		const magnesium = summaryFor(summary, 'hardness', 'magnesium');
		expect(magnesium).toMatchObject({
			unit: 'mg/L',
			value: leftOf(result).value,
			values: [leftOf(result).value],
			isSuspect: false
		});
		expect(magnesium).not.toHaveProperty('difference');
	});

	test('that of calcium has what a difference needs: its lasting parts and the salinity', () => {
		const salinity = { value: 35, unit: 'PSU' } as const;
		const log = logOf(calciumKit, [
			{ in: 'before', event: { type: 'circumstances.noted', circumstances: { salinity } } },
			passed,
			...onWalk(
				0,
				...walkOf(calciumKit, {
					filled,
					titrated: [refill, refill],
					read: [{ type: 'marks.read', marks: { sealMl: 0.88 } }]
				})
			)
		]);
		const state = replayTest(log);
		const result = testResult(state);
		if (!result) throw new Error('a result expected');
		// 0.98 twice and 0.12: 2.08 mL at 200 mg/L each.
		expect(result.value).toBeCloseTo(416, 9);
		const summary = summaryOf(state, result);
		expect(summary.salinity).toEqual(salinity);
		const lasting = Math.hypot(...Object.values(summary.shared ?? {}));
		const scatter = Math.sqrt(summary.standardUncertainty ** 2 - lasting ** 2);
		expect(scatter).toBeCloseTo(summary.repeatabilitySd, 6);
		expect(Object.keys(summary.shared ?? {})).toContain('sampleVolume');
	});
});

describe('what should be known of it', () => {
	const byTest = (hours: number, more: object = {}) =>
		calcium({
			from: {
				is: 'test',
				testId: 't',
				testedAtEpochMs: TEN_PAST_SIX - hours * HOUR,
				kitId: 'k',
				isSuspect: false,
				salinity: { value: 35, unit: 'PSU' },
				...more
			}
		});
	const idsOf = (less: TakenOff, circumstances?: Circumstances) => {
		const { state, result } = testedWith([taken(less)]);
		return remarksOf(state, result, circumstances).map(({ id, tone }) => [id, tone]);
	};
	test.each([
		['of the same day', byTest(3), []],
		['of the day before yesterday', byTest(40), [['old', 'say']]],
		['older', byTest(100), [['old', 'warn']]],
		['younger by days', byTest(-100), [['old', 'warn']]],
		['in doubt itself', byTest(1, { isSuspect: true }), [['suspect', 'warn']]],
		['assumed', calcium({ from: { is: 'typed', isAssumed: true } }), [['assumed', 'warn']]],
		['typed from a measurement', calcium(), []],
		// 2500 mg/L of calcium leave next to nothing, 1800 less than any tank has.
		['so high that nothing is left', calcium({ value: 2500 }), [['nothingLeft', 'warn']]],
		['so high that little is left', calcium({ value: 1800 }), [['implausible', 'warn']]]
	] as const)('%s', (_name, less, ids) => {
		expect(idsOf(less)).toEqual(ids);
	});

	test('waters of different salinity, in units that compare', () => {
		expect(idsOf(byTest(1), { salinity: { value: 35.5, unit: 'g/kg' } })).toEqual([]);
		expect(idsOf(byTest(1), { salinity: { value: 33, unit: 'PSU' } })).toEqual([
			['salinity', 'warn']
		]);
		expect(idsOf(byTest(1), { salinity: { value: 53, unit: 'mS/cm' } })).toEqual([]);
		const gravity = byTest(1, { salinity: { value: 1.0264, unit: 'specificGravity' } });
		const at = (value: number) => idsOf(gravity, { salinity: { value, unit: 'specificGravity' } });
		expect(at(1.026)).toEqual([]);
		expect(at(1.0245)).toEqual([['salinity', 'warn']]);
	});

	test('says in words what it means', () => {
		const { state, result } = testedWith([taken(byTest(100))]);
		expect(remarksOf(state, result)[0]?.text).toBe(
			'The calcium test is 4 days older than this one: the water may hold another value by now.'
		);
	});
});
