import { describe, expect, it } from 'vitest';
import {
	acceptRepeats,
	blandAltman,
	criticalDifferenceToReference,
	dixonTest,
	grubbsLimit,
	linearRegression,
	pooledFromDuplicates,
	repeatabilityLimit,
	robustSpread,
	studentTQuantile,
	testOfDifferences
} from '../../src/lib/metrology';
import flows from './data/bland-altman-1986.json';

// Source: Harvey, Analytical Chemistry 2.1, example 4.21 (monensin by two methods, eleven samples):
// mean 2.25, s 5.63, t(0.05, 10) = 2.23, no significant difference. Its t, 1.33, is worked out from
// the rounded two; unrounded it is 1.3225 (computed with another program).
it('paired t test of the textbook', () => {
	const differences = [2.8, 1.4, -3.0, 6.0, -6.6, -0.5, 9.7, 12.7, -1.6, 4.0, -0.2];
	const test = testOfDifferences(differences);
	expect(test.meanDifference.toFixed(2)).toBe('2.25');
	expect(test.sd.toFixed(2)).toBe('5.63');
	expect(test.critical.toFixed(2)).toBe('2.23');
	expect(((2.25 * Math.sqrt(11)) / 5.63).toFixed(2)).toBe('1.33');
	expect(Math.abs(test.t - 1.322463865)).toBeLessThan(1e-6);
	expect(Math.abs(test.p - 0.2154606913)).toBeLessThan(1e-6);
	expect(test).toMatchObject({ degreesOfFreedom: 10, isDifferent: false });
});

// Source: Bland and Altman 1986 (Lancet i:307), with 2 s for the limits and intermediates rounded to one
// decimal, so that limits may be off by a quarter of a litre per minute. Unrounded: another program.
describe('Bland and Altman, peak flow of 17 people, first readings, large less mini', () => {
	const pairs = flows.large.map(([a = Number.NaN], i) => ({ a, b: flows.mini[i]?.[0] ?? 0 }));
	const found = blandAltman(pairs, { multiplier: 2 });
	it('bias −2.1 L/min, s 38.8, standard error 9.4', () => {
		expect(found.bias.toFixed(1)).toBe('-2.1');
		expect(found.sd.toFixed(1)).toBe('38.8');
		expect(found.standardError.toFixed(1)).toBe('9.4');
		expect(Math.abs(found.bias + 2.117647059)).toBeLessThan(1e-6);
		expect(Math.abs(found.sd - 38.76512987)).toBeLessThan(1e-6);
	});
	it.each([
		{ of: 'bias', interval: found.biasInterval, low: -22.0, high: 17.8 },
		{ of: 'lower limit', interval: found.lower.interval, low: -114.3, high: -45.1 },
		{ of: 'upper limit', interval: found.upper.interval, low: 40.9, high: 110.1 }
	])('confidence limits of the $of: $low to $high', ({ interval, low, high }) => {
		expect(Math.abs(interval.low - low)).toBeLessThan(0.25);
		expect(Math.abs(interval.high - high)).toBeLessThan(0.25);
	});
	it('limits of agreement −79.7 and 75.5', () => {
		expect(Math.abs(found.lower.value + 79.7)).toBeLessThan(0.25);
		expect(Math.abs(found.upper.value - 75.5)).toBeLessThan(0.25);
		expect(Math.abs(found.lower.value + 79.64790681)).toBeLessThan(1e-6);
		expect(Math.abs(found.upper.value - 75.41261269)).toBeLessThan(1e-6);
	});
	it('with 1.96 s they are a little nearer', () => {
		const usual = blandAltman(pairs);
		expect(Math.abs(usual.lower.value + 78.09730161)).toBeLessThan(1e-6);
		expect(Math.abs(usual.upper.value - 73.86200749)).toBeLessThan(1e-6);
	});
	it('the paper sees no relation of difference and mean; seventeen are few', () => {
		expect(found.trend?.isLikely).toBe(false);
		expect(found.isProvisional).toBe(true);
	});
	// The paper's point: r = 0.94, and yet the meters may differ by 80 L/min.
	it('r is 0.94 all the same', () => {
		const { rSquared } = linearRegression(pairs.map(({ a: x, b: y }) => ({ x, y })));
		expect(Math.sqrt(rSquared).toFixed(2)).toBe('0.94');
	});
	// The paper's coefficient of repeatability: twice the standard deviation of the differences between
	// two readings of one meter, about zero: 43.2 and 56.4 (from memory); unrounded, another program.
	it.each([
		{ meter: 'large', readings: flows.large, coefficient: 43.29379795 },
		{ meter: 'mini', readings: flows.mini, coefficient: 56.31633344 }
	])('two readings by the $meter meter: within $coefficient', ({ readings, coefficient }) => {
		const within = pooledFromDuplicates(readings.map(([a = 0, b = 0]) => a - b));
		expect(Math.abs(2 * Math.SQRT2 * within - coefficient)).toBeLessThan(1e-6);
	});
	it('mean and difference of each pair are what the plot shows', () => {
		expect(found.points[0]).toEqual({ mean: 503, difference: -18 });
	});
});

