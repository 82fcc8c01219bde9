import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addAcid,
	densityKgPerL,
	fillVessel,
	fitAlkalinityTitration,
	fitParameterNames,
	molPerKgFromDkh,
	phOf,
	type FitOptions,
	type ProbePoint
} from '../../src/lib/chemistry';
import { chanceOf } from '../studies/chance';
import {
	acidMolPerL,
	sampleVolumeMl,
	simulatedReadings,
	temperatureC,
	titration,
	waterOf
} from './probe-readings';

const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

describe('a fit of readings without error', () => {
	it('finds what went in: alkalinity, carbon, offset and slope', () => {
		fc.assert(
			fc.property(
				fc.record({
					alkalinityDkh: number(5, 16),
					ph: number(7.7, 8.5),
					offsetPh: number(-0.3, 0.3),
					slope: number(0.9, 1.05),
					readings: fc.integer({ min: 20, max: 60 }),
					reach: number(2, 2.6)
				}),
				(simulated) => {
					const { alkalinityMolPerKg, dicMolPerKg } = waterOf(simulated);
					const fit = fitAlkalinityTitration(simulatedReadings(simulated), {
						...titration,
						slope: 'fit'
					});
					expect(fit.isConverged).toBe(true);
					expect(Math.abs(fit.alkalinityMolPerKg / alkalinityMolPerKg - 1)).toBeLessThan(1e-5);
					expect(Math.abs(fit.dicMolPerKg / dicMolPerKg - 1)).toBeLessThan(1e-4);
					expect(Math.abs(fit.offsetPh - simulated.offsetPh)).toBeLessThan(1e-4);
					expect(Math.abs(fit.slope - simulated.slope)).toBeLessThan(1e-4);
				}
			),
			{ numRuns: 60 }
		);
	});

	it('of a solution of NaCl and of purified water too', () => {
		for (const [matrix, salinity] of [
			['sodiumChloride', 35],
			['purified', 0]
		] as const) {
			const alkalinityMolPerKg = molPerKgFromDkh(8, densityKgPerL(salinity, temperatureC));
			const start = fillVessel({
				matrix,
				salinity,
				temperatureC,
				alkalinityMolPerKg,
				dicMolPerKg: alkalinityMolPerKg,
				volumeMl: sampleVolumeMl
			});
			const points = Array.from({ length: 30 }, (_, i) => {
				const addedMl = (2 * i) / 29;
				return { addedMl, ph: phOf(addAcid(start, { volumeMl: addedMl, molPerL: acidMolPerL })) };
			});
			const fit = fitAlkalinityTitration(points, { ...titration, matrix, salinity });
			expect(Math.abs(fit.alkalinityDkh - 8)).toBeLessThan(0.002);
		}
	});

	it('the electrode follows free hydrogen ion; readings on the total scale cost less than 0.02 %', () => {
		const water = waterOf({ alkalinityDkh: 8 });
		const start = fillVessel({
			matrix: 'seawater',
			salinity: 35,
			temperatureC,
			...water,
			volumeMl: sampleVolumeMl
		});
		const points = simulatedReadings({ alkalinityDkh: 8 }).map(({ addedMl }) => ({
			addedMl,
			ph: phOf(addAcid(start, { volumeMl: addedMl, molPerL: acidMolPerL }))
		}));
		const fit = fitAlkalinityTitration(points, titration);
		expect(Math.abs(fit.alkalinityMolPerKg / water.alkalinityMolPerKg - 1)).toBeLessThan(2e-4);
		expect(Math.abs(fit.offsetTotalPh)).toBeLessThan(0.005);
	});
});

const chance = chanceOf(41);
const noisy = simulatedReadings({
	alkalinityDkh: 8,
	offsetPh: 0.07,
	slope: 0.985,
	phSd: 0.01,
	addedSdMl: 0.004,
	decimals: 2,
	normal: chance.normal
});
const fitted = fitAlkalinityTitration(noisy, titration);

