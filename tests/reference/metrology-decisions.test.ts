import { describe, expect, it } from 'vitest';
import {
	combineNormal,
	conformityProbability,
	evsiOfRepeats,
	guardedLimits,
	normalDensity,
	normalQuantile
} from '../../src/lib/metrology';

// Source: JCGM 106:2012, examples of 7.2 and 7.4 (printed to two decimals; the first two from memory),
// unrounded values from another program.
describe('JCGM 106: conformity probability', () => {
	it('two limits: 0.66', () => {
		const p = conformityProbability(13.6, 1.8, { lower: 12.5, upper: 16.3 });
		expect(p.toFixed(2)).toBe('0.66');
		expect(Math.abs(p - 0.6626297865)).toBeLessThan(1e-6);
	});
	it('one upper limit, a diode: 0.92', () => {
		const p = conformityProbability(-5.47, 0.05, { upper: -5.4 });
		expect(p.toFixed(2)).toBe('0.92');
		expect(Math.abs(p - 0.9192433408)).toBeLessThan(1e-6);
	});
	// Source: JCGM 106:2012, 8.3.3 (from memory): speed limit 100 km/h, u 2 % of the value, 99.9 % sure: from
	// 107 km/h on. Unrounded 106.588.
	it('guarded rejection: a speed that is above the limit to 99.9 %', () => {
		const speed = 100 / (1 - 0.02 * normalQuantile(0.999));
		expect(Math.ceil(speed)).toBe(107);
		expect(Math.abs(speed - 106.5876095)).toBeLessThan(1e-4);
		const p = conformityProbability(speed, 0.02 * speed, { upper: 100 });
		expect(Math.abs(p - 0.001)).toBeLessThan(1e-9);
	});
});

// Source: definitions of JCGM 106 and ILAC-G8, worked out with another program.
describe('guard bands about 7 to 9 with u = 0.25', () => {
	const band = { lower: 7, upper: 9 };
	it('5 % of risk at each limit', () => {
		const guarded = guardedLimits(band, 0.25);
		expect(Math.abs((guarded.lower ?? 0) - 7.411213407)).toBeLessThan(1e-8);
		expect(Math.abs((guarded.upper ?? 0) - 8.588786593)).toBeLessThan(1e-8);
		expect(guarded.isEmpty).toBe(false);
	});
	it('a band as wide as U', () => {
		expect(guardedLimits(band, 0.25, { factor: 2 })).toMatchObject({ lower: 7.5, upper: 8.5 });
	});
	it('7.3 conforms with 0.88', () => {
		expect(Math.abs(conformityProbability(7.3, 0.25, band) - 0.8849303298)).toBeLessThan(1e-8);
	});
});

// Source: set-up as in JCGM 106:2012, 9.5 (process sd 0.12, tolerance ± 0.2, u 0.04); risks by quadrature
// with another program. The measured value is normal about the true one, so that the chance of accepting
// is a conformity probability with value and limits changed about.
describe('risk of consumer and producer', () => {
	const tolerance = { lower: -0.2, upper: 0.2 };
	const risks = (accepted: { lower?: number; upper?: number }) => {
		const step = 1e-5;
		let [consumer, producer] = [0, 0];
		for (let truth = -0.9 + step / 2; truth < 0.9; truth += step) {
			const weight = (normalDensity(truth / 0.12) / 0.12) * step;
			const isAccepted = conformityProbability(truth, 0.04, accepted);
			if (Math.abs(truth) > 0.2) consumer += weight * isAccepted;
			else producer += weight * (1 - isAccepted);
		}
		return { consumer, producer };
	};
	it('measured within the tolerance', () => {
		const { consumer, producer } = risks(tolerance);
		expect(Math.abs(consumer - 0.01894220672)).toBeLessThan(1e-6);
		expect(Math.abs(producer - 0.03720780018)).toBeLessThan(1e-6);
	});
	it('measured within a guard band of two u', () => {
		const { lower, upper } = guardedLimits(tolerance, 0.04, { factor: 2 });
		const { consumer, producer } = risks({ lower, upper });
		expect(Math.abs(consumer - 0.0004686335989)).toBeLessThan(1e-6);
		expect(Math.abs(producer - 0.2476696402)).toBeLessThan(1e-6);
	});
});

// By hand: 1/0.25 = 4, 1/0.09 = 11.11; (8 · 4 + 7.1 · 11.11)/15.11 = 7.338, 1/√15.11 = 0.2572.
it('two normal beliefs as one', () => {
	const { mean, sd } = combineNormal({ mean: 8, sd: 0.5 }, { mean: 7.1, sd: 0.3 });
	expect(Math.abs(mean - 7.338235294)).toBeLessThan(1e-8);
	expect(Math.abs(sd - 0.2572478777)).toBeLessThan(1e-8);
});

// Formula of Raiffa and Schlaifer 1961; figures computed with another program.
describe('is another repeat worth it', () => {
	const input = { belief: { mean: 7.6, sd: 0.5 }, threshold: 7, repeatabilitySd: 0.3 };
	it.each([
		[1, 0.01574113623],
		[2, 0.02079898904],
		[4, 0.02408353482]
	])('%d repeats are expected to save %d', (n, saving) => {
		const found = evsiOfRepeats(input, n);
		expect(Math.abs(found.sample - saving)).toBeLessThan(1e-8);
		expect(Math.abs(found.perfect - 0.02805122536)).toBeLessThan(1e-8);
	});
	it('the second adds the difference', () => {
		expect(evsiOfRepeats(input, 1).next).toBeCloseTo(0.02079898904 - 0.01574113623, 9);
	});
});
