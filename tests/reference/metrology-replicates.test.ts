import { describe, expect, it } from 'vitest';
import {
	criticalRange,
	dixonTest,
	grubbsTest,
	mean,
	pooledFromDuplicates,
	repeatabilityLimit,
	standardDeviation,
	studentTQuantile
} from '../../src/lib/metrology';

// Source: NIST Statistical Reference Datasets, univariate summary statistics (public domain).
// Certified to 15 digits; compared to nine, and to six where the data are made to lose digits.
describe('mean and standard deviation reach the certified values of NIST StRD', () => {
	const mavro = [
		2.0018, 2.0017, 2.0018, 2.0019, 2.0018, 2.0017, 2.0015, 2.0014, 2.0015, 2.0015, 2.0017, 2.0018,
		2.0018, 2.0019, 2.0019, 2.0021, 2.002, 2.0016, 2.0014, 2.0013, 2.0013, 2.0015, 2.0015, 2.0016,
		2.0015, 2.0014, 2.0013, 2.0014, 2.0015, 2.0014, 2.0015, 2.0016, 2.0015, 2.0016, 2.0019, 2.002,
		2.002, 2.0021, 2.0022, 2.0023, 2.0024, 2.0025, 2.0027, 2.0026, 2.0026, 2.0026, 2.0027, 2.0026,
		2.0025, 2.0024
	];
	const numAcc4 = [
		10000000.2,
		...Array.from({ length: 500 }, () => [10000000.1, 10000000.3]).flat()
	];
	it.each([
		{ name: 'Mavro', data: mavro, mean: 2.001856, sd: 0.000429123454, relative: 1e-9 },
		{
			name: 'NumAcc1',
			data: [10000001, 10000003, 10000002],
			mean: 10000002,
			sd: 1,
			relative: 1e-12
		},
		{ name: 'NumAcc4', data: numAcc4, mean: 10000000.2, sd: 0.1, relative: 1e-6 }
	])('$name', ({ data, mean: certifiedMean, sd, relative }) => {
		expect(Math.abs(mean(data) / certifiedMean - 1)).toBeLessThan(1e-12);
		expect(Math.abs(standardDeviation(data) / sd - 1)).toBeLessThan(relative);
	});
});

// Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, printed to three decimals, so
// compared to half of the last one.
it.each([
	[1, 0.975, 12.706],
	[2, 0.975, 4.303],
	[3, 0.975, 3.182],
	[4, 0.975, 2.776],
	[5, 0.975, 2.571],
	[10, 0.975, 2.228],
	[30, 0.975, 2.042],
	[100, 0.975, 1.984],
	[4, 0.9, 1.533],
	[8, 0.95, 1.86],
	[8, 0.995, 3.355],
	[Number.POSITIVE_INFINITY, 0.975, 1.96]
])('t with %d degrees of freedom at %d is the %d of the printed table', (dof, p, printed) => {
	expect(Math.abs(studentTQuantile(p, dof) - printed)).toBeLessThan(0.0005 + 1e-9);
});

// Source: closed forms for one and two degrees of freedom (textbook).
it('t with one and two degrees of freedom is what its closed form gives', () => {
	for (const p of [0.6, 0.9, 0.975, 0.999]) {
		expect(studentTQuantile(p, 1)).toBeCloseTo(Math.tan(Math.PI * (p - 0.5)), 9);
		const a = 4 * p * (1 - p);
		expect(studentTQuantile(p, 2)).toBeCloseTo(2 * (p - 0.5) * Math.sqrt(2 / a), 9);
	}
});

// Source: ISO 5725-2:1994, table of Grubbs' critical values for one outlier, 5 % (printed to three
// decimals; from memory, the formula gives the same).
it("Grubbs' limits are those of the printed table", () => {
	const printed = [1.155, 1.481, 1.715, 1.887, 2.02, 2.126, 2.215, 2.29];
	printed.forEach((limit, i) => {
		const values = Array.from({ length: i + 3 }, (_, k) => k);
		// 1.1543 stands as 1.155 in that table: rounded up.
		expect(Math.abs(grubbsTest(values).limit - limit)).toBeLessThan(0.001);
	});
});

// Source: NIST/SEMATECH e-Handbook 1.3.5.17.1, mass spectrometer data: G = 2.4688 for 245.57.
it("Grubbs' test finds the outlier of the handbook's example with its statistic", () => {
	const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
	const found = grubbsTest(values);
	expect(found.statistic).toBeCloseTo(2.4687646, 6);
	expect(found).toMatchObject({ suspect: 7, isSuspect: true });
});

// Source: Harvey, Analytical Chemistry 2.1, chapter 4 (masses of pennies; data from memory):
// Q = 0.882 against 0.493.
it("Dixon's test finds the odd penny with the textbook's statistic", () => {
	const pennies = [3.067, 3.049, 3.039, 2.514, 3.048, 3.079, 3.094, 3.109, 3.102];
	const found = dixonTest(pennies);
	expect(found.statistic).toBeCloseTo(0.882, 3);
	expect(found).toMatchObject({ suspect: 3, isSuspect: true, limit: 0.493 });
});

// Source: the 95 % quantile of the range of n normal values (studentised range, infinite degrees of
// freedom), integrated with another program. ISO 5725-6:1994 prints one decimal of it, so compared
// to half of that.
it.each([
	[2, 2.7718],
	[3, 3.3145],
	[4, 3.6332],
	[5, 3.8577],
	[6, 4.0301],
	[7, 4.1696],
	[8, 4.2863],
	[9, 4.3865],
	[10, 4.4741]
])('the critical range of %d results is %d standard deviations', (n, quantile) => {
	expect(Math.abs(criticalRange(n, 1) - quantile)).toBeLessThan(0.05);
});

// Source: ISO 5725-6:1994, 4.1: r = 2.8 s_r, rounded from 1.96 √2.
it('the repeatability limit is 2.8 standard deviations', () => {
	expect(repeatabilityLimit(0.1)).toBeCloseTo(0.28, 12);
	expect(Math.abs(repeatabilityLimit(1) - 1.96 * Math.SQRT2)).toBeLessThan(0.03);
});

it('pooled duplicates: √(Σd²/2m), by hand', () => {
	// Differences 0.3, −0.1, 0.2: squares add to 0.14; over six, 0.02333.
	expect(pooledFromDuplicates([0.3, -0.1, 0.2])).toBeCloseTo(Math.sqrt(0.14 / 6), 12);
});
