import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	aragoniteSaturation,
	aragoniteSolubility,
	dicFromAlkalinityAndPh
} from '../../src/lib/chemistry';

describe('solubility of aragonite', () => {
	// Zeebe & Wolf-Gladrow 2001, CO2 in Seawater, appendix A.10: pK of aragonite 6.1883 at S 35, 25 °C
	// (from memory).
	it('is 10^-6.1883 at salinity 35 and 25 °C', () => {
		const ksp = aragoniteSolubility({ salinity: 35, temperatureC: 25 });
		expect(-Math.log10(ksp)).toBeCloseTo(6.1883, 4);
	});
});

describe('saturation of aragonite', () => {
	// The surface of the warm ocean: about 3.5 to 4 (Orr and others 2005, Nature 437:681; from memory).
	it('is about 4 in the warm surface ocean of our days', () => {
		const omega = aragoniteSaturation({
			salinity: 35,
			temperatureC: 27,
			alkalinityMolPerKg: 0.0023,
			calciumMolPerKg: 0.01028,
			ph: 8.07
		});
		expect(omega).toBeGreaterThan(3.4);
		expect(omega).toBeLessThan(4.3);
	});
	const water = fc.record({
		salinity: fc.double({ min: 25, max: 40, noNaN: true }),
		temperatureC: fc.double({ min: 18, max: 32, noNaN: true }),
		alkalinityMolPerKg: fc.double({ min: 0.0015, max: 0.0045, noNaN: true }),
		calciumMolPerKg: fc.double({ min: 0.006, max: 0.015, noNaN: true }),
		ph: fc.double({ min: 7.6, max: 8.6, noNaN: true })
	});
	it('goes with calcium, and rises with pH', () => {
		fc.assert(
			fc.property(water, (input) => {
				const omega = aragoniteSaturation(input);
				const twice = aragoniteSaturation({
					...input,
					calciumMolPerKg: 2 * input.calciumMolPerKg
				});
				expect(Math.abs(twice / omega - 2)).toBeLessThan(1e-12);
				expect(aragoniteSaturation({ ...input, ph: input.ph + 0.1 })).toBeGreaterThan(omega);
			})
		);
	});
	it('has no more carbonate than carbon', () => {
		fc.assert(
			fc.property(water, (input) => {
				const carbonate =
					(aragoniteSaturation(input) * aragoniteSolubility(input)) / input.calciumMolPerKg;
				expect(carbonate).toBeGreaterThan(0);
				expect(carbonate).toBeLessThan(dicFromAlkalinityAndPh(input));
			})
		);
	});
});
