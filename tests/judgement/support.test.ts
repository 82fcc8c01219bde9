import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { earnedConclusions, supportOf, type SupportInput } from '../../src/lib/judgement';
import {
	conclusions,
	type Conclusion,
	type BenchEvidence,
	type Reading
} from '../../src/lib/observation';
import { verdictsOf } from '../../src/lib/judgement/practice/support-verdicts';

let made = 0;
/** Readings of a made-up syringe kit: ± 0.4, repeats within 0.15 of each other as a rule. */
const reading = (value: number, id = `reading ${++made}`): Reading => ({
	id,
	label: 'Test',
	value,
	expandedUncertainty: 0.4,
	repeatabilitySd: 0.14,
	unit: 'dKH'
});
const own = reading(8, 'own');
const test = (
	from: Extract<BenchEvidence, { kind: 'test' }>['from'],
	value: number
): BenchEvidence => ({
	kind: 'test',
	from,
	reading: reading(value)
});
const second = (value: number, expandedUncertainty = 0.5): BenchEvidence => ({
	kind: 'secondMethod',
	reading: { ...reading(value), expandedUncertainty, repeatabilitySd: undefined }
});
const known = (
	found: number,
	nominal = 8,
	matrix: Extract<BenchEvidence, { kind: 'reference' }>['matrix'] = 'sodiumChloride'
): BenchEvidence => ({
	kind: 'reference',
	reading: reading(found),
	nominal,
	nominalExpandedUncertainty: 0.1,
	matrix
});
const earlier = (value: number): BenchEvidence => ({
	kind: 'earlier',
	daysAgo: 7,
	reading: reading(value)
});

const judge = (
	conclusion: Conclusion,
	evidence: BenchEvidence[],
	more: Partial<SupportInput> = {}
): string => supportOf({ reading: own, evidence, conclusion, ...more }).verdict;

/** What each conclusion is worth on the same evidence, in the order of every screen. */
const judgeAll = (evidence: BenchEvidence[]) =>
	Object.fromEntries(conclusions.map((each) => [each, judge(each, evidence)]));

describe('with nothing but the reading', () => {
	it('nothing is earned but not to know yet', () => {
		expect(judgeAll([])).toEqual({
			stands: 'notYet',
			technique: 'notYet',
			reagent: 'notYet',
			secondMethod: 'notYet',
			waterChanged: 'notYet',
			salinity: 'notYet',
			// Nothing was taken off an alkalinity.
			carriedOver: 'against',
			cantTellYet: 'earned'
		});
	});
	it('the reading itself, handed in among the evidence, proves nothing', () => {
		expect(judgeAll([{ kind: 'test', from: 'first', reading: own }])).toEqual(judgeAll([]));
	});
});

describe('that the reading stands', () => {
	it('is not earned by repeats, however many agree: they share every bias', () => {
		const repeats = [8, 8.1, 8, 7.9].map((value) => test('repeatFull', value));
		expect(judge('stands', repeats)).toBe('notYet');
		expect(judge('cantTellYet', repeats)).toBe('earned');
	});
	it('is earned by a known solution that reads right, or a second method that agrees', () => {
		expect(judge('stands', [known(8.1)])).toBe('earned');
		expect(judge('stands', [second(8.4)])).toBe('earned');
	});
	it('is not earned by a second method that differs: one of two is off', () => {
		expect(judge('stands', [second(9)])).toBe('notYet');
		// A known solution that reads right clears the kit, not the one test: that may have slipped.
		expect(judge('stands', [second(9), known(8.1)])).toBe('notYet');
		expect(judge('stands', [second(9), known(8.1), test('repeatFull', 8)])).toBe('earned');
	});
	it('is no longer earned with a repeat that came out elsewhere, and falls when others side with that', () => {
		expect(judge('stands', [second(8.1), known(8)])).toBe('earned');
		expect(judge('stands', [second(8.1), known(8), test('repeatFull', 8.6)])).not.toBe('earned');
		expect(judge('stands', [second(8.9), known(8), test('repeatFull', 8.9)])).toBe('against');
	});
	it('is shaken by a known solution that reads off, and falls when a second method says the same', () => {
		expect(judge('stands', [known(7.2)])).toBe('notYet');
		expect(judge('stands', [known(7), second(9.1)])).toBe('against');
	});
	it('is not shaken by a plain-water solution that reads as low as such solutions do', () => {
		const evidence = [known(7.6, 8, 'purified'), test('repeatFull', 8)];
		expect(judge('stands', evidence)).toBe('earned');
		expect(judge('stands', evidence, { matrixEffect: { purified: -0.2 } })).toBe('earned');
		// It is for its own matrix alone.
		const inSalt = [known(7.3, 8), test('repeatFull', 8)];
		expect(judge('stands', inSalt)).not.toBe('earned');
		expect(judge('stands', inSalt, { matrixEffect: { purified: -0.7 } })).not.toBe('earned');
		expect(judge('stands', inSalt, { matrixEffect: { sodiumChloride: -0.7 } })).toBe('earned');
	});
	it('is not shaken by a solution so wrong that a second method could not agree', () => {
		const evidence = [known(2.7), second(8.1)];
		expect(judge('stands', evidence)).toBe('earned');
		expect(judge('reagent', [...evidence, test('repeatFull', 8)])).toBe('against');
	});
	it('is shaken by one that a second method leaves room for', () => {
		// Ten in a hundred low: the tank would hold 8.9, and 8.5 ± 0.5 allows both.
		expect(judge('stands', [known(7.2), second(8.5)])).not.toBe('earned');
	});
});

