import { describe, expect, it } from 'vitest';
import { correctionInputOf, correctionPlan, type DecideInput } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { adviceOn } from './advised';
import { earlier, reference, second, test } from './diagnosed';
import { madeCheck } from './made-diagnosis';

// What is sound in these stories is common practice, no source.

describe('a bottle of the doser ran empty', () => {
	const alone: Evidence[] = [
		test('a', 6.3),
		earlier('e', 8.2, 7),
		{ kind: 'cue', cue: 'dosing', answer: 'stopped' }
	];
	const borneOut: Evidence[] = [
		...alone,
		reference('r', 8),
		second('s', 6.4, 0.4, { method: 'photometer' }),
		test('b', 6.3, 'repeatFull')
	];

	it('a fall that a known solution and a second method bear out is made good', () => {
		const { decision } = adviceOn(borneOut);
		expect(decision).toMatchObject({ verdict: 'adjust', direction: 'raise', isVerified: true });
		expect(decision.retestInDays).toBeLessThanOrEqual(2);
	});
	it('animals that look well change nothing of that', () => {
		expect(adviceOn(borneOut, { livestock: 'well' }).decision.verdict).toBe('adjust');
	});
	it('the same fall is checked first as long as nothing independent was asked', () => {
		expect(adviceOn(alone).decision.verdict).toBe('check');
	});
	it('a known solution alone does not settle it where a quick check may well turn the advice', () => {
		const { decision, ranking } = adviceOn([...alone, reference('r', 8)]);
		expect(ranking.isEnough).toBe(false);
		expect(decision.verdict).toBe('check');
		expect(decision.check).toMatchObject({ kind: 'checks', checks: ['repeatQuick'] });
		expect(decision.check!.changesAdvice).toBeGreaterThan(0.2);
	});
	it('at the edge of the band it is left, however well it is borne out', () => {
		const atEdge: Evidence[] = [
			test('a', 6.9),
			reference('r', 8),
			second('s', 6.9, 0.4, { method: 'photometer' }),
			test('b', 6.9, 'repeatFull')
		];
		expect(adviceOn(atEdge).decision.verdict).not.toBe('adjust');
	});
});

describe('a reading far off that was made once', () => {
	const inSeawater = { matrix: 'seawater' } as const;
	// By the house syringe; what is sound is common practice, no source: whoever reads far off tests again.
	const single = (value: number, before: number, ...more: Evidence[]): Evidence[] => [
		test('a', value),
		earlier('e', before, 7),
		...more
	];
	const four = [
		[4.5, 8],
		[5.8, 8.1],
		[5, 8],
		[11.5, 8]
	] as const;
	describe.each(four)('%s after %s', (value, before) => {
		it.each(['notLooked', 'well', 'manyTroubled'] as const)(
			'is repeated first, though a known solution read right; animals: %s',
			(livestock) => {
				const evidence = single(value, before, reference('r', 8, inSeawater));
				const { decision, ranking } = adviceOn(evidence, { livestock });
				expect(decision).toMatchObject({
					verdict: 'check',
					lacks: null,
					isVerified: false,
					retestInDays: 1,
					check: { kind: 'checks', checks: ['repeatQuick'] }
				});
				expect(decision.because.join(' ')).toMatch(/was made once.*test once more/);
				expect(decision.because.join(' ')).toMatch(/kit and the hands, not for this one test/);
				expect(ranking.isEnough).toBe(false);
			}
		);
		it('without the solution likewise, and where no repeat is ranked it is what lacks', () => {
			const { decision } = adviceOn(single(value, before));
			expect(decision.check).toMatchObject({ checks: ['repeatQuick'] });
			const { decision: unranked } = adviceOn(single(value, before), { ranked: [], next: null });
			expect(unranked).toMatchObject({ verdict: 'check', lacks: 'repeat', check: null });
		});
		it('a repeat that reads the same makes it a value to act on, one that reads as before does not', () => {
			const solution = reference('r', 8, inSeawater);
			const borneOut = adviceOn(single(value, before, solution, test('b', value, 'repeatFull')));
			expect(borneOut.decision.isVerified).toBe(true);
			// By hands that mix the marks a repeat reads the same: 5.0 and 5.8 lie a tip's volume below 8.
			expect(borneOut.decision.verdict).not.toBe('leave');
			const again = test('b', before, 'repeatFull');
			const third = test('c', before, 'repeatFull');
			const slipped = adviceOn(single(value, before, solution, again, third));
			expect(slipped.decision.verdict).toBe('leave');
		});
	});
	it('an answer that explains it needs no check; the value is read anew the next day', () => {
		const { decision } = adviceOn(
			single(5.6, 8.1, { kind: 'cue', cue: 'marksUsed', answer: 'lineThenSeal' })
		);
		expect(decision).toMatchObject({ verdict: 'leave', retestInDays: 1 });
		expect(decision.because.join(' ')).toMatch(/worked out, and not read/);
	});
	it('at the edge of the band, as before, it needs no repeat', () => {
		const { decision } = adviceOn(single(6.8, 7.1, reference('r', 8, inSeawater)));
		expect(decision.verdict).toBe('leave');
	});
});

