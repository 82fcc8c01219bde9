import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/lib/judgement';
import { expectedChangeOf, type EvidenceOf } from '../../src/lib/observation';
import { adviceOn } from './advised';
import { earlier, test } from './diagnosed';

type Since = Pick<EvidenceOf<'earlier'>, 'dosed' | 'consumed' | 'expectedChange'>;
const said = (since: Since) => diagnose([test('a', 8), earlier('e', 8, 7, since)]);

describe('what was dosed and used up since an earlier reading', () => {
	it('is dosed less consumed, what was said outright, or not known', () => {
		expect(expectedChangeOf({})).toBe(0);
		expect(expectedChangeOf({ dosed: 3.5, consumed: 2 })).toBe(1.5);
		expect(expectedChangeOf({ expectedChange: -1, dosed: 3.5 })).toBe(-1);
		expect(expectedChangeOf({ dosed: 3.5 })).toBeNull();
		expect(expectedChangeOf({ consumed: 0 })).toBeNull();
	});

	it('one of the two alone is no change: two readings of 8.0 stay without a fault or a fall', () => {
		const usual = said({});
		expect(said({ dosed: 3.5, consumed: 0 }).waterChanged).toBeGreaterThan(0.4);
		for (const since of [{ dosed: 3.5 }, { consumed: 3.5 }, { dosed: 0 }]) {
			const found = said(since);
			expect(found.contradictions).toEqual([]);
			expect(found.explanations[0]?.id).toBe('none');
			expect(found.waterChanged).toBeLessThan(0.15);
			expect(found.trueValue.mean).toBeCloseTo(usual.trueValue.mean, 0);
			expect(found.inQuestion?.isFarFromBefore).toBe(false);
		}
	});

	it('the other is unknown, so that the earlier reading tells less of today', () => {
		const sd = (since: Since) => said(since).trueValue.standardDeviation;
		expect(sd({ dosed: 3.5 })).toBeGreaterThan(sd({ dosed: 3.5, consumed: 3.5 }));
		expect(sd({ dosed: 3.5, consumed: 3.5 })).toBe(sd({}));
	});

	it('both said are the change outright, by the kit or another way', () => {
		for (const more of [{}, { instrument: 'another way' }]) {
			const evidence = (since: Since) => [test('a', 7), earlier('e', 8, 7, { ...since, ...more })];
			expect(diagnose(evidence({ dosed: 2, consumed: 3 })).trueValue.mean).toBeCloseTo(
				diagnose(evidence({ expectedChange: -1 })).trueValue.mean,
				12
			);
		}
	});

	it('a reading off what they let expect is not said to lie off the reading before', () => {
		const off = [test('a', 8), earlier('e', 8, 7, { dosed: 3.5, consumed: 0 })];
		const words = adviceOn(off).decision.because.join(' ');
		expect(words).toContain('By what was dosed and used up since the reading before');
		expect(words).not.toContain('further from the one before');
		expect(adviceOn([test('a', 5), earlier('e', 8, 7)]).decision.because.join(' ')).toContain(
			'further from the one before'
		);
	});
});
