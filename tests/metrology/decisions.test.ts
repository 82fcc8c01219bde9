import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	chiSquareQuantile,
	combineNormal,
	conformityProbability,
	criticalDifferenceToReference,
	evsiOfRepeats,
	fQuantile,
	fUpperTail,
	grubbsLimit,
	guardedLimits,
	mean,
	normalCdf,
	normalQuantile,
	studentTQuantile,
	studentTTwoSided
} from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

const value = fc.double({ min: 0, max: 16, noNaN: true });
const u = fc.double({ min: 0.01, max: 2, noNaN: true });

describe('conformity', () => {
	it('below, within and above add up to one', () => {
		fc.assert(
			fc.property(value, u, (y, sd) => {
				const below = conformityProbability(y, sd, { upper: 7 });
				const within = conformityProbability(y, sd, { lower: 7, upper: 9 });
				const above = conformityProbability(y, sd, { lower: 9 });
				expect(below + within + above).toBeCloseTo(1, 12);
				expect(within).toBeGreaterThanOrEqual(0);
			})
		);
	});
	it('keeps its digits far out', () => {
		const up = conformityProbability(0, 1, { lower: 9, upper: 10 });
		const down = conformityProbability(0, 1, { lower: -10, upper: -9 });
		// Φ(−9) − Φ(−10) = 1.1285884e−19 − 7.61985e−24, by erfc of another program.
		expect(Math.abs(up / 1.1285122e-19 - 1)).toBeLessThan(1e-6);
		expect(up).toBe(down);
	});
	it('a value at a guarded limit lies beyond the true one with the risk asked for', () => {
		fc.assert(
			fc.property(u, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (sd, risk) => {
				const { upper = Number.NaN } = guardedLimits({ upper: 9 }, sd, { risk });
				expect(1 - conformityProbability(upper, sd, { upper: 9 })).toBeCloseTo(risk, 9);
			})
		);
	});
	it('guard bands that meet leave nothing', () => {
		expect(guardedLimits({ lower: 7, upper: 9 }, 0.6).isEmpty).toBe(false);
		expect(guardedLimits({ lower: 7, upper: 9 }, 0.7).isEmpty).toBe(true);
	});
});

describe('beliefs and repeats', () => {
	const belief = fc.record({ mean: value, sd: u });
	it('order does not matter, and two know more than either', () => {
		fc.assert(
			fc.property(belief, belief, belief, (a, b, c) => {
				const there = combineNormal(combineNormal(a, b), c);
				const back = combineNormal(c, combineNormal(b, a));
				expect(there.mean).toBeCloseTo(back.mean, 8);
				expect(there.sd).toBeCloseTo(back.sd, 10);
				expect(there.sd).toBeLessThanOrEqual(Math.min(a.sd, b.sd, c.sd));
			})
		);
	});
	it('more repeats save more, never more than certainty, each less than the one before', () => {
		fc.assert(
			fc.property(belief, value, u, u, (now, threshold, repeatabilitySd, sharedSd) => {
				const input = { belief: now, threshold, repeatabilitySd, sharedSd };
				const all = [0, 1, 2, 3, 4].map((n) => evsiOfRepeats(input, n));
				expect(all[0]?.sample).toBe(0);
				all.slice(1).forEach(({ sample, perfect }, i) => {
					expect(sample).toBeGreaterThanOrEqual((all[i]?.sample ?? 0) - 1e-12);
					expect(sample).toBeLessThanOrEqual(perfect + 1e-12);
				});
			})
		);
	});
	it('where what repeats share outweighs their scatter, the second is hardly worth anything', () => {
		const input = { belief: { mean: 7.6, sd: 0.5 }, threshold: 7, repeatabilitySd: 0.1 };
		const free = evsiOfRepeats({ ...input, repeatabilitySd: 0.4 }, 1);
		const bound = evsiOfRepeats({ ...input, sharedSd: 0.4 }, 1);
		expect(bound.next).toBeLessThan(0.1 * free.next);
	});
	it('is what playing it many times saves', () => {
		const { normal } = chanceOf(61);
		const [m, s0, scatter, threshold] = [7.4, 0.5, 0.3, 7];
		const saved = Array.from({ length: 200_000 }, () => {
			const truth = m + s0 * normal();
			const after = combineNormal(
				{ mean: m, sd: s0 },
				{ mean: truth + scatter * normal(), sd: scatter }
			);
			const lossOf = (believed: number) =>
				believed < threshold ? Math.max(0, truth - threshold) : Math.max(0, threshold - truth);
			return lossOf(m) - lossOf(after.mean);
		});
		const { sample } = evsiOfRepeats(
			{ belief: { mean: m, sd: s0 }, threshold, repeatabilitySd: scatter },
			1
		);
		// Standard error about 0.0003.
		expect(Math.abs(mean(saved) - sample)).toBeLessThan(0.001);
		expect(sample).toBeGreaterThan(0.02);
	});
});