describe('a fit of ordinary readings', () => {
	it('is the same in whatever order they stand', () => {
		fc.assert(
			fc.property(fc.shuffledSubarray(noisy, { minLength: noisy.length }), (shuffled) => {
				const fit = fitAlkalinityTitration(shuffled, titration);
				expect(fit.alkalinityMolPerKg).toBe(fitted.alkalinityMolPerKg);
				expect(fit.alkalinityStandardUncertaintyMolPerKg).toBe(
					fitted.alkalinityStandardUncertaintyMolPerKg
				);
				for (const { index, ph, addedMl } of fit.points)
					expect(shuffled[index]).toEqual({ addedMl, ph });
			}),
			{ numRuns: 20 }
		);
	});

	it('is the same whatever unit all volumes are in', () => {
		fc.assert(
			fc.property(number(0.05, 50), (factor) => {
				const fit = fitAlkalinityTitration(
					noisy.map(({ addedMl, ph }) => ({ addedMl: addedMl * factor, ph })),
					{ ...titration, sampleVolumeMl: sampleVolumeMl * factor }
				);
				// The solver stops at a ten-thousandth of the uncertainty.
				const u = fitted.alkalinityStandardUncertaintyDkh;
				expect(Math.abs(fit.alkalinityDkh - fitted.alkalinityDkh)).toBeLessThan(1e-3 * u);
				expect(Math.abs(fit.alkalinityStandardUncertaintyDkh / u - 1)).toBeLessThan(1e-3);
			}),
			{ numRuns: 20 }
		);
	});

	it('by mass of the sample as by its volume', () => {
		const { sampleVolumeMl: volume, ...rest } = titration;
		const byMass = fitAlkalinityTitration(noisy, {
			...rest,
			sampleMassG: volume * densityKgPerL(35, 25)
		});
		expect(byMass.alkalinityDkh).toBeCloseTo(fitted.alkalinityDkh, 9);
	});

	it('a constant offset of the meter changes nothing but the offset', () => {
		const shifted = noisy.map(({ addedMl, ph }) => ({ addedMl, ph: ph + 0.2 }));
		const fit = fitAlkalinityTitration(shifted, titration);
		expect(fit.alkalinityDkh).toBeCloseTo(fitted.alkalinityDkh, 5);
		expect(fit.offsetPh - fitted.offsetPh).toBeCloseTo(0.2, 5);
	});

	it('says how its parameters hang together', () => {
		expect(fitted.correlation).toHaveLength(fitParameterNames.length);
		fitted.correlation.forEach((row, a) =>
			row.forEach((value, b) => {
				expect(Math.abs(value)).toBeLessThanOrEqual(1 + 1e-9);
				expect(value).toBeCloseTo(fitted.correlation[b]![a]!, 9);
				if (a === b) expect(value).toBeCloseTo(1, 9);
			})
		);
		expect(fitted.degreesOfFreedom).toBeCloseTo(noisy.length - 4, 1);
	});

	it('its curve is that of its points, from nothing to the last volume', () => {
		expect(fitted.curve[0]!.addedMl).toBe(0);
		expect(fitted.curve.at(-1)!.ph).toBeCloseTo(fitted.points.at(-1)!.fittedPh, 8);
		for (const [i, { ph }] of fitted.curve.entries())
			if (i > 0) expect(ph).toBeLessThan(fitted.curve[i - 1]!.ph);
	});

	it('an acid uncertain by one per cent makes alkalinity so, as a changed strength does', () => {
		const sd = 0.01 * acidMolPerL;
		const uncertain = fitAlkalinityTitration(noisy, {
			...titration,
			acidStandardUncertaintyMolPerL: sd
		});
		const stronger = fitAlkalinityTitration(noisy, {
			...titration,
			acidMolPerL: acidMolPerL + sd
		});
		const moved = stronger.alkalinityMolPerKg - fitted.alkalinityMolPerKg;
		const added = Math.sqrt(
			uncertain.alkalinityStandardUncertaintyMolPerKg ** 2 -
				fitted.alkalinityStandardUncertaintyMolPerKg ** 2
		);
		expect(Math.abs(added / moved - 1)).toBeLessThan(0.05);
		expect(uncertain.effectiveDegreesOfFreedom).toBeGreaterThan(
			10 * fitted.effectiveDegreesOfFreedom
		);
	});

	it('readings that happen to lie on the curve are not believed beyond the last digit', () => {
		const us = Array.from({ length: 40 }, (_, i) => {
			const points = simulatedReadings({ alkalinityDkh: 6 + i / 10, readings: 6, decimals: 2 });
			return fitAlkalinityTitration(points, titration).alkalinityScatterMolPerKg;
		}).sort((a, b) => a - b);
		// By the scatter of six alone some would be next to nothing.
		expect(us[0]! / us[20]!).toBeGreaterThan(0.4);
	});
});

