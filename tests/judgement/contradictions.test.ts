import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/lib/judgement';
import type { Evidence } from '../../src/lib/observation';
import { bareMethod, earlier, inUnit, reference, second, test } from './diagnosed';

const placesOf = (evidence: readonly Evidence[]) =>
	(diagnose(evidence).contradictions ?? []).map(({ at }) => at);

describe('evidence that does not fit together', () => {
	it('repeats differ by scatter alone: the difference and its ± as by hand', () => {
		// No spread but the scatter and the drop: √2 · √(scatter² + (value of the drop)²/12) for the standard deviation.
		const method = { ...bareMethod, scatterSd: 0.2 };
		const [found] =
			diagnose([test('a', 7), test('b', 8.5, 'repeatFull')], { method }).contradictions ?? [];
		expect(found?.at).toEqual([0, 1]);
		expect(found?.difference).toBeCloseTo(1.5, 9);
		// The readings state a repeatability of 0.18 dKH of their own.
		expect(found?.ordinary).toBeCloseTo(2 * Math.SQRT2 * 0.18, 1);
	});

	it('three far apart contradict each other, the furthest first', () => {
		expect(
			placesOf([test('a', 6.3), test('b', 8.3, 'repeatFull'), test('c', 10, 'repeatFull')])
		).toEqual([
			[0, 2],
			[0, 1],
			[1, 2]
		]);
	});

	it('another bottle that reads otherwise is named, a known solution that reads right is not', () => {
		expect(placesOf([test('a', 7.2), reference('r', 8), test('c', 8.6, 'freshLot')])).toEqual([
			[0, 2]
		]);
	});

	it('it is said what lies apart: two methods, two tests, two days, a known solution', () => {
		const betweenOf = (evidence: readonly Evidence[]) =>
			(diagnose(evidence).contradictions ?? []).map(({ between }) => between);
		expect(betweenOf([test('a', 8), second('s', 6, 0.3)])).toEqual(['methods']);
		expect(betweenOf([test('a', 8), test('b', 6, 'freshLot')])).toEqual(['tests']);
		expect(betweenOf([test('a', 6), earlier('e', 8.5, 7)])).toEqual(['days']);
		expect(betweenOf([test('a', 8), reference('r', 6)])).toEqual(['solution']);
	});

	it('a known solution that reads off stands by itself', () => {
		const [found] =
			diagnose([test('a', 7.2), reference('r', 6.4, { matrix: 'seawater' })]).contradictions ?? [];
		expect(found?.at).toEqual([1]);
		expect(found?.difference).toBeCloseTo(-1.6, 9);
	});

	it('a fall since last week is one, unless it was to be expected', () => {
		const fallen = [test('a', 5.5), earlier('e', 8.5, 7)];
		const [found] = diagnose(fallen).contradictions ?? [];
		expect(found?.at).toEqual([0, 1]);
		expect(found?.difference).toBeCloseTo(3, 9);
		expect(placesOf([test('a', 5.5), earlier('e', 8.5, 7, { expectedChange: -3 })])).toEqual([]);
	});

	it('nothing is made of what agrees within its ±, nor of units', () => {
		const agreeing = [test('a', 7.6), test('b', 7.8, 'repeatFull'), second('s', 8, 0.5)];
		expect(placesOf(agreeing)).toEqual([]);
		const apart = [test('a', 6.5), test('b', 8.2, 'repeatFull')];
		const [inDkh] = diagnose(apart).contradictions ?? [];
		const inMeq = diagnose(
			apart.map((each) => inUnit(each, 'meq/L', 0.35665)),
			{ unit: 'dKH' }
		);
		expect(inMeq.contradictions?.[0]?.difference).toBeCloseTo(inDkh?.difference ?? 0, 2);
	});
});
