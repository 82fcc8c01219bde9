import { describe, expect, test } from 'vitest';
import { millilitresOfWater } from '$lib/metrology';

/**
 * Millilitres for a gram of water on a scale at 101.3 kPa, printed to four decimals, by temperature:
 * ISO 8655-6:2002, table A.1 (from memory). Half of the last digit is allowed, and as much again
 * since that table takes air by its pressure and this reckons with air of 1.2 g/L.
 */
const zFactors = [
	[15, 1.002],
	[20, 1.0029],
	[22, 1.0033],
	[25, 1.004],
	[30, 1.0054]
] as const;

describe('weighed water', () => {
	test.each(zFactors)('at %d °C a gram is %d mL', (temperatureC, factor) => {
		expect(Math.abs(millilitresOfWater(1, temperatureC) - factor)).toBeLessThanOrEqual(1e-4);
		expect(millilitresOfWater(5, temperatureC)).toBeCloseTo(
			5 * millilitresOfWater(1, temperatureC),
			12
		);
	});

	test('names what cannot be', () => {
		expect(() => millilitresOfWater(0, 20)).toThrow(/massG must be above 0; found 0/);
		expect(() => millilitresOfWater(1, 60)).toThrow(/temperatureC/);
	});
});
