import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { differenceOf } from '$lib/metrology';

const positive = (max: number) => fc.double({ min: 1e-3, max, noNaN: true });

describe('a value that is what is left', () => {
	test('two separate values: their uncertainties add as squares (JCGM 100:2008, eq. 10)', () => {
		// 63.4 − 10.3 mmol/L, 0.8 and 0.25 by hand: √(0.64 + 0.0625) = 0.83815.
		const left = differenceOf(
			{ value: 63.4, standardUncertainty: 0.8 },
			{ value: 10.3, standardUncertainty: 0.25 }
		);
		expect(left.value).toBeCloseTo(53.1, 12);
		expect(left.standardUncertainty).toBeCloseTo(0.83815, 5);
		// Normal: 1.959964 (table of the normal distribution).
		expect(left.expandedUncertainty / left.standardUncertainty).toBeCloseTo(1.959964, 5);
	});

	test('a cause in common takes itself out: one syringe 2 % large makes both 2 % high', () => {
		// Nothing but that syringe: u of the difference is 2 % of the difference (eq. 16 with r = 1).
		const left = differenceOf(
			{ value: 60, standardUncertainty: 1.2, shared: { sampleVolume: 1.2 } },
			{ value: 10, standardUncertainty: 0.2, shared: { sampleVolume: 0.2 } },
			[{ cause: 'sampleVolume', correlation: 1 }]
		);
		expect(left.standardUncertainty).toBeCloseTo(0.02 * 50, 12);
		expect(left.separateUncertainty).toBeCloseTo(Math.hypot(1.2, 0.2), 12);
	});

	test('of few degrees of freedom it is wider: Welch–Satterthwaite by hand', () => {
		// Equal parts of 1 with 4 degrees each: 4 / (1/4 + 1/4) = 8; t(0.975; 8) = 2.306 (t table).
		const left = differenceOf(
			{ value: 20, standardUncertainty: 1, degreesOfFreedom: 4 },
			{ value: 10, standardUncertainty: 1, degreesOfFreedom: 4 }
		);
		expect(left.degreesOfFreedom).toBeCloseTo(8, 10);
		expect(left.coverageFactor).toBeCloseTo(2.306, 3);
	});

	test('never surer than perfect agreement, never less sure than two separate values', () => {
		fc.assert(
			fc.property(
				positive(100),
				positive(100),
				positive(5),
				positive(5),
				fc.double({ min: 0, max: 1, noNaN: true }),
				fc.double({ min: 0, max: 1, noNaN: true }),
				(whole, less, u1, u2, share, correlation) => {
					const left = differenceOf(
						{ value: whole, standardUncertainty: u1, shared: { bottle: share * u1 } },
						{ value: less, standardUncertainty: u2, shared: { bottle: share * u2 } },
						[{ cause: 'bottle', correlation }]
					);
					expect(left.standardUncertainty).toBeLessThanOrEqual(left.separateUncertainty + 1e-9);
					expect(left.standardUncertainty).toBeGreaterThanOrEqual(Math.abs(u1 - u2) - 1e-9);
				}
			)
		);
	});

	test('the unit of both does not matter', () => {
		fc.assert(
			fc.property(positive(100), positive(5), positive(1000), (value, u, size) => {
				const at = (scale: number) =>
					differenceOf(
						{
							value: 2 * value * scale,
							standardUncertainty: u * scale,
							shared: { lot: 0.5 * u * scale }
						},
						{
							value: value * scale,
							standardUncertainty: 0.4 * u * scale,
							shared: { lot: 0.3 * u * scale }
						},
						[{ cause: 'lot', correlation: 0.9 }]
					);
				expect(at(size).standardUncertainty / size).toBeCloseTo(at(1).standardUncertainty, 9);
				expect(at(size).value / size).toBeCloseTo(at(1).value, 9);
			})
		);
	});

	test('nonsense is named', () => {
		const fine = { value: 1, standardUncertainty: 0.1 };
		expect(() => differenceOf({ ...fine, value: Number.NaN }, fine)).toThrow(/whole\.value/);
		expect(() => differenceOf(fine, { ...fine, standardUncertainty: -1 })).toThrow(
			/less\.standardUncertainty must be 0 or above; found -1/
		);
		expect(() => differenceOf(fine, fine, [{ cause: 'lot', correlation: 1.2 }])).toThrow(/lot/);
		expect(() => differenceOf({ ...fine, shared: { lot: -1 } }, fine)).toThrow(
			/whole\.shared\.lot/
		);
	});
});