// Source: ISO 5725-6:1994, 5.2 (from memory, paraphrased), worked through by hand with s_r = 0.1: r = 0.28,
// CR(3) = 0.33, CR(4) = 0.36.
describe('ISO 5725-6, acceptance of repeats', () => {
	it.each([
		{ results: [8.1, 8.3], toDo: 'done', of: 'mean', value: 8.2 },
		{ results: [8.1, 8.45], toDo: 'takeTwoMore', of: 'median', value: 8.275 },
		{ results: [8.1, 8.45, 8.3], toDo: 'takeOneMore', of: 'median', value: 8.3 },
		{ results: [8.1, 8.45, 8.3, 8.25], toDo: 'done', of: 'mean', value: 8.275 },
		{ results: [8.0, 8.5, 8.2, 8.1], toDo: 'done', of: 'median', value: 8.15 }
	])('cheap tests, $results: $toDo, $of $value', ({ results, value, ...rest }) => {
		const found = acceptRepeats(results, 0.1);
		expect(found).toMatchObject(rest);
		expect(found.value).toBeCloseTo(value, 12);
	});
	it.each([
		{ results: [8.1, 8.45], isLast: false, toDo: 'takeOneMore', of: 'median', value: 8.275 },
		{ results: [8.1, 8.45, 8.3], isLast: true, toDo: 'done', of: 'median', value: 8.3 },
		{ results: [8.1, 8.45, 8.3], isLast: false, toDo: 'takeOneMore', of: 'median', value: 8.3 },
		{ results: [8.1, 8.4, 8.3], isLast: false, toDo: 'done', of: 'mean', value: 24.8 / 3 }
	])('costly tests, $results, last $isLast: $toDo, $of', ({ results, isLast, value, ...rest }) => {
		const found = acceptRepeats(results, 0.1, { cost: 'costly', isLast });
		expect(found).toMatchObject(rest);
		expect(found.value).toBeCloseTo(value, 12);
	});
	it('critical ranges are those of the table', () => {
		expect(acceptRepeats([8.1, 8.3], 0.1).criticalRange).toBeCloseTo(0.28, 12);
		expect(acceptRepeats([8.1, 8.3, 8.2, 8.2], 0.1).criticalRange).toBeCloseTo(0.36, 12);
	});
	// Source: ISO 5725-6:1994, 4.2.3 (from memory): by hand √((0.56² − 0.28²/2)/2).
	it('the critical difference to a reference', () => {
		const found = criticalDifferenceToReference(2, 0.1, 0.2);
		expect(Math.abs(found - 0.3704051835)).toBeLessThan(1e-9);
		expect(criticalDifferenceToReference(1, 0.1, 0.1)).toBeCloseTo(
			repeatabilityLimit(0.1) / Math.SQRT2,
			12
		);
	});
});

// Source: Croux and Rousseeuw 1992 (from memory); b_n simulated with another program, two million
// samples each, which differ by up to 0.011.
it.each([
	[3, 1.487],
	[4, 1.36],
	[5, 1.217],
	[6, 1.19],
	[7, 1.138],
	[8, 1.128],
	[9, 1.101],
	[10, 1.096]
])('scatter from the MAD of %d values: 1.4826 · %d MAD', (n, simulated) => {
	const values = Array.from({ length: n }, (_, i) => i * i);
	const { sd, mad } = robustSpread(values);
	expect(Math.abs(sd / (1.4826 * mad) - simulated)).toBeLessThan(0.0115);
});

// Source: two-sided and one-sided limits of Grubbs' test, four decimals (Grubbs and Beck 1972, from
// memory; recomputed with another program).
describe("Grubbs' limits", () => {
	it.each([
		{
			alpha: 0.05,
			sides: 2 as const,
			limits: [1.1543, 1.4812, 1.715, 1.8871, 2.02, 2.1266, 2.215, 2.29]
		},
		{
			alpha: 0.01,
			sides: 2 as const,
			limits: [1.1547, 1.4962, 1.7637, 1.9728, 2.1391, 2.2744, 2.3868, 2.4821]
		},
		{
			alpha: 0.05,
			sides: 1 as const,
			limits: [1.1531, 1.4625, 1.6714, 1.8221, 1.9381, 2.0317, 2.1096, 2.1761]
		},
		{
			alpha: 0.01,
			sides: 1 as const,
			limits: [1.1546, 1.4925, 1.7489, 1.9442, 2.0973, 2.2208, 2.3231, 2.4097]
		}
	])('at $alpha, $sides-sided', ({ alpha, sides, limits }) => {
		limits.forEach((limit, i) => {
			expect(Math.abs(grubbsLimit(i + 3, alpha, sides) - limit)).toBeLessThan(0.00005 + 1e-9);
		});
	});
});

// Dixon's r10, two-sided 5 %: exact integration with another program. Rorabacher's print is off by 0.0025
// at n = 6, which is what the bound allows.
it.each([
	[3, 0.9702],
	[4, 0.8298],
	[5, 0.7102],
	[6, 0.6275],
	[7, 0.569],
	[8, 0.5256],
	[9, 0.4922],
	[10, 0.4656]
])("Dixon's limit for %d values is near the exact %d", (n, exact) => {
	const { limit } = dixonTest(Array.from({ length: n }, (_, i) => i));
	expect(Math.abs(limit - exact)).toBeLessThan(0.0026);
});

// Half-width of a 95 % interval of the mean of n, in standard deviations of these n: t/√n; computed with
// another program.
it.each([
	[2, 8.984643532],
	[3, 2.484137712],
	[4, 1.591223153],
	[5, 1.241663998],
	[10, 0.715356906]
])('the mean of %d with its own s is known to %d s', (n, factor) => {
	const differences = Array.from({ length: n }, (_, i) => (i % 2 === 0 ? 1 : -1) + i / 10);
	const { interval, meanDifference, sd } = testOfDifferences(differences);
	expect(Math.abs((interval.high - meanDifference) / sd - factor)).toBeLessThan(1e-8);
	expect(studentTQuantile(0.975, n - 1) / Math.sqrt(n)).toBeCloseTo(factor, 8);
});
