import { describe, expect, it } from 'vitest';
import { densityKgPerL, salinityOfSpecificGravity } from '../../src/lib/chemistry';

describe('salinity of a specific gravity', () => {
	// UNESCO Technical Papers in Marine Science 44 (1983), check values of the equation of state:
	// 997.04796 kg/m3 for pure water and 1023.34306 for salinity 35, at 25 °C (from memory).
	it('is 35 where the published densities are those of 35', () => {
		expect(salinityOfSpecificGravity(1023.34306 / 997.04796, 25)).toBeCloseTo(35, 2);
	});
	it.each([20, 25, 30])('turns the density round at %i °C', (temperatureC) => {
		for (const salinity of [5, 20, 33, 40]) {
			const gravity = densityKgPerL(salinity, temperatureC) / densityKgPerL(0, temperatureC);
			expect(salinityOfSpecificGravity(gravity, temperatureC)).toBeCloseTo(salinity, 4);
		}
	});
	it('is hardly another for a gravity of 20 °C', () => {
		const shift = salinityOfSpecificGravity(1.0264, 20) - salinityOfSpecificGravity(1.0264, 25);
		expect(Math.abs(shift)).toBeGreaterThan(0.1);
		expect(Math.abs(shift)).toBeLessThan(0.5);
	});
	it('refuses what is no gravity of seawater', () => {
		expect(() => salinityOfSpecificGravity(35)).toThrow(
			new RangeError('specificGravity must be between 1 and 1.035; found 35')
		);
		expect(() => salinityOfSpecificGravity(1.02, 60)).toThrow(/temperatureC must be between/);
	});
});