describe('that it was technique', () => {
	it('is earned by a careful repeat that differs by more than scatter', () => {
		expect(judge('technique', [test('repeatFull', 8.6)])).toBe('earned');
		expect(judge('technique', [test('repeatFull', 8.3)])).toBe('notYet');
	});
	it('holds a repeat against the scatter, not against what the kit claims', () => {
		// 0.6 apart: 2.8 · 0.14 = 0.39; of hands that scatter by 0.4, it would be nothing.
		const evidence = [test('repeatFull', 8.6)];
		expect(judge('technique', evidence)).toBe('earned');
		const wide = (each: Reading): Reading => ({ ...each, repeatabilitySd: 0.4 });
		const wideRepeat = evidence.map((each) => ({ ...each, reading: wide(each.reading) }));
		expect(judge('technique', wideRepeat, { reading: wide(own) })).toBe('notYet');
	});
	it('counts an own first test as a repeat where an earlier reading is in question', () => {
		expect(judge('technique', [test('first', 8.9)])).toBe('earned');
	});
	it('is spoken against by repeats that agree while a known solution reads right', () => {
		expect(judge('technique', [test('repeatFull', 8), known(8)])).toBe('against');
	});
	it('is not ruled out by repeats alone: a habit repeats too', () => {
		expect(judge('technique', [test('repeatFull', 8)])).toBe('notYet');
		const habit = [test('repeatFull', 8), known(5.4), test('freshLot', 8)];
		expect(judge('technique', habit)).toBe('earned');
	});
	it('is earned by fresh water that reads otherwise: so was the sample', () => {
		expect(judge('technique', [test('freshSample', 7)])).toBe('earned');
		expect(judge('waterChanged', [earlier(7), test('freshSample', 7)])).toBe('against');
	});
});

describe('that it was the reagent', () => {
	const off = known(7.1);
	it('needs repeats that agree, and a known solution or a fresh bottle that is off', () => {
		expect(judge('reagent', [off])).toBe('notYet');
		expect(judge('reagent', [test('freshLot', 9)])).toBe('notYet');
		expect(judge('reagent', [test('repeatFull', 8)])).toBe('notYet');
		// What reads a known solution off, time and again, may be hands, ware or that solution as well;
		// and where bottles differ, the one test with the other bottle may have slipped.
		expect(judge('reagent', [test('repeatFull', 8), off])).toBe('notYet');
		expect(judge('reagent', [test('repeatQuick', 8), test('freshLot', 9)])).toBe('notYet');
		const lots = [test('freshLot', 9), { ...test('freshLot', 9), reading: reading(9.1, 'again') }];
		expect(judge('reagent', [test('repeatQuick', 8), ...lots])).toBe('earned');
	});
	it('is earned by both of those, even without a repeat', () => {
		expect(judge('reagent', [off, test('freshLot', 9)])).toBe('earned');
	});
	it('is spoken against by a known solution that reads right, or a fresh bottle that reads the same', () => {
		expect(judge('reagent', [test('repeatFull', 8), known(8)])).toBe('against');
		expect(judge('reagent', [test('repeatFull', 8), test('freshLot', 8.1)])).toBe('against');
	});
	it('waits while tests with that bottle differ among themselves', () => {
		expect(judge('reagent', [test('repeatFull', 9), off])).toBe('notYet');
	});
});

describe('that it was the second method', () => {
	it('needs a known solution that the own kit reads right', () => {
		expect(judge('secondMethod', [second(9.5)])).toBe('notYet');
		// The one test may have slipped, though the kit is cleared: that takes a repeat.
		expect(judge('secondMethod', [second(9.5), known(8)])).toBe('notYet');
		expect(judge('secondMethod', [second(9.5), test('repeatFull', 8)])).toBe('notYet');
		expect(judge('secondMethod', [second(9.5), test('repeatFull', 8), known(8)])).toBe('earned');
		expect(judge('secondMethod', [second(9.5), known(7)])).toBe('against');
	});
	it('falls when the two agree within what both claim', () => {
		expect(judge('secondMethod', [second(8.6), known(8)])).toBe('against');
	});
	it('falls when it sides with the own repeat', () => {
		expect(judge('secondMethod', [second(9.5), test('repeatFull', 9.4), known(8)])).toBe('against');
	});
});

