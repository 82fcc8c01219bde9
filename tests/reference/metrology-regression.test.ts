import { describe, expect, it } from 'vitest';
import {
	demingRegression,
	linearRegression,
	mean,
	standardDeviation,
	studentTQuantile,
	yorkRegression
} from '../../src/lib/metrology';
import strd from './data/nist-strd.json';

const pointsOf = (xs: readonly number[], ys: readonly number[]) =>
	xs.map((x, i) => ({ x, y: ys[i] ?? Number.NaN }));
const relative = (found: number, certified: number) => Math.abs(found / certified - 1);

// Source: NIST StRD, linear regression (public domain), certified to 15 digits; the lines are compared
// to ten, what is left of them after cancelling to nine.
describe('least squares reaches the certified values of NIST StRD', () => {
	it('Norris, a line', () => {
		const { x, y, certified } = strd.Norris;
		const fit = linearRegression(pointsOf(x, y));
		expect(fit.degreesOfFreedom).toBe(certified.degreesOfFreedom);
		expect(relative(fit.slope, certified.slope)).toBeLessThan(1e-10);
		expect(relative(fit.intercept, certified.intercept)).toBeLessThan(1e-10);
		expect(relative(fit.slopeStandardError, certified.slopeSd)).toBeLessThan(1e-9);
		expect(relative(fit.interceptStandardError, certified.interceptSd)).toBeLessThan(1e-9);
		expect(relative(fit.residualSd, certified.residualSd)).toBeLessThan(1e-9);
		expect(relative(fit.rSquared, certified.rSquared)).toBeLessThan(1e-10);
		expect(relative(fit.fStatistic, certified.fStatistic)).toBeLessThan(1e-9);
		const squares = fit.residuals.reduce((sum, each) => sum + each ** 2, 0);
		expect(relative(squares, certified.sumOfSquaresResidual)).toBeLessThan(1e-9);
	});
	it('Norris a hundred million farther along both axes keeps its slope', () => {
		const { x, y, certified } = strd.Norris;
		const far = pointsOf(x, y).map((point) => ({ x: point.x + 1e8, y: point.y + 1e8 }));
		// 1e8 leaves seven digits after the point.
		expect(relative(linearRegression(far).slope, certified.slope)).toBeLessThan(1e-9);
		expect(relative(linearRegression(far).residualSd, certified.residualSd)).toBeLessThan(1e-6);
	});
	it('NoInt1, a line through the origin', () => {
		const { x, y, certified } = strd.NoInt1;
		const fit = linearRegression(pointsOf(x, y), { throughOrigin: true });
		expect(fit.intercept).toBe(0);
		expect(relative(fit.slope, certified.slope)).toBeLessThan(1e-12);
		expect(relative(fit.slopeStandardError, certified.slopeSd)).toBeLessThan(1e-11);
		expect(relative(fit.residualSd, certified.residualSd)).toBeLessThan(1e-11);
		expect(relative(fit.rSquared, certified.rSquared)).toBeLessThan(1e-12);
	});
	it('Michelso, mean and standard deviation', () => {
		const { data, certified } = strd.Michelso;
		expect(relative(mean(data), certified.mean)).toBeLessThan(1e-13);
		expect(relative(standardDeviation(data), certified.sd)).toBeLessThan(1e-10);
	});
});

// Source: ten pairs found in the documentation of several programs (NCSS, SAS), printed to five decimals:
// intercept −0.08974, slope 1.00119 for a variance ratio of 4, meant as x over y: λ = 0.25 here.
// Standard errors and the other ratios: computed with another program.
describe('Deming regression of the ten pairs of the handbooks', () => {
	const points = pointsOf(
		[7, 8.3, 10.5, 9, 5.1, 8.2, 10.2, 10.3, 7.1, 5.9],
		[7.9, 8.2, 9.6, 9, 6.5, 7.3, 10.2, 10.6, 6.3, 5.2]
	);
	const line = demingRegression(points, { lambda: 0.25 });
	it('slope and intercept are the printed ones', () => {
		expect(Math.abs(line.slope - 1.00119)).toBeLessThan(0.000005);
		expect(Math.abs(line.intercept + 0.08974)).toBeLessThan(0.000005);
	});
	it('standard errors are those of the jackknife, intervals use t for 8 degrees', () => {
		expect(Math.abs(line.interceptStandardError - 1.721987413)).toBeLessThan(1e-6);
		expect(Math.abs(line.slopeStandardError - 0.1871770528)).toBeLessThan(1e-6);
		const half = studentTQuantile(0.975, 8) * 0.1871770528;
		expect(line.slopeInterval.high - line.slope).toBeCloseTo(half, 6);
		expect(line.isProportionalErrorClear).toBe(false);
		expect(line.isConstantErrorClear).toBe(false);
	});
	it('the inverse ratio gives another line', () => {
		expect(demingRegression(points).slope).toBeCloseTo(0.9422885567, 6);
		expect(demingRegression(points).intercept).toBeCloseTo(0.3909253772, 6);
		expect(demingRegression(points, { lambda: 4 }).slope).toBeCloseTo(0.890599505, 6);
	});
});

// Data: Pearson 1901; weights: York 1966.
describe("Pearson's data", () => {
	const xs = [0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
	const ys = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
	const weightsX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
	const weightsY = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];
	// Source: Pearson 1901, major axis, printed to three decimals (from memory).
	it('orthogonal line: 5.784 − 0.546 x', () => {
		const line = demingRegression(pointsOf(xs, ys), { lambda: 1 });
		expect(Math.abs(line.intercept - 5.784)).toBeLessThan(0.0005);
		expect(Math.abs(line.slope + 0.546)).toBeLessThan(0.0005);
	});
	// Source: Cantrell 2008 (Atmos. Chem. Phys. 8:5477), York's fit, printed to nine decimals; standard
	// errors and χ² after York et al. 2004: 0.295, 0.058 and 11.87 (computed with another program).
	it("York's line: 5.479910224 − 0.480533407 x", () => {
		const points = pointsOf(xs, ys).map((point, i) => ({
			...point,
			ux: 1 / Math.sqrt(weightsX[i] ?? 0),
			uy: 1 / Math.sqrt(weightsY[i] ?? 0)
		}));
		const line = yorkRegression(points);
		expect(Math.abs(line.intercept - 5.479910224)).toBeLessThan(5e-10);
		expect(Math.abs(line.slope + 0.4805334074)).toBeLessThan(5e-11);
		expect(Math.abs(line.interceptStandardError - 0.2949707355)).toBeLessThan(1e-6);
		expect(Math.abs(line.slopeStandardError - 0.057985009)).toBeLessThan(1e-6);
		expect(Math.abs(line.chiSquare - 11.86635319)).toBeLessThan(1e-6);
		// χ² with 8 degrees of freedom, 95 %: 15.507 (printed tables).
		expect(line.chiSquareLimit.toFixed(3)).toBe('15.507');
		expect(line.isConsistent).toBe(true);
	});
});
