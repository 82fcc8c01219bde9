import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { roundToTotal } from '../../../src/lib/ui/charts/round-to-total';

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

describe('roundToTotal', () => {
	test('gives the missing unit to the part that lost most', () => {
		// By hand: floors 0.3 + 0.3 + 0.3 miss 1.0 by one tenth; 0.34 lost most.
		expect(roundToTotal([0.34, 0.33, 0.33], 1, 0.1)).toEqual([0.4, 0.3, 0.3]);
	});

	test('rounds negative parts too', () => {
		expect(roundToTotal([-1.93, -0.27, 0.21, 0.19], -1.8, 0.1)).toEqual([-1.9, -0.3, 0.2, 0.2]);
	});

	test('printed parts always add up to the printed total, each within one unit of itself', () => {
		fc.assert(
			fc.property(
				fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 1, maxLength: 12 }),
				(parts) => {
					const total = sum(parts);
					const rounded = roundToTotal(parts, total, 0.1);
					expect(Math.round(sum(rounded) * 10) - Math.round(total / 0.1)).toBeCloseTo(0, 9);
					rounded.forEach((each, i) =>
						expect(Math.abs(each - (parts[i] ?? 0))).toBeLessThanOrEqual(0.1 + 1e-9)
					);
				}
			)
		);
	});

	test('meets a total that is itself a printed difference and misses the sum by rounding', () => {
		// 7.14 prints 7.1 and 8.96 prints 9.0: the printed difference is −1.9, the exact one −1.82.
		const rounded = roundToTotal([-1.62, -0.2], -1.9, 0.1);
		expect(Math.round(sum(rounded) * 10)).toBe(-19);
	});

	test.each([
		[[1], 1, 0, 'step must be above 0; found 0'],
		[[1], Number.NaN, 0.1, 'total must be finite; found NaN'],
		[[Number.NaN], 1, 0.1, 'parts must be finite; found NaN']
	])('refuses %j, %d, %d', (parts, total, step, message) => {
		expect(() => roundToTotal(parts, total, step)).toThrow(new RangeError(message));
	});
});