describe('distributions', () => {
	it('quantile and probability undo each other', () => {
		const p = fc.double({ min: 0.001, max: 0.999, noNaN: true });
		const degrees = fc.integer({ min: 1, max: 60 });
		fc.assert(
			fc.property(p, degrees, degrees, (each, d1, d2) => {
				expect(normalCdf(normalQuantile(each))).toBeCloseTo(each, 9);
				expect(1 - fUpperTail(fQuantile(each, d1, d2), d1, d2)).toBeCloseTo(each, 7);
				const t = studentTQuantile(0.5 + each / 2, d1);
				expect(1 - studentTTwoSided(t, d1)).toBeCloseTo(each, 7);
			})
		);
	});
	// Closed form for 2 and n degrees of freedom: (1 + 2 f/n)^(−n/2) (textbook).
	it('a small tail of F keeps its digits', () => {
		const exact = (1 + (2 * 4000) / 20) ** -10;
		expect(exact).toBeLessThan(1e-25);
		expect(Math.abs(fUpperTail(4000, 2, 20) / exact - 1)).toBeLessThan(1e-9);
	});
	// Printed tables, 95 %: χ² with 1 and 10, F with 2 and 3, 5 and 20 degrees of freedom.
	it.each([
		[chiSquareQuantile(0.95, 1), '3.841'],
		[chiSquareQuantile(0.95, 10), '18.307'],
		[fQuantile(0.95, 2, 3), '9.552'],
		[fQuantile(0.95, 5, 20), '2.711'],
		[normalQuantile(0.975), '1.960']
	])('%d is %s in printed tables', (found, printed) => {
		expect(found.toFixed(3)).toBe(printed);
	});
});

it.each([
	[() => conformityProbability(Number.NaN, 1, { upper: 9 }), 'value must be a number; found NaN'],
	[() => conformityProbability(8, 0, { upper: 9 }), 'standardUncertainty must be above 0; found 0'],
	[() => conformityProbability(8, 1, {}), 'lower or upper must be given; found neither'],
	[() => guardedLimits({ lower: 9, upper: 7 }, 1), 'lower must be below upper, 7; found 9'],
	[() => guardedLimits({ lower: Number.NaN }, 1), 'lower must be a number; found NaN'],
	[
		() => guardedLimits({ lower: 7 }, 1, { risk: 0.6 }),
		'risk must be above 0 and at most 0.5; found 0.6'
	],
	[() => combineNormal({ mean: 8, sd: 0 }, { mean: 8, sd: 1 }), 'a.sd must be above 0; found 0'],
	[
		() => evsiOfRepeats({ belief: { mean: 8, sd: 1 }, threshold: 7, repeatabilitySd: 0 }, 1),
		'repeatabilitySd must be above 0; found 0'
	],
	[
		() => evsiOfRepeats({ belief: { mean: 8, sd: 1 }, threshold: 7, repeatabilitySd: 1 }, 0.5),
		'n must be a whole number from 0; found 0.5'
	],
	[() => criticalDifferenceToReference(0, 0.1, 0.2), 'n must be a whole number from 1; found 0'],
	[
		() => criticalDifferenceToReference(2, 0.2, 0.1),
		'reproducibilitySd must be at least repeatabilitySd, 0.2; found 0.1'
	],
	[() => grubbsLimit(2), 'n must be a whole number from 3; found 2'],
	[() => grubbsLimit(5, 0), 'alpha must lie between 0 and 1; found 0'],
	[() => normalCdf(Number.NaN), 'z must be a number; found NaN'],
	[() => normalQuantile(1), 'p must lie between 0 and 1; found 1'],
	[() => fUpperTail(-1, 2, 3), 'f must be 0 or above; found -1'],
	[() => fQuantile(0.95, 0, 3), 'numeratorDegrees must be above 0; found 0'],
	[() => studentTTwoSided(Number.NaN, 3), 't must be a number; found NaN'],
	[() => chiSquareQuantile(0.95, -1), 'degreesOfFreedom must be above 0; found -1']
])('bad input of a decision or distribution is named (%#)', (call, message) => {
	expect(call).toThrow(new RangeError(message));
});
