import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carbonDioxideLoss, unmixedShare } from '../../src/lib/glassware';

describe('mixing', () => {
	it('takes seconds in a vial that stands and tenths in one that is swirled', () => {
		// Common practice, no source.
		expect(unmixedShare(1, false)).toBeGreaterThan(0.8);
		expect(unmixedShare(15, false)).toBeLessThan(0.1);
		expect(unmixedShare(0.3, true)).toBeLessThan(0.5);
		expect(unmixedShare(1, true)).toBeLessThan(0.06);
	});

	it('does not depend on how the time is cut', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0, max: 20, noNaN: true }),
				fc.double({ min: 0, max: 20, noNaN: true }),
				fc.boolean(),
				(first, then, isSwirled) => {
					const whole = unmixedShare(first + then, isSwirled);
					const parts = unmixedShare(first, isSwirled) * unmixedShare(then, isSwirled);
					expect(parts).toBeCloseTo(whole, 12);
					const kept = (seconds: number) => 1 - carbonDioxideLoss(seconds, isSwirled);
					expect(kept(first) * kept(then)).toBeCloseTo(kept(first + then), 12);
				}
			)
		);
	});
});

it('CO2 leaves a swirled vial a hundred times faster than a standing one, and never all at once', () => {
	expect(carbonDioxideLoss(2, true)).toBeCloseTo(0.08, 10);
	expect(carbonDioxideLoss(2, false)).toBeLessThan(0.08 / 100);
	expect(carbonDioxideLoss(60, true)).toBeLessThan(1);
});
