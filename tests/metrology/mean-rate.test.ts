import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanRate } from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

const at = (day: number, value: number, standardUncertainty = 0.2) => ({
	day,
	value,
	standardUncertainty
});

describe('mean change per day', () => {
	it('of two points is their difference over the days, by hand', () => {
		const rate = meanRate([at(0, 8), at(4, 7)]);
		expect(rate?.perDay).toBeCloseTo(-0.25, 12);
		expect(rate?.standardUncertainty).toBeCloseTo((0.2 * Math.SQRT2) / 4, 12);
		expect(rate?.expandedUncertainty).toBeCloseTo((1.96 * 0.2 * Math.SQRT2) / 4, 4);
		expect(rate?.scatterRatio).toBeNull();
	});
	it('a doubtful point pulls less', () => {
		const rate = meanRate([at(0, 8), at(1, 8), at(2, 8), at(3, 12, 100)]);
		expect(rate?.perDay).toBeCloseTo(0, 3);
	});
	it('points that scatter more than they claim widen the ±', () => {
		const calm = meanRate([at(0, 8), at(1, 7.9), at(2, 7.8), at(3, 7.7)]);
		const wild = meanRate([at(0, 8), at(1, 9.9), at(2, 6), at(3, 7.7)]);
		expect(calm?.scatterRatio).toBeCloseTo(0, 9);
		expect(wild?.scatterRatio).toBeGreaterThan(2);
		expect(wild?.expandedUncertainty).toBeGreaterThan(4 * (calm?.expandedUncertainty ?? 0));
	});
	it('of one day, or of nothing, there is none', () => {
		expect(meanRate([])).toBeNull();
		expect(meanRate([at(3, 8)])).toBeNull();
		expect(meanRate([at(3, 8), at(3, 8.2)])).toBeNull();
	});
	it('does not depend on where days are counted from', () => {
		const day = fc.integer({ min: 0, max: 60 });
		const value = fc.integer({ min: 50, max: 120 }).map((tenths) => tenths / 10);
		fc.assert(
			fc.property(fc.array(fc.tuple(day, value), { minLength: 3, maxLength: 8 }), (pairs) => {
				const rate = meanRate(pairs.map(([d, v]) => at(d, v)));
				const later = meanRate(pairs.map(([d, v]) => at(d + 20_000, v)));
				if (rate === null) expect(later).toBeNull();
				else expect(later?.perDay).toBeCloseTo(rate.perDay, 8);
			})
		);
	});
	it('of a tank that stands still holds 0 in about 19 of 20 times', () => {
		const chance = chanceOf(17);
		const runs = 4000;
		let held = 0;
		for (let run = 0; run < runs; run++) {
			const points = [0, 7, 14, 21, 28].map((day) => at(day, 8 + 0.2 * chance.normal()));
			const rate = meanRate(points);
			if (rate && Math.abs(rate.perDay) <= rate.expandedUncertainty) held++;
		}
		// The ± only ever widens with the scatter, so it errs to the safe side.
		expect(held / runs).toBeGreaterThan(0.945);
		expect(held / runs).toBeLessThan(0.99);
	});
	it.each([
		[at(Number.NaN, 8), 'day must be a number; found NaN'],
		[at(1, Number.NaN), 'value must be a number; found NaN'],
		[at(1, 8, 0), 'standardUncertainty must be above 0; found 0']
	])('a point that cannot be is named (%#)', (point, message) => {
		expect(() => meanRate([at(0, 8), point])).toThrow(new RangeError(message));
	});
});
