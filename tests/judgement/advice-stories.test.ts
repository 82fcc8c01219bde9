import { describe, expect, it } from 'vitest';
import { decide, diagnoseAndRank, type DecideInput } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { earlier, reference, second, test } from './diagnosed';

/** From what was read to what to do, as the check does it; what is sound is common practice, no source. */
function adviceOn(evidence: readonly Evidence[], more: Partial<DecideInput> = {}) {
	const { diagnosis, ranking } = diagnoseAndRank(evidence);
	const decision = decide({
		diagnosis,
		band: { low: 7, high: 9, unit: 'dKH' },
		livestock: 'notLooked',
		next: ranking.ranked[0] ?? null,
		isEnough: ranking.isEnough,
		salinity: 35,
		...more
	});
	return { decision, ranking };
}

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
		expect(decision.isVerified).toBe(true);
		expect(ranking.isEnough).toBe(false);
		expect(ranking.ranked[0]!.changesAdvice).toBeGreaterThan(0.2);
		expect(decision.verdict).toBe('check');
		expect(decision.check).toBe(ranking.ranked[0]);
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
