import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	alkalinityAt,
	dicFromAlkalinityAndPh,
	mediumOf,
	phAtAlkalinity,
	phFromAlkalinityAndDic,
	type Composition
} from '../../src/lib/chemistry';
import { fallingRoot } from '../../src/lib/chemistry/bracketed-root';

const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
/** Evenly over decades, so that traces are tried as often as plenty. */
const magnitude = (lowest: number, highest: number) =>
	number(Math.log10(lowest), Math.log10(highest)).map((exponent) => 10 ** exponent);

const water = { salinity: number(0, 45), temperatureC: number(0, 40) };
const alkalinityMolPerKg = fc.oneof(
	number(-0.02, 0.02),
	magnitude(1e-10, 0.02),
	magnitude(1e-10, 0.02).map((value) => -value),
	fc.constant(0)
);
const dicMolPerKg = fc.oneof(number(0, 0.02), magnitude(1e-10, 0.02), fc.constant(0));
const state = fc.record({ ...water, alkalinityMolPerKg, dicMolPerKg });

const alkalinityOf = (ph: number, composition: Composition) => {
	const out = { value: 0, slope: 0 };
	alkalinityAt(10 ** -ph, composition, out);
	return out;
};
const compositionOf = (salinity: number, temperatureC: number, dic: number): Composition => ({
	medium: mediumOf('seawater', salinity, temperatureC, 0),
	dicMolPerKg: dic,
	dyes: []
});

describe('pH of any seawater', () => {
	it('is found, and gives the alkalinity back', () => {
		fc.assert(
			fc.property(state, (input) => {
				const ph = phFromAlkalinityAndDic(input);
				expect(ph).toBeGreaterThan(0);
				expect(ph).toBeLessThan(14);
				const composition = compositionOf(input.salinity, input.temperatureC, input.dicMolPerKg);
				const { value, slope } = alkalinityOf(ph, composition);
				// pH is found to 1e-10; beyond that, the rounding of sums of this size.
				const rounding = 1e-14 * (Math.abs(input.alkalinityMolPerKg) + input.dicMolPerKg + 0.03);
				expect(Math.abs(value - input.alkalinityMolPerKg)).toBeLessThan(slope * 1e-9 + rounding);
			}),
			{ numRuns: 3000 }
		);
	});

	it('does not depend on where the search starts', () => {
		fc.assert(
			fc.property(state, number(-3, 17), (input, start) => {
				const composition = compositionOf(input.salinity, input.temperatureC, input.dicMolPerKg);
				const found = phAtAlkalinity(input.alkalinityMolPerKg, composition, start);
				expect(Math.abs(found - phFromAlkalinityAndDic(input))).toBeLessThan(1e-7);
			}),
			{ numRuns: 1000 }
		);
	});

	it('rises with alkalinity and falls with carbon', () => {
		fc.assert(
			fc.property(state, magnitude(1e-7, 1e-3), (input, more) => {
				const ph = phFromAlkalinityAndDic(input);
				const richer = { ...input, alkalinityMolPerKg: input.alkalinityMolPerKg + more };
				const sourer = { ...input, dicMolPerKg: input.dicMolPerKg + more };
				expect(phFromAlkalinityAndDic(richer)).toBeGreaterThan(ph);
				// Carbonic acid hardly matters where strong acid rules.
				expect(phFromAlkalinityAndDic(sourer)).toBeLessThan(ph + 1e-9);
			}),
			{ numRuns: 1000 }
		);
	});
});

describe('alkalinity', () => {
	it('rises with pH everywhere, at the slope that is given', () => {
		fc.assert(
			fc.property(
				fc.record({ ...water, dicMolPerKg }),
				number(1, 13),
				({ salinity, temperatureC, dicMolPerKg: dic }, ph) => {
					const composition = {
						...compositionOf(salinity, temperatureC, dic),
						dyes: [
							{ dyeId: 'a', molPerKg: 2e-5, k: [1e-5], protonsWhenAdded: 0 },
							{ dyeId: 'b', molPerKg: 1e-5, k: [1e-9, 10 ** -9.5], protonsWhenAdded: 2 }
						]
					};
					const { slope } = alkalinityOf(ph, composition);
					expect(slope).toBeGreaterThan(0);
					const step = 1e-4;
					const rise =
						alkalinityOf(ph + step, composition).value - alkalinityOf(ph - step, composition).value;
					expect(Math.abs(rise / (2 * step) / slope - 1)).toBeLessThan(1e-4);
				}
			),
			{ numRuns: 1000 }
		);
	});
});

describe('carbon from alkalinity and pH', () => {
	it('undoes pH from alkalinity and carbon', () => {
		fc.assert(
			fc.property(
				fc.record({
					...water,
					alkalinityMolPerKg: number(0.0005, 0.02),
					ratio: number(0.5, 1.3)
				}),
				({ ratio, ...input }) => {
					const dic = ratio * input.alkalinityMolPerKg;
					const ph = phFromAlkalinityAndDic({ ...input, dicMolPerKg: dic });
					const back = dicFromAlkalinityAndPh({ ...input, ph });
					expect(Math.abs(back / dic - 1)).toBeLessThan(1e-7);
				}
			),
			{ numRuns: 1000 }
		);
	});
});

describe('the root finder', () => {
	/** How often the function was asked for, and what was found. */
	function countedRoot(f: (x: number) => [value: number, slope: number], start: number) {
		let calls = 0;
		const root = fallingRoot(
			(x, out) => {
				calls++;
				[out.value, out.slope] = f(x);
			},
			-2,
			16,
			start,
			1e-10
		);
		return { root, calls };
	}

	it.each<[string, (x: number) => [number, number], number]>([
		['a line', (x) => [3 - x, -1], 3],
		[
			'a step as steep as a wall',
			(x) => [Math.atan(1e6 * (5 - x)), -1e6 / (1 + (1e6 * (5 - x)) ** 2)],
			5
		],
		[
			'an exponential from its flat side',
			(x) => [10 ** -x - 10 ** -15.5, -Math.LN10 * 10 ** -x],
			15.5
		],
		['a root so flat that Newton alone creeps', (x) => [(4 - x) ** 9, -9 * (4 - x) ** 8], 4],
		['a slope that is wrong', (x) => [7.3 - x, 1], 7.3],
		['a slope of nothing', (x) => [-1.9 - x, 0], -1.9],
		['no slope at all', (x) => [9.1 - x, NaN], 9.1]
	])('%s', (_name, f, expected) => {
		for (const start of [-2, 0, 7, 15.9, 100, NaN]) {
			const { root, calls } = countedRoot(f, start);
			expect(Math.abs(root - expected)).toBeLessThan(1e-9);
			// Two evaluations halve the bracket or the step; 18 to 1e-10 is 38 halvings.
			expect(calls).toBeLessThan(90);
		}
	});

	it('takes few evaluations for a pH, whatever the water', () => {
		fc.assert(
			fc.property(state, (input) => {
				const composition = compositionOf(input.salinity, input.temperatureC, input.dicMolPerKg);
				const { calls } = countedRoot((ph) => {
					const { value, slope } = alkalinityOf(ph, composition);
					return [input.alkalinityMolPerKg - value, -slope];
				}, 7);
				expect(calls).toBeLessThan(60);
			}),
			{ numRuns: 1000 }
		);
	});
});
