import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addAcid,
	fillVessel,
	phFromAlkalinityAndDic,
	phOf,
	titrateInTheOpen,
	titrateWithAcid,
	type OpenStep
} from '../../src/lib/chemistry';

const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

const ordinary = {
	salinity: 35,
	temperatureC: 25,
	alkalinityMolPerKg: 0.0024,
	dicMolPerKg: 0.0021,
	sampleVolumeMl: 5,
	acidMolPerL: 0.01
};

const anyTitration = fc.record({
	salinity: number(0, 45),
	temperatureC: number(0, 40),
	alkalinityMolPerKg: number(-0.02, 0.02),
	dicMolPerKg: number(0, 0.02),
	sampleVolumeMl: number(0.5, 100),
	acidMolPerL: number(0.001, 1)
});
/** Acid by its share of the alkalinity. */
const mlOf = (input: typeof ordinary, times: number) =>
	(times * Math.abs(input.alkalinityMolPerKg) * input.sampleVolumeMl * 1.02) / input.acidMolPerL;

describe('titration with acid', () => {
	it('starts at the pH of the water', () => {
		fc.assert(
			fc.property(anyTitration, (input) => {
				const [first] = titrateWithAcid(input, [0]);
				expect(Math.abs(first!.ph - phFromAlkalinityAndDic(input))).toBeLessThan(1e-8);
			}),
			{ numRuns: 500 }
		);
	});

	it('is a number at every point, up to ten times the alkalinity', () => {
		fc.assert(
			fc.property(anyTitration, fc.array(number(0, 10), { maxLength: 30 }), (input, times) => {
				const points = titrateWithAcid(
					input,
					times.map((each) => mlOf(input, each))
				);
				for (const { ph } of points) {
					expect(ph).toBeGreaterThan(0);
					expect(ph).toBeLessThan(14);
				}
			}),
			{ numRuns: 500 }
		);
	});

	it('falls with every addition, where the acid is stronger than the sample already is', () => {
		fc.assert(
			fc.property(
				anyTitration.filter((input) => input.alkalinityMolPerKg > 0.0005),
				(input) => {
					const points = titrateWithAcid(
						input,
						[0, 0.2, 0.5, 0.9, 1, 1.1, 2, 5].map((times) => mlOf(input, times))
					);
					// Acid as weak as the excess in the mixture only dilutes it.
					if (input.acidMolPerL < 0.1) return;
					for (let i = 1; i < points.length; i++)
						expect(points[i]!.ph).toBeLessThan(points[i - 1]!.ph);
				}
			),
			{ numRuns: 500 }
		);
	});

	it('gives a point the same pH to the last digit in whatever list it stands', () => {
		const wanted = [0.3, 1.1, 1.25];
		const alone = wanted.map((addedMl) => titrateWithAcid(ordinary, [addedMl])[0]!.ph);
		const finely = Array.from({ length: 1501 }, (_, i) => i / 1000);
		const listed = titrateWithAcid(ordinary, finely);
		const backwards = titrateWithAcid(ordinary, [...finely].reverse());
		wanted.forEach((addedMl, i) => {
			const of = (points: typeof listed) =>
				points.find((point) => Math.abs(point.addedMl - addedMl) < 1e-12)?.ph;
			expect(of(listed)).toBe(alone[i]);
			expect(of(backwards)).toBe(alone[i]);
		});
		expect(titrateWithAcid(ordinary, [])).toEqual([]);
	});

	it('lists the points as they were asked for', () => {
		const asked = [0.5, 0, 0.5, 0.2];
		expect(titrateWithAcid(ordinary, asked).map((point) => point.addedMl)).toEqual(asked);
	});
});

describe('titration in the open', () => {
	const sample = fillVessel({ matrix: 'seawater', ...ordinary, volumeMl: 5 });
	const phAfter = (steps: readonly OpenStep[]) => titrateInTheOpen(sample, 0.01, steps).at(-1)!.ph;

	it('does not depend on how finely the acid between two swirls is listed', () => {
		fc.assert(
			fc.property(
				fc.array(fc.record({ ml: number(0, 0.05), loss: number(0, 1), parts: fc.nat(4) }), {
					minLength: 1,
					maxLength: 30
				}),
				(drops) => {
					const whole = drops.flatMap(({ ml, loss }) => [{ addMl: ml }, { swirlLoss: loss }]);
					const split = drops.flatMap(({ ml, loss, parts }) => [
						...Array.from({ length: parts + 1 }, () => ({ addMl: ml / (parts + 1) })),
						{ swirlLoss: loss }
					]);
					expect(Math.abs(phAfter(whole) - phAfter(split))).toBeLessThan(1e-7);
				}
			),
			{ numRuns: 200 }
		);
	});

	it('without a swirl is the closed titration', () => {
		const points = titrateInTheOpen(sample, 0.01, [{ addMl: 0.4 }, { addMl: 0.7 }]);
		const closed = titrateWithAcid(ordinary, [0.4, 1.1]);
		points.forEach((point, i) => expect(point.ph).toBeCloseTo(closed[i]!.ph, 8));
		expect(phOf(addAcid(sample, { volumeMl: 1.1, molPerL: 0.01 }))).toBe(closed[1]!.ph);
	});

	it('rises in pH at a swirl past the start of the titration', () => {
		const points = titrateInTheOpen(sample, 0.01, [{ addMl: 1 }, { swirlLoss: 0.3 }]);
		expect(points[1]!.ph).toBeGreaterThan(points[0]!.ph + 0.1);
	});
});
