import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demingRegression, linearRegression, yorkRegression } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';
import { close, factor, points } from './line-points';

describe('Deming regression', () => {
	it('with the axes changed about and 1/λ is the same line', () => {
		fc.assert(
			fc.property(points, factor, (all, lambda) => {
				const line = demingRegression(all, { lambda });
				const turned = demingRegression(
					all.map(({ x, y }) => ({ x: y, y: x })),
					{ lambda: 1 / lambda }
				);
				close(turned.slope, 1 / line.slope);
				close(turned.intercept, -line.intercept / line.slope, 1e2);
			})
		);
	});
	it('lies between the two regressions, and comes to either as λ grows or shrinks', () => {
		fc.assert(
			fc.property(points, factor, (all, lambda) => {
				const onX = linearRegression(all).slope;
				const onY = 1 / linearRegression(all.map(({ x, y }) => ({ x: y, y: x }))).slope;
				const { slope } = demingRegression(all, { lambda });
				expect(slope).toBeGreaterThanOrEqual(onX - 1e-9);
				expect(slope).toBeLessThanOrEqual(onY + 1e-9);
				expect(demingRegression(all, { lambda: 1e9 }).slope).toBeCloseTo(onX, 5);
				expect(demingRegression(all, { lambda: 1e-9 }).slope).toBeCloseTo(onY, 5);
			})
		);
	});
	it('a falling line is the mirror of a rising one', () => {
		fc.assert(
			fc.property(points, (all) => {
				const mirrored = all.map(({ x, y }) => ({ x, y: -y }));
				close(demingRegression(mirrored).slope, -demingRegression(all).slope);
			})
		);
	});
	it('finds a true slope that least squares makes too flat', () => {
		const { normal } = chanceOf(3);
		const all = Array.from({ length: 400 }, (_, i) => {
			const truth = 6 + i / 100;
			return { x: truth + 0.5 * normal(), y: 1.1 * truth + 0.5 * normal() };
		});
		const line = demingRegression(all);
		expect(line.slopeInterval.low).toBeLessThan(1.1);
		expect(line.slopeInterval.high).toBeGreaterThan(1.1);
		expect(linearRegression(all).slopeInterval.high).toBeLessThan(1.1);
	});
});

describe("York's line", () => {
	it('with uncertainties alike everywhere is the Deming line', () => {
		fc.assert(
			fc.property(points, factor, (all, ratio) => {
				const weighted = all.map((point) => ({ ...point, ux: 0.3, uy: 0.3 * Math.sqrt(ratio) }));
				const { slope, intercept } = yorkRegression(weighted);
				const deming = demingRegression(all, { lambda: ratio });
				expect(Math.abs(slope - deming.slope)).toBeLessThan(1e-7);
				expect(Math.abs(intercept - deming.intercept)).toBeLessThan(1e-5);
			})
		);
	});
	it('without uncertainty in x is the weighted line, here that of least squares', () => {
		fc.assert(
			fc.property(points, (all) => {
				const fit = linearRegression(all);
				const line = yorkRegression(all.map((point) => ({ ...point, ux: 0, uy: 2 })));
				close(line.slope, fit.slope);
				close(line.slopeStandardError, 2 / Math.sqrt(fit.sumOfSquaresX));
				close(line.chiSquare, (fit.residualSd / 2) ** 2 * fit.degreesOfFreedom, 1e2);
			})
		);
	});
	it('says when the points lie farther off than they claim', () => {
		const all = [0, 1, 2, 3, 4].map((x) => ({ x, y: x + (x % 2), ux: 0.05, uy: 0.05 }));
		expect(yorkRegression(all).isConsistent).toBe(false);
		expect(yorkRegression(all.map((each) => ({ ...each, uy: 1 }))).isConsistent).toBe(true);
	});
});
