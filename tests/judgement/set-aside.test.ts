import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decide, diagnose, diagnoseAndRank } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { earlier, reference, second, test } from './diagnosed';

const first = test('a', 8);
const band = { low: 7, high: 9, unit: 'dKH' } as const;

function advice(evidence: readonly Evidence[]) {
	const { diagnosis, ranking } = diagnoseAndRank(evidence, { band });
	const decision = decide({
		diagnosis,
		band,
		livestock: 'notLooked',
		next: ranking.next,
		ranked: ranking.ranked,
		isEnough: ranking.isEnough,
		rate: null,
		salinity: 35
	});
	return { diagnosis, ranking, decision };
}

// A point in the wrong place: 8.0 written as 80, or as 0.80.
const misplaced: [string, Evidence][] = [
	['a repeat', test('b', 80, 'repeatFull')],
	['a repeat, too small', test('b', 0.8, 'repeatFull')],
	['a test with a fresh bottle', test('b', 80, 'freshLot')],
	['a laboratory', second('b', 80, 0.6)],
	['an earlier reading', earlier('b', 80, 7)],
	['a known solution', reference('b', 80)]
];

describe('a number beside the one in question that can hardly have been read', () => {
	it.each(misplaced)('%s: is set aside, with its reason, and believed in nothing', (_, piece) => {
		const known = [first, reference('c', 8)];
		const without = diagnose(known);
		const { diagnosis, ranking, decision } = advice([...known, piece]);
		expect(diagnosis.hasSetAside).toBe(true);
		expect(diagnosis.unused).toEqual([
			{ at: 2, why: expect.stringContaining('Look at the number once more') }
		]);
		expect(diagnosis.trueValue).toEqual(without.trueValue);
		expect(diagnosis.explanations).toEqual(without.explanations);
		expect(ranking).toMatchObject({ next: null, isEnough: false, isNumberFirst: true });
		expect(decision).toMatchObject({ verdict: 'check', lacks: 'reading', check: null });
		expect(decision.because[0]).toContain('take it back');
	});

	it('an addition is held against what was added, and a bottle may hold nothing', () => {
		const addition = (value: number): Evidence => ({
			kind: 'addition',
			reading: { ...first.reading, id: 'b', value },
			added: 20,
			addedExpandedUncertainty: 0.5
		});
		expect(diagnose([first, addition(28)]).hasSetAside).toBe(false);
		expect(diagnose([first, addition(80)]).hasSetAside).toBe(true);
		expect(diagnose([first, reference('b', 0.2)]).hasSetAside).toBe(false);
	});

	it('where the one in question is itself of no tank, what reads like it is heard', () => {
		const { diagnosis } = advice([test('a', 28), test('b', 28.5, 'repeatFull')]);
		expect(diagnosis.hasSetAside).toBe(false);
		expect(diagnosis.unused).toEqual([]);
		expect(diagnosis.isBeyondAnyTank).toBe(true);
	});

	it('whatever a tank may hold counts', () => {
		const value = fc.double({ min: 1.4, max: 22, noNaN: true });
		fc.assert(
			fc.property(value, value, (one, two) => {
				const { diagnosis } = advice([test('a', one), test('b', two, 'repeatFull')]);
				expect(diagnosis.hasSetAside).toBe(false);
				expect(diagnosis.unused).toEqual([]);
			}),
			{ numRuns: 10 }
		);
	});
});