describe('what would change it', () => {
	const low: Evidence[] = [
		test('a', 6.3),
		test('b', 6.3, 'repeatFull'),
		reference('r', 8),
		second('s', 6.4, 0.4)
	];
	it.each<[string, Partial<DecideInput>]>([
		['a sitter', { who: 'sitter' }],
		['a child', { who: 'child' }],
		['a tank without corals', { hasStonyCorals: false, consumptionPerDay: 0.6 }]
	])('is nothing that is so already: %s', (_, more) => {
		const { decision } = adviceOn(low, more);
		expect(decision.verdict).toBe('leave');
		expect(decision.wouldChange.length).toBeGreaterThan(1);
		expect(decision.wouldChange.join(' ')).not.toMatch(/A value outside/);
		expect(decision.because.join(' ')).not.toMatch(/little uses it up.*too rare/);
	});
	it('of a keeper’s own tank within its band a value outside would', () => {
		const { decision } = adviceOn([test('a', 8), test('b', 8, 'repeatFull')]);
		expect(decision.wouldChange.join(' ')).toMatch(/A value outside 7\.0 to 9\.0/);
	});
});

describe('of checks that are left', () => {
	it('the first that may change the advice is made, not a question before it that cannot', () => {
		const [question, repeat] = [
			{ ...madeCheck(0), kind: 'cue' as const, cue: 'dosing' },
			madeCheck(0.38)
		];
		const { decision } = adviceOn(
			[test('a', 6), test('b', 6, 'repeatFull'), reference('r', 8), second('s', 6, 0.4)],
			{ next: question, ranked: [question, repeat], isEnough: false }
		);
		expect(decision).toMatchObject({ verdict: 'check', check: repeat });
	});
});

describe('two methods that lie 2 dKH apart', () => {
	it.each([
		['the second below the band', [test('a', 8), second('s', 6, 0.3)]],
		['the second above the band', [test('a', 8), second('s', 10, 0.3)]],
		['the kit below the band', [test('a', 6), second('s', 8, 0.3)]]
	] as const)('are checked, and it is said why: %s', (_, evidence) => {
		const { decision, ranking } = adviceOn(evidence);
		expect(ranking.isEnough).toBe(false);
		expect(decision.verdict).toBe('check');
		expect(decision.because[0]).toMatch(/Two methods .* cannot both be right/);
		expect(decision.check).toBe(ranking.ranked[0]);
	});
	it('once one of them is found out, it is in the way no longer', () => {
		const { decision } = adviceOn([
			test('a', 8),
			test('b', 8, 'repeatFull'),
			reference('r', 8),
			reference('q', 10, { instrument: 'photometer' }),
			second('s', 10, 0.5, { method: 'photometer' })
		]);
		expect(decision.verdict).toBe('leave');
	});
});

