import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { youdenLine } from '../../src/lib/metrology';
import { close, factor } from './line-points';

describe("Youden's line", () => {
	const volume = fc.uniqueArray(fc.integer({ min: 1, max: 20 }), { minLength: 3, maxLength: 8 });
	it('finds constant error and slope that were put in, and a proportional error only in the slope', () => {
		fc.assert(
			fc.property(
				volume,
				fc.double({ min: -2, max: 2, noNaN: true }),
				factor,
				(volumes, blank, slope) => {
					const found = youdenLine(
						volumes.map((v) => ({ sampleVolume: v, titrantVolume: blank + slope * v })),
						{ given: { intercept: blank, slope } }
					);
					close(found.totalBlank, blank, 1e2);
					close(found.slope, slope, 1e2);
				}
			)
		);
	});
	it('against a given line both numbers count at once', () => {
		const taken = [2, 4, 5, 8, 10].map((v, i) => ({
			sampleVolume: v,
			titrantVolume: 2 * v + ([0.1, -0.1, 0.05, 0, -0.05][i] ?? Number.NaN)
		}));
		expect(youdenLine(taken)).toMatchObject({ joint: null, isConstantErrorClear: false });
		expect(youdenLine(taken, { given: { slope: 2 } }).joint?.isRejected).toBe(false);
		expect(youdenLine(taken, { given: { slope: 2.2 } }).joint?.isRejected).toBe(true);
		expect(youdenLine(taken, { given: { intercept: 1, slope: 2 } }).joint?.isRejected).toBe(true);
	});
});
