import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dkhFromMolPerKg } from '../../src/lib/chemistry';
import {
	adviceLoss,
	analyteLimits,
	defaultBand,
	limitsOf,
	retestInterval,
	type Act
} from '../../src/lib/judgement';
import { convertValue } from '../../src/lib/kits';

describe('limits', () => {
	it('each says where it comes from', () => {
		for (const limits of Object.values(analyteLimits))
			for (const limit of Object.values(limits))
				if (typeof limit === 'object') expect(limit.origin.length).toBeGreaterThan(5);
	});
	// Lee and others 2006 (from memory): 2305 µmol/kg at salinity 35 and 20 °C in the (sub)tropics;
	// 2305 µmol/kg × 1.0248 kg/L = 2.362 meq/L = 6.62 dKH.
	it('the ocean’s own value lies in the range that is shown for it', () => {
		const { openOcean } = limitsOf('alkalinity');
		const tropics = dkhFromMolPerKg(2305e-6, 1.0248);
		expect(tropics).toBeCloseTo(6.62, 2);
		expect(openOcean.low).toBeLessThan(tropics);
		expect(openOcean.high).toBeGreaterThan(tropics);
	});
	it('the cap is no less than the usual rise, the band within what is sensible, the alarm below the band', () => {
		for (const { rise, band, sensible, lowAlarm } of Object.values(analyteLimits)) {
			expect(rise.hardCapPerDay).toBeGreaterThanOrEqual(rise.usualPerDay);
			expect(band.low).toBeGreaterThan(sensible.low);
			expect(band.high).toBeLessThan(sensible.high);
			expect(lowAlarm.below).toBeLessThan(band.low);
		}
	});
	// Common practice, no source.
	it('rises by 0.5 and never more than 1.0 dKH a day; pH by 0.2 and never above 8.5', () => {
		const { rise, ph } = limitsOf('alkalinity');
		expect([rise.usualPerDay, rise.hardCapPerDay]).toEqual([0.5, 1]);
		expect([ph.maxRisePerDay, ph.highest]).toEqual([0.2, 8.5]);
	});
	it('the default band is the same water in every unit', () => {
		expect(defaultBand('dKH')).toEqual({ low: 7, high: 9, unit: 'dKH' });
		expect(convertValue(defaultBand('ppm CaCO3').low, 'ppm CaCO3', 'dKH')).toBeCloseTo(7, 12);
	});
});

const value = fc.double({ min: 0, max: 20, noNaN: true });
const anyBand = fc
	.tuple(fc.double({ min: 5, max: 11, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true }))
	.map(([low, width]) => ({ low, high: low + width, unit: 'dKH' as const }));
const acts: Act[] = ['leave', 'raise', 'lower'];

