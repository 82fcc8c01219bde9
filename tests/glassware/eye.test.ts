import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	ONE_ML_SYRINGE_DEPTH_MM,
	ONE_ML_SYRINGE_ML_PER_MM,
	parallaxMl,
	scaleInWords
} from '../../src/lib/glassware';

describe('parallax', () => {
	const shift = (degrees: number) =>
		parallaxMl(degrees, ONE_ML_SYRINGE_DEPTH_MM, ONE_ML_SYRINGE_ML_PER_MM);

	it('is depth times the tangent of the angle, nothing at the level, and turns with it', () => {
		expect(shift(0)).toBe(0);
		// By hand: tan 20° = 0.36397, times 2.3 mm, over 57 mm per mL.
		expect(shift(20)).toBeCloseTo(0.014687, 5);
		expect(shift(-20)).toBeCloseTo(-shift(20), 12);
	});

	it('stays finite however the eye is held', () => {
		expect(Math.abs(shift(90))).toBeLessThan(0.1);
	});
});

describe('a scale in words', () => {
	const scale = { graduationMl: 0.02, numeralEveryMl: 0.1, highestMl: 1 };

	it.each([
		[0.46, 'on the third short line past the long line marked 0.4'],
		[0.47, 'halfway past the third short line past the long line marked 0.4'],
		[0.4, 'on the long line marked 0.4'],
		[0, 'on the long line marked 0'],
		[1, 'on the long line marked 1'],
		[1.1, 'past the last numeral, 1'],
		[-0.1, 'below the 0 line']
	])('%s mL stands %s', (numeral, words) => {
		expect(scaleInWords(numeral, scale)).toBe(words);
	});

	it('prints no numeral but those printed on the scale', () => {
		fc.assert(
			fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (numeral) => {
				const found = scaleInWords(numeral, scale).match(/\d+(\.\d+)?/g) ?? [];
				expect(found).toHaveLength(1);
				const printed = Number(found[0]);
				expect(Math.abs(printed / 0.1 - Math.round(printed / 0.1))).toBeLessThan(1e-9);
				expect(printed).toBeLessThanOrEqual(numeral + 0.0013);
				expect(printed).toBeGreaterThan(numeral - 0.1 - 0.0013);
			})
		);
	});
});
