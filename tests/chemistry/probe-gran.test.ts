import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { granEndPoint, type GranOptions, type ProbePoint } from '../../src/lib/chemistry';
import { simulatedReadings, titration, waterOf, type Simulated } from './probe-readings';

/** A meter that shows the total scale in this water: so the windows are meant. */
const TOTAL_SCALE = -0.108;

const errorPercent = (simulated: Simulated, options: Partial<GranOptions> = {}) =>
	100 *
	(granEndPoint(
		simulatedReadings({ readings: 200, reach: 2, offsetPh: TOTAL_SCALE, ...simulated }),
		{
			...titration,
			...options
		}
	).endVolumeMl /
		waterOf(simulated).endMl -
		1);

describe('the plain Gran function in seawater', () => {
	// Low in a closed vessel, since bicarbonate is left. Sizes worked out beforehand by a separate
	// program for 7 dKH, printed to 0.1 %, its readings weighted otherwise.
	it.each([
		[3.0, 3.5, -0.3],
		[3.5, 4.0, -1.3],
		[3.8, 4.3, -2.6]
	])('pH %d to %d, closed: about %d %', (low, high, percent) => {
		const found = errorPercent({ alkalinityDkh: 7 }, { windowPh: { low, high } });
		expect(Math.abs(found / percent - 1)).toBeLessThan(0.1);
	});

	it('with CO2 driven off: within 0.3 %', () => {
		for (const [low, high] of [
			[3.0, 3.5],
			[3.5, 4.0],
			[3.8, 4.3]
		] as const)
			expect(
				Math.abs(errorPercent({ alkalinityDkh: 7, loss: 0.6 }, { windowPh: { low, high } }))
			).toBeLessThan(0.3);
	});

	it('does not care for a constant offset of the meter', () => {
		const options = { windowPh: { low: 2.5, high: 4 } };
		const points = simulatedReadings({ alkalinityDkh: 8, readings: 60 });
		const shifted = points.map(({ addedMl, ph }) => ({ addedMl, ph: ph + 0.31 }));
		const own = granEndPoint(points, { ...titration, ...options });
		const other = granEndPoint(shifted, {
			...titration,
			windowPh: { low: 2.81, high: 4.31 }
		});
		expect(other.endVolumeMl).toBeCloseTo(own.endVolumeMl, 9);
		expect(other.offsetPh - own.offsetPh).toBeCloseTo(0.31, 9);
	});

	it('loses 0.2 to 0.9 % by an electrode whose slope is 3 % off', () => {
		for (const windowPh of [
			{ low: 3.0, high: 3.5 },
			{ low: 3.0, high: 4.0 }
		])
			for (const slope of [0.97, 1.03]) {
				const cost = Math.abs(
					errorPercent({ alkalinityDkh: 7, loss: 0.6, slope }, { windowPh }) -
						errorPercent({ alkalinityDkh: 7, loss: 0.6 }, { windowPh })
				);
				expect(cost).toBeGreaterThan(0.2);
				expect(cost).toBeLessThan(0.9);
			}
	});
});

describe('the corrected Gran function', () => {
	it('is right within 0.1 % in a closed vessel, from 3.0 to 3.5', () => {
		for (const alkalinityDkh of [5, 8, 12])
			expect(
				Math.abs(errorPercent({ alkalinityDkh }, { granFunction: 'hanssonJagner1973' }))
			).toBeLessThan(0.1);
	});

	it('finds the offset of the meter', () => {
		const points = simulatedReadings({ alkalinityDkh: 8, offsetPh: 0.08, readings: 60 });
		const { offsetPh } = granEndPoint(points, {
			...titration,
			granFunction: 'hanssonJagner1973',
			dicMolPerKg: waterOf({ alkalinityDkh: 8 }).dicMolPerKg
		});
		expect(offsetPh).toBeCloseTo(0.08, 3);
	});
});

