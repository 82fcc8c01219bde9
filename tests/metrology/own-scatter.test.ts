import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ownRepeatability, roundingCorrelation, standardDeviation } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

describe('own repeatability', () => {
	it('pools groups of any size by their degrees of freedom, by hand', () => {
		// Squares about the means: 0.02, 0.02 and 0.02; over 1 + 2 + 1 degrees.
		const own = ownRepeatability([[8.1, 8.3], [7, 7.1, 7.2], [6.5], [9, 8.8]]);
		expect(own?.degreesOfFreedom).toBe(4);
		expect(own?.sd).toBeCloseTo(Math.sqrt(0.06 / 4), 12);
	});
	it('is null while no water was tested twice', () => {
		expect(ownRepeatability([])).toBeNull();
		expect(ownRepeatability([[8], [7.9], []])).toBeNull();
	});
	it('of one group is its own standard deviation, wherever the water stood', () => {
		const value = fc.integer({ min: 40, max: 140 }).map((tenths) => tenths / 10);
		fc.assert(
			fc.property(fc.array(value, { minLength: 2, maxLength: 6 }), value, (values, shift) => {
				const own = ownRepeatability([values.map((each) => each + shift)]);
				expect(own?.sd).toBeCloseTo(standardDeviation(values), 9);
			})
		);
	});
});

describe('rounding errors of two repeats', () => {
	// The series worked out with another program: 0.44 and 0.05 for a tenth and a quarter of a step.
	it.each([
		[0, 1],
		[0.1, 0.443],
		[0.25, 0.0516]
	])('scatter of %d steps: correlation %d', (sd, rho) => {
		expect(roundingCorrelation(sd)).toBeCloseTo(rho, 3);
	});
	it('falls with scatter and stays between 0 and 1', () => {
		const sds = Array.from({ length: 60 }, (_, i) => i / 50);
		const all = sds.map(roundingCorrelation);
		expect(all).toEqual([...all].sort((a, b) => b - a));
		for (const rho of all) expect(rho >= 0 && rho <= 1).toBe(true);
	});
	it('is what rounding draws of one true value anywhere between two steps gives', () => {
		const chance = chanceOf(5);
		for (const sd of [0.05, 0.15, 0.3]) {
			let products = 0;
			const draws = 60_000;
			for (let i = 0; i < draws; i++) {
				const truth = chance.uniform();
				const error = () => {
					const x = truth + sd * chance.normal();
					return Math.round(x) - x;
				};
				products += error() * error();
			}
			// Product of two even errors has sd 1/12: three standard errors of 60,000 are 0.0010, twelvefold.
			expect(Math.abs((12 * products) / draws - roundingCorrelation(sd))).toBeLessThan(0.0125);
		}
	});
	it('no negative scatter', () => {
		expect(() => roundingCorrelation(-1)).toThrow('sdOverStep must be 0 or above; found -1');
	});
});
