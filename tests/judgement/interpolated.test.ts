import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interpolated } from '../../src/lib/judgement/catalogue/interpolated';

describe('a curve known at some places', () => {
	const at = [5, 8, 12];
	const values = [-0.1, -0.4, 0.4];
	it.each([
		[5, -0.1],
		[6.5, -0.25],
		[8, -0.4],
		[9, -0.2],
		[12, 0.4]
	])('at %f it is %f', (x, value) => {
		expect(interpolated(at, values, x)).toBeCloseTo(value, 12);
	});
	it('is flat beyond its ends', () => {
		expect(interpolated(at, values, -3)).toBe(-0.1);
		expect(interpolated(at, values, 40)).toBe(0.4);
	});
	it('of a straight line is that line', () => {
		fc.assert(
			fc.property(fc.double({ min: 5, max: 12, noNaN: true }), (x) => {
				expect(
					interpolated(
						at,
						at.map((place) => 3 * place - 7),
						x
					)
				).toBeCloseTo(3 * x - 7, 9);
			})
		);
	});
});