describe('an open vessel', () => {
	it('the last readings alone: within 1 %, however much CO2 has left', () => {
		for (const loss of [0, 0.03, 0.1, 0.3])
			for (const alkalinityDkh of [6, 8, 11]) {
				const points = simulatedReadings({ alkalinityDkh, loss, readings: 40 });
				const fit = fitAlkalinityTitration(points, { ...titration, vessel: 'open' });
				expect(Math.abs(fit.alkalinityDkh / alkalinityDkh - 1)).toBeLessThan(0.01);
				expect(fit.points.filter(({ isUsed }) => isUsed).every(({ ph }) => ph <= 4)).toBe(true);
			}
	});

	it('taken for closed it is wrong by more, and the readings wander about the curve', () => {
		const points = simulatedReadings({ alkalinityDkh: 8, loss: 0.1, readings: 40 });
		const closed = fitAlkalinityTitration(points, titration);
		expect(closed.alkalinityDkh).toBeGreaterThan(8.1);
		expect(closed.residualSdPh).toBeGreaterThan(0.01);
	});
});

describe('what cannot be fitted', () => {
	it.each<[string, readonly ProbePoint[], Partial<FitOptions>]>([
		['points must be at least 4', noisy.slice(0, 3), {}],
		['points must be at least 4 with pH up to 4', noisy.slice(0, 12), { vessel: 'open' }],
		['slope can be found only', noisy, { vessel: 'open', slope: 'fit' }],
		['slope can be found only', noisy.slice(0, 10), { slope: 'fit' }],
		['points must lie apart', noisy.map(({ ph }) => ({ addedMl: 1, ph })), {}],
		['acidMolPerL', noisy, { acidMolPerL: Number.NaN }],
		['sampleVolumeMl', noisy, { sampleVolumeMl: 0 }],
		['acidStandardUncertaintyMolPerL', noisy, { acidStandardUncertaintyMolPerL: -1 }],
		['openBelowPh', noisy, { openBelowPh: 20 }],
		['points[0].ph', [{ addedMl: 0, ph: Number.NaN }], {}]
	])('refuses by name: %s', (name, points, options) => {
		const attempt = () => fitAlkalinityTitration(points, { ...titration, ...options });
		expect(attempt).toThrow(RangeError);
		expect(attempt).toThrow(name);
	});

	it('any readings at all come to an answer or to a RangeError', () => {
		fc.assert(
			fc.property(
				fc.array(fc.record({ addedMl: number(0, 10), ph: number(0, 14) }), { maxLength: 25 }),
				fc.constantFrom('open' as const, 'closed' as const),
				(points, vessel) => {
					try {
						const fit = fitAlkalinityTitration(points, { ...titration, vessel });
						expect(Number.isFinite(fit.alkalinityMolPerKg)).toBe(true);
					} catch (error) {
						expect(error).toBeInstanceOf(RangeError);
					}
				}
			),
			{ numRuns: 60 }
		);
	}, 60_000);
});
