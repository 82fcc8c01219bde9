import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	dropperDropFactor,
	fallSeconds,
	heldMl,
	holdingHand,
	secondsToHold
} from '../../src/lib/glassware';

describe('a falling drop', () => {
	it('takes √(2h/g): a tenth of a second for 5 cm, 0.4515 s for a metre', () => {
		// Textbook free fall (Galilei); 1 m with standard gravity 9.80665 m/s² (CGPM 1901).
		expect(fallSeconds(5)).toBeCloseTo(0.101, 3);
		expect(fallSeconds(100)).toBeCloseTo(0.4516, 4);
	});
});

describe('a hand that holds', () => {
	const hand = holdingHand(0.02);

	it('lets the first drop swell for 0.6 s', () => {
		expect(secondsToHold(hand, 0.02)).toBeCloseTo(0.6, 10);
	});

	it('makes drops come ever faster past 1.5 s, up to a stream', () => {
		const gaps = Array.from(
			{ length: 40 },
			(_, i) => secondsToHold(hand, 0.02 * (i + 2)) - secondsToHold(hand, 0.02 * (i + 1))
		);
		for (const [i, gap] of gaps.entries())
			expect(gap).toBeLessThanOrEqual((gaps[i - 1] ?? 1) + 1e-12);
		expect(gaps[gaps.length - 1]).toBeCloseTo(1 / 12, 6);
	});

	it('gives the time for a volume and the volume for a time, each undoing the other', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0, max: 12, noNaN: true }),
				fc.double({ min: 0.005, max: 0.1, noNaN: true }),
				(seconds, dropMl) => {
					const any = holdingHand(dropMl);
					expect(secondsToHold(any, heldMl(any, seconds))).toBeCloseTo(seconds, 8);
				}
			)
		);
	});
});

describe('a dropper bottle', () => {
	it('held at a slant gives smaller drops: 5 to 15 % more are counted', () => {
		// Common practice, no source.
		for (const degrees of [25, 45, 60]) {
			const over = 1 / dropperDropFactor(degrees, false) - 1;
			expect(over).toBeGreaterThanOrEqual(0.05);
			expect(over).toBeLessThanOrEqual(0.15);
		}
	});

	it('squeezed hard gives larger drops: 5 to 10 % fewer are counted', () => {
		// Common practice, no source.
		const under = 1 - 1 / dropperDropFactor(0, true);
		expect(under).toBeGreaterThanOrEqual(0.05);
		expect(under).toBeLessThanOrEqual(0.1);
		expect(dropperDropFactor(0, false)).toBe(1);
	});
});
