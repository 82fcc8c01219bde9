import { describe, expect, it } from 'vitest';
import { buretteLimitMl, meanRate, syringeLimitMl } from '../../src/lib/metrology';

// Source: ISO 7886-1:2017, table 1, for syringes of these capacities; worked by hand. The rules for 1 and
// 10 mL below half are confirmed by a published test of syringes, the other cells are from memory.
describe('ISO 7886-1: what a syringe may be off', () => {
	it.each([
		{ capacityMl: 0.5, expelledMl: 0.5, limitMl: 0.025 },
		{ capacityMl: 0.5, expelledMl: 0.1, limitMl: 0.0095 },
		{ capacityMl: 1, expelledMl: 1, limitMl: 0.05 },
		{ capacityMl: 1, expelledMl: 0.5, limitMl: 0.025 },
		{ capacityMl: 1, expelledMl: 0.25, limitMl: 0.02 },
		{ capacityMl: 1, expelledMl: 0.1, limitMl: 0.017 },
		{ capacityMl: 2, expelledMl: 2, limitMl: 0.1 },
		{ capacityMl: 2.5, expelledMl: 1, limitMl: 0.0575 },
		{ capacityMl: 5, expelledMl: 5, limitMl: 0.2 },
		{ capacityMl: 5, expelledMl: 4, limitMl: 0.16 },
		{ capacityMl: 5, expelledMl: 2, limitMl: 0.095 },
		{ capacityMl: 10, expelledMl: 10, limitMl: 0.4 },
		{ capacityMl: 10, expelledMl: 5, limitMl: 0.2 },
		{ capacityMl: 10, expelledMl: 4, limitMl: 0.19 },
		{ capacityMl: 10, expelledMl: 2, limitMl: 0.17 }
	])('$expelledMl of $capacityMl mL: $limitMl mL', ({ capacityMl, expelledMl, limitMl }) => {
		expect(syringeLimitMl(capacityMl, expelledMl)).toBeCloseTo(limitMl, 12);
	});
	it('a tenth of a small syringe is off by up to a sixth of it', () => {
		expect(syringeLimitMl(1, 0.1) / 0.1).toBeCloseTo(0.17, 12);
	});
	it.each([
		[0, 0.5, 'capacityMl must be above 0; found 0'],
		[1, -0.1, 'expelledMl must be 0 or above; found -0.1'],
		[1, Number.NaN, 'expelledMl must be 0 or above; found NaN']
	])('bad input is named (%#)', (capacityMl, expelledMl, message) => {
		expect(() => syringeLimitMl(capacityMl, expelledMl)).toThrow(new RangeError(message));
	});
});

// Source: ISO 385:2005, class A 0.02, 0.03 and 0.05 mL for 10, 25 and 50 mL, class B twice that
// (from memory).
it.each([
	[10, 0.04],
	[25, 0.06],
	[50, 0.1]
])('ISO 385: a burette of %d mL, class B: %d mL', (capacityMl, limitMl) => {
	expect(buretteLimitMl(capacityMl)).toBe(limitMl);
});

// Source: NIST Statistical Reference Datasets, Norris (public domain): B1 = 1.00211681802045, its
// standard deviation 0.000429796848199937, B0 = −0.262323073774029, residual sd 0.884796396144373.
describe('a straight line reaches the certified values of NIST StRD, Norris', () => {
	const x = [
		0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5,
		666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2,
		999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5
	];
	const y = [
		0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8,
		339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5,
		778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2
	];
	it('slope, intercept and residual, whatever the points claim of themselves', () => {
		const rate = meanRate(
			x.map((day, i) => ({ day, value: y[i] ?? Number.NaN, standardUncertainty: 0.5 }))
		);
		expect(rate?.perDay).toBeCloseTo(1.00211681802045, 12);
		expect(rate?.atZero).toBeCloseTo(-0.262323073774029, 10);
		// They claim 0.5 and scatter by 0.885: that decides.
		expect((rate?.scatterRatio ?? 0) * 0.5).toBeCloseTo(0.884796396144373, 10);
		expect(rate?.standardUncertainty).toBeCloseTo(0.000429796848199937, 12);
	});
});