describe('that the water changed', () => {
	it('needs the reading confirmed and the kit checked', () => {
		expect(judge('waterChanged', [earlier(9.5)])).toBe('notYet');
		expect(judge('waterChanged', [earlier(9.5), known(8)])).toBe('notYet');
		expect(judge('waterChanged', [earlier(9.5), test('repeatFull', 8)])).toBe('notYet');
		const checked = [earlier(9.5), test('repeatFull', 8), known(8)];
		expect(judge('waterChanged', checked)).toBe('earned');
	});
	it('or a second method that finds the new value as well', () => {
		expect(judge('waterChanged', [earlier(9.5), second(8.2)])).toBe('earned');
	});
	it('cannot be said of a change within what both readings allow', () => {
		const checked = [test('repeatFull', 8), known(8)];
		expect(judge('waterChanged', [earlier(8.5), ...checked])).toBe('against');
		// Nor within what a tank does in a week by itself.
		expect(judge('waterChanged', [earlier(8.6), ...checked])).toBe('against');
		expect(judge('waterChanged', [earlier(9.4), ...checked])).toBe('earned');
	});
	it('cannot be said without anything from before', () => {
		expect(judge('waterChanged', [test('repeatFull', 8), known(8)])).toBe('notYet');
	});
});

describe('that it cannot be told yet', () => {
	it('is no longer right once anything else is earned', () => {
		expect(judge('cantTellYet', [second(9.2)])).toBe('earned');
		for (const decisive of [known(8), second(8.1), test('repeatFull', 9)])
			expect(judge('cantTellYet', [decisive])).toBe('notYet');
	});
});

describe('the check that would have told more', () => {
	const more = (
		conclusion: Conclusion,
		evidence: BenchEvidence[],
		offered?: SupportInput['offered']
	) => supportOf({ reading: own, evidence, conclusion, offered }).wouldTellMore;
	it('is one that was to be had', () => {
		expect(more('stands', [], ['repeatFull', 'secondMethod'])).toBe('secondMethod');
		expect(more('stands', [], ['repeatFull'])).toBe('repeatFull');
		expect(more('stands', [], [])).toBeNull();
	});
	it('is one that can prove it, where proof is missing', () => {
		expect(['reference', 'secondMethod']).toContain(more('stands', []));
		expect(more('waterChanged', [earlier(9.5)], ['repeatFull', 'reference'])).toBe('reference');
		// A cause is best looked for by what tells most for its cost.
		expect(more('technique', [], ['repeatFull', 'reference'])).toBe('repeatFull');
	});
	it('goes by the minutes that a check takes there', () => {
		const taking = (reference: number, secondMethod: number) =>
			supportOf({
				reading: own,
				evidence: [],
				conclusion: 'stands',
				offered: ['reference', 'secondMethod'],
				minutes: { reference, secondMethod }
			}).wouldTellMore;
		expect(taking(5, 60)).toBe('reference');
		expect(taking(60, 5)).toBe('secondMethod');
	});
	it('is none that was made already', () => {
		expect(more('stands', [test('repeatFull', 8)], ['repeatFull'])).toBeNull();
		expect(more('reagent', [known(7.1)], ['reference', 'freshLot'])).toBe('freshLot');
	});
	it('is none where nothing is missing', () => {
		expect(more('stands', [known(8)])).toBeNull();
	});
	it('is told even where not to know was right', () => {
		expect(more('cantTellYet', [])).not.toBeNull();
		expect(more('cantTellYet', [second(9.2)], ['repeatFull', 'secondMethod'])).toBe('repeatFull');
		expect(
			more('cantTellYet', [second(9.2), test('repeatFull', 8)], ['repeatFull', 'secondMethod'])
		).toBeNull();
	});
});

it('the order in which evidence came changes nothing', () => {
	const evidence = [
		earlier(9.5),
		test('repeatFull', 8.1),
		second(7.2),
		known(8, 8, 'purified'),
		test('freshLot', 8)
	];
	const forth = judgeAll(evidence);
	expect(judgeAll([...evidence].reverse())).toEqual(forth);
	expect(Object.values(forth)).toContain('earned');
	expect(earnedConclusions({ reading: own, evidence })).toEqual(
		conclusions.filter((each) => forth[each] === 'earned')
	);
});