describe('two methods that lie 2 dKH apart on the same side of the band', () => {
	// The method with the narrower claim reads lower: the kit read too high, or the method too low.
	const apart: Evidence[] = [test('a', 6.5), second('s', 4.5, 0.4, { method: 'photometer' })];

	it('are checked as long as a quick check tells which of them is off', () => {
		const { decision, ranking } = adviceOn(apart);
		expect(ranking.isEnough).toBe(false);
		expect(ranking.because).toMatch(/do not agree on how far outside your band/);
		expect(decision).toMatchObject({ verdict: 'check', check: ranking.ranked[0] });
	});
	it('once no quick check is left it is moved by the smaller need, for a first step', () => {
		const { decision, diagnosis } = adviceOn(apart, { isEnough: true });
		expect(decision).toMatchObject({ verdict: 'adjust', direction: 'raise' });
		expect(decision.because[0]).toMatch(/Either way it is too low; by how much is not known/);
		expect(decision.because[1]).toMatch(/smaller need, as if the water held 6\.4 ± 0\.\d dKH/);
		expect(decision.because.join(' ')).toMatch(/agree on the side, and not on the size/);
		expect(decision.wouldChange[0]).toMatch(/Finding out which of the values/);
		const tank = { target: 8, waterL: 200, consumptionPerDay: 0, dosedPerDay: 0, salinity: 35 };
		const means = { by: 'bicarbonate', purity: 1 } as const;
		const input = correctionInputOf({ decision, diagnosis, tank, means, isUnitSure: true });
		expect(input.value.value).toBeCloseTo(6.4, 1);
		expect(input.otherValues).toEqual([expect.closeTo(4.5, 0)]);
		const plan = correctionPlan(input);
		if (plan.kind !== 'plan') throw new Error(plan.because.join(' '));
		// 1.6 dKH in steps of at most 0.5 are 4 days of 0.4; two of them are planned. By hand:
		// 2 × 0.4 × 0.35665 meq/L × 200 L × 84.006 mg = 4.79 g.
		expect(plan.days.map(({ isRetest }) => isRetest)).toEqual([false, true]);
		expect(plan.totalAmount).toBeCloseTo(4.79, 1);
		// Whichever value holds, the step ends short of the target.
		expect(plan.days.at(-1)!.expected).toBeLessThan(8);
		expect(plan.cautions.join(' ')).not.toMatch(/Go on only if/);
		expect(plan.cautions[0]).toMatch(/A first step, worked out from 6\.4 dKH\. .*4\.5 dKH instead/);
	});
	it('one that something else has found out is as good as known, and moved all the way', () => {
		const { decision, diagnosis } = adviceOn([
			...apart,
			test('b', 6.5, 'repeatFull'),
			reference('r', 8)
		]);
		expect(decision).toMatchObject({ verdict: 'adjust', direction: 'raise' });
		expect(decision.because.join(' ')).not.toMatch(/by how much is not known/);
		const input = correctionInputOf({
			decision,
			diagnosis,
			tank: {},
			means: null,
			isUnitSure: true
		});
		expect(input.otherValues).toBeUndefined();
		expect(input.value.value).toBeCloseTo(6.5, 1);
	});
	it('two too high: what is dosed is paused, and the size looked for', () => {
		const high: Evidence[] = [test('a', 12), second('s', 10, 0.4, { method: 'photometer' })];
		const { decision } = adviceOn(high, { isEnough: true });
		expect(decision.because.join(' ')).toMatch(/Pause what is dosed/);
		expect(decision.because.join(' ')).not.toMatch(/before more is added/);
	});
	it('a second method that is doubted bears nothing out, and nobody says that none was asked', () => {
		const { decision } = adviceOn([...apart, test('b', 6.5, 'repeatFull')]);
		expect(decision).toMatchObject({ verdict: 'check', isVerified: false });
		expect(decision.because.join(' ')).toMatch(/it does not agree with the kit/);
	});
});

describe('what is said of the checks that are left', () => {
	const stories: Evidence[][] = [6, 6.6, 7.2, 8, 8.9, 9.4].flatMap((value): Evidence[][] => [
		[test('a', value)],
		[test('a', value), earlier('e', 8.2, 7)],
		[test('a', value), test('b', value + 0.1, 'repeatFull'), second('s', value - 0.3, 0.6)],
		[test('a', value), reference('r', 8), test('b', value, 'repeatFull')],
		[test('a', value), reference('r', 7.4), second('s', value + 0.8, 0.4)]
	]);
	const said = stories.map((evidence) => adviceOn(evidence).ranking);
	it('never denies what the figures beside it say', () => {
		for (const { ranked, because } of said) {
			const most = Math.max(...ranked.map(({ changesAdvice }) => changesAdvice));
			if (/hardly change|No check alone/.test(because)) expect(most).toBeLessThan(0.2);
			if (/may (well )?change the advice/.test(because)) expect(most).toBeGreaterThanOrEqual(0.2);
		}
	});
	it('differs from story to story', () => {
		expect(new Set(said.map(({ because }) => because)).size).toBeGreaterThanOrEqual(4);
	});
});