describe('what advice costs when it is wrong', () => {
	// By hand, in days of 0.5 dKH: 6 dKH is 2 days below a band from 7: 20 × 2² = 80; raising costs
	// 6 + a quarter of it; lowering 6 + 80 + 40 × 6².
	it('at 6 dKH with a band of 7 to 9', () => {
		const band = { low: 7, high: 9, unit: 'dKH' } as const;
		expect(acts.map((act) => adviceLoss(act, 6, band))).toEqual([80, 26, 1526]);
	});
	it('nothing within the band is lost by leaving', () => {
		fc.assert(
			fc.property(anyBand, fc.double({ min: 0, max: 1, noNaN: true }), (band, share) => {
				const inside = band.low + share * (band.high - band.low);
				expect(adviceLoss('leave', inside, band)).toBeLessThan(1e-9);
			})
		);
	});
	it('is convex in the true value', () => {
		fc.assert(
			fc.property(fc.constantFrom(...acts), anyBand, value, value, (act, band, a, b) => {
				const middle = adviceLoss(act, (a + b) / 2, band);
				const ends = (adviceLoss(act, a, band) + adviceLoss(act, b, band)) / 2;
				expect(middle).toBeLessThanOrEqual(ends + 1e-6);
			})
		);
	});
	it('moving it where it need not go costs more than leaving it, at any value', () => {
		fc.assert(
			fc.property(anyBand, value, (band, at) => {
				if (at >= band.low)
					expect(adviceLoss('raise', at, band)).toBeGreaterThan(adviceLoss('leave', at, band));
				if (at <= band.high)
					expect(adviceLoss('lower', at, band)).toBeGreaterThan(adviceLoss('leave', at, band));
			})
		);
	});
	it('far outside, leaving it costs more than moving it: waiting harms too', () => {
		fc.assert(
			fc.property(anyBand, (band) => {
				expect(adviceLoss('leave', band.low - 2, band)).toBeGreaterThan(
					adviceLoss('raise', band.low - 2, band)
				);
				expect(adviceLoss('leave', band.high + 2, band)).toBeGreaterThan(
					adviceLoss('lower', band.high + 2, band)
				);
			})
		);
	});
	// Common practice, no source: alkalinity swings by 0.1 to 0.5 dKH a day.
	it('what is known exactly is moved from about 0.3 dKH beyond its edge, not before', () => {
		fc.assert(
			fc.property(anyBand, ({ low, high, unit }) => {
				// Nearer to the alarm waiting harms as well.
				fc.pre(low >= limitsOf('alkalinity').lowAlarm.below + 0.5);
				const band = { low, high, unit };
				const costs = (act: Act, at: number) => adviceLoss(act, at, band);
				for (const beyond of [0.1, 0.25]) {
					expect(costs('leave', low - beyond)).toBeLessThan(costs('raise', low - beyond));
					expect(costs('leave', high + beyond)).toBeLessThan(costs('lower', high + beyond));
				}
				expect(costs('leave', high + 0.4)).toBeGreaterThan(costs('lower', high + 0.4));
				expect(costs('leave', low - 0.4)).toBeGreaterThan(costs('raise', low - 0.4));
			})
		);
	});
	it('does not depend on the unit', () => {
		fc.assert(
			fc.property(fc.constantFrom(...acts), anyBand, value, (act, band, at) => {
				const to = (x: number) => convertValue(x, 'dKH', 'ppm CaCO3');
				const other = { low: to(band.low), high: to(band.high), unit: 'ppm CaCO3' as const };
				expect(adviceLoss(act, to(at), other)).toBeCloseTo(adviceLoss(act, at, band), 6);
			})
		);
	});
	it('names what it cannot use', () => {
		expect(() => adviceLoss('leave', Number.NaN, defaultBand('dKH'))).toThrow(
			new RangeError('trueValue must be a number; found NaN')
		);
		expect(() => adviceLoss('leave', 7, { low: 9, high: 7, unit: 'dKH' })).toThrow(
			new RangeError('band.low must be at most band.high; found 9 and 7')
		);
	});
});

describe('when to test again', () => {
	const calm = {
		band: { low: 7, high: 9, unit: 'dKH' } as const,
		expandedUncertainty: 0.4,
		consumptionPerDay: null,
		changePerDay: null
	};
	// Half the width of the band is 1 dKH: used up in 2 days at 0.5 a day, in 1 at 0.8, in 5 at 0.2.
	it.each([
		[null, null, 7],
		[0.1, null, 7],
		[0.2, null, 5],
		[0.5, null, 2],
		[0.8, null, 1],
		[3, null, 1],
		[null, -0.34, 2]
	])('used %s, changing %s a day: in %s days', (consumptionPerDay, changePerDay, days) => {
		expect(retestInterval({ ...calm, consumptionPerDay, changePerDay })).toBe(days);
	});
	// Common practice, no source: above 0.5 dKH a day a test a week is too rare.
	it('is never a week above 0.5 dKH a day', () => {
		fc.assert(
			fc.property(fc.double({ min: 0.5, max: 5, noNaN: true }), (consumptionPerDay) => {
				expect(retestInterval({ ...calm, consumptionPerDay })).toBeLessThan(7);
			})
		);
	});
	it('not more often than the test can resolve', () => {
		const coarse = { ...calm, expandedUncertainty: 2, consumptionPerDay: 0.5 };
		expect(retestInterval(coarse)).toBe(4);
	});
});