describe('what a Gran end point says', () => {
	const points = simulatedReadings({ alkalinityDkh: 8, readings: 40 });
	const found = granEndPoint(points, titration);

	it('names function, window and points, and its line goes through the end', () => {
		expect(found.granFunction).toBe('gran1952');
		expect(found.windowPh).toEqual({ low: 3, high: 3.5 });
		expect(found.points.filter(({ isUsed }) => isUsed)).toHaveLength(found.pointsUsed);
		expect(found.degreesOfFreedom).toBe(found.pointsUsed - 2);
		expect(found.line.intercept + found.line.slope * found.endVolumeMl).toBeCloseTo(0, 12);
		for (const { value, lineValue, residual } of found.points)
			expect(value - lineValue).toBeCloseTo(residual, 12);
	});

	it('the uncertainty of acid, sample and delivery goes into alkalinity, not into the end', () => {
		const uncertain = granEndPoint(points, {
			...titration,
			acidStandardUncertaintyMolPerL: 0.003,
			sampleRelativeStandardUncertainty: 0.04,
			deliveryRelativeStandardUncertainty: 0
		});
		expect(uncertain.endVolumeStandardUncertaintyMl).toBe(found.endVolumeStandardUncertaintyMl);
		// 3 % and 4 % make 5 %.
		const share = uncertain.alkalinityStandardUncertaintyDkh / uncertain.alkalinityDkh;
		expect(share).toBeGreaterThan(0.05);
		expect(share).toBeLessThan(0.0505);
	});

	it('is the same in whatever order the readings stand', () => {
		const order = fc.shuffledSubarray(points, { minLength: points.length });
		fc.assert(
			fc.property(order, (shuffled) => {
				expect(granEndPoint(shuffled, titration)).toEqual(found);
			})
		);
	});

	it('gives the same alkalinity whatever unit all volumes are in', () => {
		fc.assert(
			fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (factor) => {
				const other = granEndPoint(
					points.map(({ addedMl, ph }) => ({ addedMl: addedMl * factor, ph })),
					{ ...titration, sampleVolumeMl: titration.sampleVolumeMl * factor }
				);
				expect(other.alkalinityDkh / found.alkalinityDkh).toBeCloseTo(1, 9);
				expect(other.endVolumeStandardUncertaintyMl / factor).toBeCloseTo(
					found.endVolumeStandardUncertaintyMl,
					9
				);
			})
		);
	});

	// A line of three points by hand: V0 + v is 100, 101, 102 and F is 1e-2, 2e-2, 3e-2 in mL·mol/L,
	// so the end lies at v = −1 + ... one step before the first.
	it('goes by the line: three points by hand', () => {
		const byHand: ProbePoint[] = [1, 2, 3].map((times, i) => ({
			addedMl: 5 + i,
			ph: -Math.log10((times * 0.05) / (105 + i))
		}));
		const { endVolumeMl, line, alkalinityMolPerKg } = granEndPoint(byHand, {
			...titration,
			sampleVolumeMl: 100,
			windowPh: { low: 2.5, high: 3.5 }
		});
		expect(endVolumeMl).toBeCloseTo(4, 9);
		expect(line.slope).toBeCloseTo(0.05, 9);
		expect(alkalinityMolPerKg).toBeCloseTo((4 * 0.1) / 100 / 1.02334, 6);
	});

	it.each<[string, readonly ProbePoint[], Partial<GranOptions>]>([
		['acidMolPerL', points, { acidMolPerL: 0 }],
		['salinity', points, { salinity: 50 }],
		['temperatureC', points, { temperatureC: 41 }],
		['sampleVolumeMl or sampleMassG', points, { sampleMassG: 50 }],
		['windowPh.high', points, { windowPh: { low: 3.5, high: 3 } }],
		[
			'points[1].ph',
			[
				{ addedMl: 0, ph: 8 },
				{ addedMl: 1, ph: 16 }
			],
			{}
		],
		['points[0].addedMl', [{ addedMl: -1, ph: 8 }], {}],
		['points must hold at least 3', points.slice(0, 10), {}],
		['addedStandardUncertaintyMl', points, { addedStandardUncertaintyMl: -1 }]
	])('refuses by name: %s', (name, list, options) => {
		expect(() => granEndPoint(list, { ...titration, ...options })).toThrow(RangeError);
		expect(() => granEndPoint(list, { ...titration, ...options })).toThrow(name);
	});
});
