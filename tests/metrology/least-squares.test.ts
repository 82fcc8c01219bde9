import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	jointLineTest,
	lineAt,
	linearRegression,
	mean,
	standardDeviation
} from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';
import { close, factor, points, shift } from './line-points';

describe('least squares', () => {
	it('follows a change of units and of zero', () => {
		fc.assert(
			fc.property(points, factor, factor, shift, shift, (all, fx, fy, dx, dy) => {
				const fit = linearRegression(all);
				const other = linearRegression(all.map(({ x, y }) => ({ x: fx * x + dx, y: fy * y + dy })));
				close(other.slope, (fit.slope * fy) / fx);
				close(other.intercept, fy * fit.intercept + dy - other.slope * dx, 1e3);
				close(other.residualSd, fy * fit.residualSd, 1e3);
				close(other.rSquared, fit.rSquared);
			})
		);
	});
	it('does not know the order of the points', () => {
		fc.assert(
			fc.property(points, (all) => {
				const [there, back] = [linearRegression(all), linearRegression([...all].reverse())];
				close(back.slope, there.slope);
				close(back.interceptStandardError, there.interceptStandardError);
			})
		);
	});
	it('leaves residuals that add up to nothing, with x too', () => {
		fc.assert(
			fc.property(points, (all) => {
				const { residuals } = linearRegression(all);
				close(mean(residuals), 0);
				close(mean(residuals.map((each, i) => each * (all[i]?.x ?? 0))), 0, 1e3);
			})
		);
	});
	it('the line is best known at the middle, and at 0 it is the intercept', () => {
		fc.assert(
			fc.property(points, shift, (all, x) => {
				const fit = linearRegression(all);
				close(lineAt(fit, 0).y, fit.intercept, 1e3);
				close(lineAt(fit, 0).standardError, fit.interceptStandardError, 1e3);
				const middle = lineAt(fit, fit.meanX).standardError;
				expect(lineAt(fit, x).standardError).toBeGreaterThanOrEqual(middle - 1e-12);
				close(middle, fit.residualSd / Math.sqrt(fit.n));
			})
		);
	});
	it('through the origin, the line at 0 is 0 for certain', () => {
		const fit = linearRegression(
			[
				{ x: 1, y: 2 },
				{ x: 2, y: 3.9 }
			],
			{ throughOrigin: true }
		);
		expect(lineAt(fit, 0)).toEqual({ y: 0, standardError: 0 });
	});
	it('the estimates vary together as their stated correlation says', () => {
		const { normal } = chanceOf(5);
		const xs = [4, 6, 8, 10, 12];
		const fits = Array.from({ length: 4000 }, () =>
			linearRegression(xs.map((x) => ({ x, y: x + normal() })))
		);
		const [slopes, intercepts] = [fits.map((f) => f.slope), fits.map((f) => f.intercept)];
		const covariance = mean(slopes.map((slope, i) => (slope - 1) * (intercepts[i] ?? 0)));
		const drawn = covariance / (standardDeviation(slopes) * standardDeviation(intercepts));
		// −8/√(8² + 8) = −0.943; four thousand draws tell it to 0.002.
		expect(fits[0]?.correlation).toBeCloseTo(-8 / Math.sqrt(72), 12);
		expect(Math.abs(drawn + 0.943)).toBeLessThan(0.008);
	});
});

describe('joint test', () => {
	it('of the line that was found gives nothing to reject, of a far one everything', () => {
		fc.assert(
			fc.property(points, (all) => {
				const fit = linearRegression(all);
				fc.pre(fit.residualSd > 1e-3);
				expect(jointLineTest(fit, fit)).toMatchObject({ isRejected: false });
				expect(jointLineTest(fit, fit).p).toBeCloseTo(1, 6);
				const far = { intercept: fit.intercept + 1e4, slope: fit.slope };
				expect(jointLineTest(fit, far).isRejected).toBe(true);
			})
		);
	});
	it('rejects a true line five times in a hundred', () => {
		const { normal } = chanceOf(11);
		const rejected = Array.from({ length: 4000 }, () => {
			const fit = linearRegression([4, 6, 8, 10, 12].map((x) => ({ x, y: x + 0.2 * normal() })));
			return jointLineTest(fit, { intercept: 0, slope: 1 }).isRejected ? 1 : 0;
		});
		// Standard error 0.0034; three of them.
		expect(Math.abs(mean(rejected) - 0.05)).toBeLessThan(0.0104);
	});
});
