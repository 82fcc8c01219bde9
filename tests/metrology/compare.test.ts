import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	combineUncertainty,
	dixonTest,
	effectiveDegreesOfFreedom,
	enNumber,
	grubbsTest,
	mean,
	recoveryOf,
	standardDeviation,
	studentTQuantile,
	zetaScore
} from '../../src/lib/metrology';

describe('comparing two results', () => {
	// Definition: ISO 13528:2022 (from memory). By hand: 0.21 / √(0.09 + 0.0144) = 0.6499.
	it('E_n divides the difference by the root sum of squares of both U', () => {
		expect(enNumber(8.21, 0.3, 8, 0.12)).toBeCloseTo(0.64993, 5);
	});
	it('zeta with half of each U is twice E_n', () => {
		expect(zetaScore(8.21, 0.15, 8, 0.06)).toBeCloseTo(2 * enNumber(8.21, 0.3, 8, 0.12), 12);
	});
	it('E_n changes sign with the order and with nothing else', () => {
		const u = fc.double({ min: 0.01, max: 3, noNaN: true });
		const value = fc.double({ min: -5, max: 40, noNaN: true });
		fc.assert(
			fc.property(value, u, value, u, (x, ux, y, uy) => {
				expect(enNumber(x, ux, y, uy)).toBeCloseTo(-enNumber(y, uy, x, ux), 12);
			})
		);
	});
	it.each([
		[() => enNumber(8, -1, 8, 0.1), 'expandedUncertainty must be 0 or above; found -1'],
		[
			() => enNumber(8, 0, 8, 0),
			'expandedUncertainty and referenceExpandedUncertainty must not both be 0'
		],
		[() => zetaScore(8, 0.1, 8, -2), 'referenceStandardUncertainty must be 0 or above; found -2']
	])('what cannot be compared is named (%#)', (compare, message) => {
		expect(compare).toThrow(new RangeError(message));
	});
});

describe('recovery', () => {
	it('is found over expected, with the relative uncertainties added in squares', () => {
		const { recovery, standardUncertainty } = recoveryOf(7.2, 0.2, 8, 0.05);
		expect(recovery).toBeCloseTo(0.9, 12);
		// 0.9 · √((0.2/7.2)² + (0.05/8)²) by hand.
		expect(standardUncertainty).toBeCloseTo(0.9 * Math.hypot(0.2 / 7.2, 0.05 / 8), 12);
	});
	it('is off when it differs from 1 by more than twice its uncertainty, either way', () => {
		expect(recoveryOf(7.2, 0.2, 8, 0.05).isOff).toBe(true);
		expect(recoveryOf(7.7, 0.2, 8, 0.05).isOff).toBe(false);
		expect(recoveryOf(8.8, 0.2, 8, 0.05).isOff).toBe(true);
	});
	it('of nothing cannot be had', () => {
		expect(() => recoveryOf(0.1, 0.1, 0, 0.1)).toThrow('expected must be above 0; found 0');
	});
});

describe('outlier tests are screens', () => {
	it('two equal results of three make any third suspect, and that is said to mean little', () => {
		const values = [8.1, 8.1, 8.4];
		expect(grubbsTest(values)).toMatchObject({ isSuspect: true, saysLittle: true, suspect: 2 });
		expect(dixonTest(values)).toMatchObject({ isSuspect: true, saysLittle: true, suspect: 2 });
	});
	it('equal results hold nothing suspect', () => {
		expect(grubbsTest([8.1, 8.1, 8.1, 8.1])).toMatchObject({ statistic: 0, isSuspect: false });
		expect(dixonTest([8.1, 8.1, 8.1, 8.1])).toMatchObject({ statistic: 0, isSuspect: false });
	});
	it('a suspect at the low end is found as well as one at the high end, in any order', () => {
		const good = [8.0, 8.1, 8.15, 8.2, 8.25];
		for (const odd of [6, 10])
			for (let place = 0; place <= good.length; place++) {
				const values = [...good.slice(0, place), odd, ...good.slice(place)];
				expect(grubbsTest(values)).toMatchObject({ suspect: place, isSuspect: true });
				expect(dixonTest(values)).toMatchObject({ suspect: place, isSuspect: true });
			}
	});
	it('statistics do not change with unit or zero', () => {
		const value = fc.integer({ min: 0, max: 400 }).map((n) => n / 20);
		fc.assert(
			fc.property(fc.array(value, { minLength: 3, maxLength: 10 }), (values) => {
				const others = values.map((each) => 2.8 * each + 7);
				for (const test of [grubbsTest, dixonTest])
					expect(test(others).statistic).toBeCloseTo(test(values).statistic, 8);
			})
		);
	});
	it.each([
		[() => grubbsTest([8, 8.1]), 'grubbsTest requires at least 3 values; found 2'],
		[() => dixonTest([8, 8.1, Number.NaN]), 'dixonTest requires finite values; found 8, 8.1, NaN'],
		[
			() => dixonTest(Array.from({ length: 11 }, (_, i) => i)),
			'dixonTest requires 3 to 10 values; found 11'
		]
	])('what cannot be tested is named (%#)', (test, message) => {
		expect(test).toThrow(new RangeError(message));
	});
});

describe('bad input is named', () => {
	it.each([
		[() => mean([]), 'mean requires at least 1 value; found 0'],
		[() => standardDeviation([8]), 'standardDeviation requires at least 2 values; found 1'],
		[() => mean([8, Number.NaN]), 'mean requires finite values; found 8, NaN'],
		[() => studentTQuantile(1, 5), 'p must lie between 0 and 1; found 1'],
		[() => studentTQuantile(0.975, 0), 'degreesOfFreedom must be above 0; found 0'],
		[
			() => combineUncertainty([{ name: 'scale', standardUncertainty: -1, sensitivity: 1 }]),
			'standardUncertainty of scale must be 0 or above; found -1'
		]
	])('%#', (call, message) => {
		expect(call).toThrow(new RangeError(message));
	});
});

describe('combining uncertainties', () => {
	const pair = [
		{ name: 'a', standardUncertainty: 3, sensitivity: 1 },
		{ name: 'b', standardUncertainty: 4, sensitivity: -1 }
	];
	it('independent ones add in squares', () => {
		expect(combineUncertainty(pair).standardUncertainty).toBe(5);
	});
	it('fully correlated ones of opposite effect leave the difference', () => {
		const { standardUncertainty } = combineUncertainty(pair, [{ i: 0, j: 1, r: 1 }]);
		expect(standardUncertainty).toBeCloseTo(1, 12);
	});
	it('a coefficient beyond 1, or one of an input with itself, is refused', () => {
		expect(() => combineUncertainty(pair, [{ i: 0, j: 1, r: 1.2 }])).toThrow('r must be between');
		expect(() => combineUncertainty(pair, [{ i: 1, j: 1, r: 0.5 }])).toThrow('two of the inputs');
	});
	it('where every input is known for certain, so are the degrees of freedom', () => {
		expect(effectiveDegreesOfFreedom(pair)).toBe(Number.POSITIVE_INFINITY);
	});
});
