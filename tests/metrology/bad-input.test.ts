import { describe, expect, it } from 'vitest';
import { enNumber, individualsChart, recoveryOf, zetaScore } from '../../src/lib/metrology';

describe('what is no number or no uncertainty is named', () => {
	it.each([
		[[Number.NaN, 0.2, 8, 0.2], 'found'],
		[[8, -0.2, 8, 0.2], 'foundStandardUncertainty'],
		[[8, 0.2, Number.NaN, 0.2], 'expected'],
		[[8, 0.2, 8, Number.NaN], 'expectedStandardUncertainty']
	] as const)('recovery of %s: %s', ([found, u, expected, v], field) => {
		expect(() => recoveryOf(found, u, expected, v)).toThrow(new RegExp(`^${field} must be`));
	});
	it.each([enNumber, zetaScore])('%o', (score) => {
		expect(() => score(Number.NaN, 0.2, 8, 0.2)).toThrow(/^value must be a number; found NaN/);
		expect(() => score(8, 0.2, Number.NaN, 0.2)).toThrow(/^reference must be a number/);
		expect(() => score(8, Infinity, 8, 0.2)).toThrow(/ncertainty must be 0 or above/);
	});
	it('a rule that no chart has', () => {
		const rules = ['7 of 7'] as unknown as readonly '1 beyond 3s'[];
		expect(() => individualsChart([8, 8.1, 7.9], { rules })).toThrow(
			/^rules must be .*found 7 of 7/
		);
	});
});