describe('a change that the reading hides by a slip', () => {
	// Last time 8.1, today 8 by a hand that went too far: another method and a careful repeat find 6.2.
	const hidden = [earlier(8.1), second(6.2)];
	const found = [...hidden, test('repeatFull', 6.2)];
	it('is not spoken against by the reading alone: to repeat that comes first', () => {
		const { verdict, why, wouldTellMore } = supportOf({
			reading: own,
			evidence: hidden,
			conclusion: 'waterChanged',
			offered: ['reference', 'repeatFull']
		});
		expect(verdict).toBe('notYet');
		expect(why).toMatch(/Repeat the reading with care first/);
		expect(wouldTellMore).toBe('repeatFull');
		expect(judge('secondMethod', hidden)).not.toBe('earned');
	});
	it('is earned by a repeat that sides with the other method, which then is not what is off', () => {
		expect(judge('waterChanged', found)).toBe('earned');
		expect(judge('technique', found)).toBe('earned');
		expect(judge('secondMethod', found)).toBe('against');
		expect(supportOf({ reading: own, evidence: found, conclusion: 'waterChanged' }).why).toMatch(
			/^The reading slipped\./
		);
	});
	it('is worth what the rest is worth without that reading', () => {
		const repeat = reading(6.2, 'the repeat');
		const asked = (question: Reading, evidence: BenchEvidence[]) =>
			verdictsOf(question, evidence).weights.waterChanged;
		const without = asked(repeat, hidden);
		const slipped = asked(own, [...hidden, { kind: 'test', from: 'repeatFull', reading: repeat }]);
		expect(slipped).toBeCloseTo(without, 12);
		// The reading as it was had spoken for the one from before.
		expect(without).toBeGreaterThan(0.75);
	});
	it('is not found by a repeat alone, nor where the other method found none', () => {
		const repeated = test('repeatFull', 6.2);
		expect(judge('waterChanged', [earlier(8.1), repeated])).not.toBe('earned');
		expect(judge('waterChanged', [earlier(8.1), second(8), repeated])).not.toBe('earned');
		expect(judge('waterChanged', [earlier(8.1), second(10), repeated])).not.toBe('earned');
	});
	it('is spoken against by a reading that was repeated and by a method that found none', () => {
		const confirmed = [earlier(8.1), second(7.9), test('repeatFull', 8)];
		expect(judge('waterChanged', confirmed)).toBe('against');
		expect(judge('waterChanged', [earlier(8.1), second(7.9)])).toBe('against');
	});
	it('is none where a tank drifts as far by itself in the time between', () => {
		const after = (daysAgo: number) =>
			judge('waterChanged', [
				{ kind: 'earlier', daysAgo, reading: reading(8.1) },
				second(6.4),
				test('repeatFull', 6.4)
			]);
		expect(after(1)).toBe('earned');
		expect(after(30)).toBe('notYet');
	});
	it('is less sure where it rose: a sample taken after dosing rises as well', () => {
		const rose = [earlier(7), second(8.7), test('repeatFull', 8.7)];
		const fell = [earlier(8.7), second(7), test('repeatFull', 7)];
		const asked = (value: number, evidence: BenchEvidence[]) =>
			verdictsOf(reading(value, 'own'), evidence).weights.waterChanged;
		expect(asked(7, rose)).toBeLessThan(asked(8.7, fell));
	});
	it('comes out the same in whatever order it was found', () => {
		const more = [...found, test('repeatQuick', 6.4)];
		expect(judgeAll([...more].reverse())).toEqual(judgeAll(more));
	});
});

it('a second method that shows no change never earns one, whatever the reading and its repeats', () => {
	const value = fc.integer({ min: 50, max: 110 }).map((tenths) => tenths / 10);
	const repeats = fc.array(value, { maxLength: 2 });
	fc.assert(
		fc.property(value, value, repeats, (before, now, again) => {
			const evidence = [
				earlier(before),
				second(before),
				...again.map((each) => test('repeatFull', each))
			];
			expect(judge('waterChanged', evidence, { reading: reading(now, 'own') })).not.toBe('earned');
		}),
		{ numRuns: 40, seed: 1 }
	);
});

describe('the reason that is given', () => {
	const why = (conclusion: Conclusion, evidence: BenchEvidence[]) =>
		supportOf({ reading: own, evidence, conclusion }).why;
	it('is the fact that says the same', () => {
		expect(why('technique', [test('repeatFull', 8.9)])).toBe(
			'The same water and bottles gave another value in the same hands.'
		);
	});
	it('is otherwise how probable it has become, in tenths, and what is likelier', () => {
		expect(why('stands', [second(9), known(8.1)])).toMatch(
			/^By what you collected it is about [1-7] in 10 that the tank holds what was read/
		);
	});
	it('never has a decimal, a per cent, nothing or all', () => {
		for (const evidence of [[], [known(2.7), second(8)], [test('repeatFull', 12)], [known(8)]])
			for (const conclusion of conclusions) {
				const said = why(conclusion, evidence);
				expect(said).not.toMatch(/\d\.\d|%|\b(0|10) in 10|certain|correct/);
				expect(said).toMatch(/[.]$/);
			}
	});
});
