import { describe, expect, it } from 'vitest';
import {
	combineUncertainty,
	degreesOfDoubt,
	effectiveDegreesOfFreedom,
	mean,
	standardDeviation,
	studentTQuantile,
	type UncertaintyInput
} from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

const triangular = (halfWidth: number) => halfWidth / Math.sqrt(6);
const even = (halfWidth: number) => halfWidth / Math.sqrt(3);

/** Inputs of a product or quotient c = Π x^e: the sensitivity of each is e c / x. */
function ofProduct(
	c: number,
	factors: { name: string; value: number; u: number; power: 1 | -1 }[]
): UncertaintyInput[] {
	return factors.map(({ name, value, u, power }) => ({
		name,
		standardUncertainty: u,
		sensitivity: (power * c) / value
	}));
}

// Molar mass of potassium hydrogen phthalate, C8H5O4K, from the masses and even half-widths that
// the guide prints.
const phthalate = Math.hypot(8 * even(0.0008), 5 * even(0.00007), 4 * even(0.0003), even(0.0001));
const weighing = Math.SQRT2 * even(0.00015);

// Source: EURACHEM/CITAC Guide CG4, QUAM:2012, appendix A2: sodium hydroxide standardised with
// phthalate, c = 0.10214 mol/L, u = 0.00010 mol/L.
describe('EURACHEM/CITAC CG4, A2: a titrant standardised by weighing', () => {
	const c = (1000 * 0.3888 * 1) / (204.2212 * 18.64);
	const inputs = ofProduct(c, [
		{ name: 'repeatability', value: 1, u: 0.0005, power: 1 },
		{ name: 'mass', value: 0.3888, u: weighing, power: 1 },
		{ name: 'purity', value: 1, u: even(0.0005), power: 1 },
		{ name: 'molar mass', value: 204.2212, u: phthalate, power: -1 },
		{ name: 'volume', value: 18.64, u: Math.hypot(triangular(0.03), 0.006), power: -1 }
	]);
	it('value and uncertainty are those of the guide', () => {
		expect(c).toBeCloseTo(0.10214, 5);
		const { standardUncertainty } = combineUncertainty(inputs);
		expect(standardUncertainty.toFixed(4)).toBe('0.0001');
		// The same example in the documentation of the GUM Tree Calculator (MSL New Zealand): 0.00010050.
		expect(standardUncertainty).toBeCloseTo(0.0001005007, 9);
	});
	it('the volume leads, as in the figure of the guide', () => {
		const shares = combineUncertainty(inputs).contributions;
		const largest = [...shares].sort((a, b) => b.contribution - a.contribution)[0];
		expect(largest?.name).toBe('volume');
		expect(largest?.contribution).toBeCloseTo(7.47292e-5, 9);
	});
});

// Source: EURACHEM/CITAC CG4, A3: acid against that hydroxide, c = 0.10139 mol/L. The table printed
// in the edition of 2000 gives u = 0.00016, which does not follow from its own inputs; with a
// repeatability of 0.001 they give 0.000184 (so too in the GUM Tree Calculator's documentation).
describe('EURACHEM/CITAC CG4, A3: acid standardised against hydroxide', () => {
	const withTemperature = (calibration: number, volume: number) =>
		Math.hypot(triangular(calibration), even(volume * 2.1e-4 * 4));
	const acid = ({ repeatability = 0.001, excessMl = 0, excessSd = 0 } = {}) => {
		const [v1, v2] = [18.64 - excessMl, 14.89 - excessMl];
		const c = (1000 * 0.3888 * v2) / (v1 * 204.2212 * 15);
		const inputs = ofProduct(c, [
			{ name: 'repeatability', value: 1, u: repeatability, power: 1 },
			{ name: 'mass', value: 0.3888, u: weighing, power: 1 },
			{ name: 'purity', value: 1, u: even(0.0005), power: 1 },
			{ name: 'molar mass', value: 204.2212, u: phthalate, power: -1 },
			{
				name: 'hydroxide 1',
				value: v1,
				u: Math.hypot(withTemperature(0.03, 19), excessSd),
				power: -1
			},
			{
				name: 'hydroxide 2',
				value: v2,
				u: Math.hypot(withTemperature(0.03, 15), excessSd),
				power: 1
			},
			{ name: 'acid', value: 15, u: withTemperature(0.02, 15), power: -1 }
		]);
		return { c, inputs, ...combineUncertainty(inputs) };
	};
	it('value and uncertainty follow from the inputs', () => {
		expect(acid().c).toBeCloseTo(0.10139, 5);
		expect(acid().standardUncertainty).toBeCloseTo(0.00018434, 7);
	});
	it('the printed 0.00016 is what comes of a repeatability over √3, not of 0.001', () => {
		expect(acid().standardUncertainty.toFixed(5)).toBe('0.00018');
		const { standardUncertainty } = acid({ repeatability: 0.001 / Math.sqrt(3) });
		expect(standardUncertainty.toFixed(5)).toBe('0.00016');
	});
	it('the inputs as the table of 2000 rounds them give 0.00019', () => {
		const c = acid().c;
		const { standardUncertainty } = combineUncertainty(
			ofProduct(c, [
				{ name: 'repeatability', value: 1, u: 0.001, power: 1 },
				{ name: 'mass', value: 0.3888, u: 0.00013, power: 1 },
				{ name: 'purity', value: 1, u: 0.00029, power: 1 },
				{ name: 'molar mass', value: 204.2212, u: 0.0038, power: -1 },
				{ name: 'hydroxide 1', value: 18.64, u: 0.016, power: -1 },
				{ name: 'hydroxide 2', value: 14.89, u: 0.015, power: 1 },
				{ name: 'acid', value: 15, u: 0.011, power: -1 }
			])
		);
		expect(standardUncertainty.toFixed(5)).toBe('0.00019');
	});
	// The guide's variant: indicator turns 0.05 mL late, ± 0.03; c = 0.10132, u = 0.00031.
	it('a late indicator shifts the value and widens it', () => {
		const late = acid({
			repeatability: 0.001 / Math.sqrt(3),
			excessMl: 0.05,
			excessSd: 0.03
		});
		expect(late.c.toFixed(5)).toBe('0.10132');
		expect(late.standardUncertainty.toFixed(5)).toBe('0.00031');
	});
});

// Source: JCGM 100:2008, example H.1 (end gauge): u_c = 32 nm, ν_eff = 16, t = 2.92, U99 = 93 nm.
describe('JCGM 100, H.1: effective degrees of freedom', () => {
	const inputs = [
		{ name: 'standard', standardUncertainty: 25, sensitivity: 1, degreesOfFreedom: 18 },
		{ name: 'difference', standardUncertainty: 5.8, sensitivity: 1, degreesOfFreedom: 24 },
		{ name: 'comparator, random', standardUncertainty: 3.9, sensitivity: 1, degreesOfFreedom: 5 },
		{
			name: 'comparator, systematic',
			standardUncertainty: 6.7,
			sensitivity: 1,
			degreesOfFreedom: 8
		},
		{ name: 'expansion', standardUncertainty: 2.8867873, sensitivity: 1, degreesOfFreedom: 50 },
		{ name: 'temperature', standardUncertainty: 16.599027, sensitivity: 1, degreesOfFreedom: 2 }
	];
	it('u_c rounds to 32 nm and ν_eff truncates to 16', () => {
		const { standardUncertainty } = combineUncertainty(inputs);
		expect(Math.round(standardUncertainty)).toBe(32);
		expect(Math.floor(effectiveDegreesOfFreedom(inputs))).toBe(16);
		// Unrounded, worked out with another program; the guide prints 16.7.
		expect(effectiveDegreesOfFreedom(inputs)).toBeCloseTo(16.7519, 3);
	});
	it('with the rounded 32 nm it would be 17, a common slip', () => {
		const sum = inputs.reduce((all, x) => all + x.standardUncertainty ** 4 / x.degreesOfFreedom, 0);
		expect(Math.floor(32 ** 4 / sum)).toBe(17);
	});
	it('t and the expanded uncertainty at 99 % follow', () => {
		const t = studentTQuantile(0.995, 16);
		expect(t.toFixed(2)).toBe('2.92');
		// Unrounded 92.48, which the guide rounds up to 93.
		const expanded = t * combineUncertainty(inputs).standardUncertainty;
		expect(expanded).toBeCloseTo(92.483, 2);
		expect(Math.ceil(expanded)).toBe(93);
	});
});

// Source: JCGM 100:2008, example H.2 (five sets of readings; from memory), R = (V/I) cos φ and
// X = (V/I) sin φ: u(R) = 0.071 Ω, u(X) = 0.295 Ω.
describe('JCGM 100, H.2: correlated inputs', () => {
	const volt = [5.007, 4.994, 5.005, 4.99, 4.999];
	const ampere = [0.019663, 0.019639, 0.01964, 0.019685, 0.019678];
	const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
	const correlation = (a: number[], b: number[]) => {
		const [ma, mb] = [mean(a), mean(b)];
		const products = a.map((x, i) => (x - ma) * ((b[i] ?? Number.NaN) - mb));
		const covariance = products.reduce((sum, each) => sum + each, 0) / (a.length - 1);
		return covariance / (standardDeviation(a) * standardDeviation(b));
	};
	const [v, i, phi] = [mean(volt), mean(ampere), mean(phase)];
	const uOfMean = (values: number[]) => standardDeviation(values) / Math.sqrt(values.length);
	const inputsOf = (dv: number, di: number, dphi: number): UncertaintyInput[] => [
		{ name: 'V', standardUncertainty: uOfMean(volt), sensitivity: dv },
		{ name: 'I', standardUncertainty: uOfMean(ampere), sensitivity: di },
		{ name: 'φ', standardUncertainty: uOfMean(phase), sensitivity: dphi }
	];
	const correlations = [
		{ i: 0, j: 1, r: correlation(volt, ampere) },
		{ i: 0, j: 2, r: correlation(volt, phase) },
		{ i: 1, j: 2, r: correlation(ampere, phase) }
	];
	const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
	const resistance = inputsOf(cos / i, (-v * cos) / i ** 2, (-v * sin) / i);
	const reactance = inputsOf(sin / i, (-v * sin) / i ** 2, (v * cos) / i);
	it('uncertainties are those of the guide', () => {
		expect(combineUncertainty(resistance, correlations).standardUncertainty).toBeCloseTo(0.071, 3);
		// Printed 0.295 from rounded correlations; unrounded 0.2956.
		const uX = combineUncertainty(reactance, correlations).standardUncertainty;
		expect(Math.abs(uX - 0.295)).toBeLessThan(0.001);
	});
	// Z = V/I: 254.26 Ω, u(Z) = 0.236 Ω.
	it('so is that of the impedance', () => {
		expect((v / i).toFixed(2)).toBe('254.26');
		const impedance = inputsOf(1 / i, -v / i ** 2, 0);
		expect(combineUncertainty(impedance, correlations).standardUncertainty).toBeCloseTo(0.236, 3);
	});
	it('without the correlations they are not', () => {
		expect(combineUncertainty(resistance).standardUncertainty).toBeGreaterThan(0.19);
	});
});

// Source: JCGM 101:2008, 9.2.3 and 9.2.4 (from memory): sums of four even inputs. u = 2.0 and 10.1;
// 95 % by drawing ± 3.88 and ± 17.0, by the law of propagation ± 3.92 and ± 19.9. The first is exact by
// the Irwin–Hall distribution: 3.8794.
describe('JCGM 101: additive models', () => {
	const inputsOf = (us: readonly number[]): UncertaintyInput[] =>
		us.map((u, i) => ({ name: `X${i + 1}`, standardUncertainty: u, sensitivity: 1 }));
	const drawn = (us: readonly number[], draws: number) => {
		const chance = chanceOf(101);
		const sums = Array.from({ length: draws }, () =>
			us.reduce((sum, u) => sum + chance.even(Math.sqrt(3) * u), 0)
		).sort((a, b) => Math.abs(a) - Math.abs(b));
		return { sd: standardDeviation(sums), half: Math.abs(sums[Math.floor(0.95 * draws)] ?? 0) };
	};
	it.each([
		{ us: [1, 1, 1, 1], u: 2, gum: 3.92, half: 3.88 },
		{ us: [1, 1, 1, 10], u: 10.1489, gum: 19.89, half: 17.01 }
	])('$us: u $u; normal ± $gum, drawn ± $half', ({ us, u, gum, half }) => {
		const { standardUncertainty } = combineUncertainty(inputsOf(us));
		expect(standardUncertainty).toBeCloseTo(u, 4);
		const k = studentTQuantile(0.975, Number.POSITIVE_INFINITY);
		expect(Math.abs(k * standardUncertainty - gum)).toBeLessThan(0.005);
		const found = drawn(us, 200_000);
		expect(Math.abs(found.sd / u - 1)).toBeLessThan(0.006);
		// 200,000 draws tell the quantile to half a percent.
		expect(Math.abs(found.half / half - 1)).toBeLessThan(0.008);
	});
});

// A2 and A3 by drawing (JCGM 101): sd as in the guide, and the 95 % interval of four million draws
// worked out with another program: 0.101941 to 0.102332 and 0.101027 to 0.101749.
describe('EURACHEM/CITAC CG4, A2 and A3 by drawing', () => {
	const draw = (which: 'A2' | 'A3') => {
		const chance = chanceOf(2012);
		const volume = (ml: number, calibration: number, temperature: () => number) =>
			ml + chance.triangular(calibration) + temperature();
		const cs = Array.from({ length: 200_000 }, () => {
			const mass = 0.3888 + chance.even(0.00015) + chance.even(0.00015);
			const purity = 1 + chance.even(0.0005);
			const molar = 204.2212 + phthalate * chance.normal();
			if (which === 'A2') {
				const v = volume(18.64, 0.03, () => 0.006 * chance.normal());
				return ((1 + 0.0005 * chance.normal()) * 1000 * mass * purity) / (molar * v);
			}
			const warm = (ml: number) => () => chance.even(ml * 2.1e-4 * 4);
			const v1 = volume(18.64, 0.03, warm(19));
			const v2 = volume(14.89, 0.03, warm(15));
			const v = volume(15, 0.02, warm(15));
			return ((1 + 0.001 * chance.normal()) * 1000 * mass * purity * v2) / (v1 * molar * v);
		}).sort((a, b) => a - b);
		const at = (p: number) => cs[Math.floor(p * cs.length)] ?? Number.NaN;
		return { sd: standardDeviation(cs), low: at(0.025), high: at(0.975) };
	};
	it.each([
		{ which: 'A2', u: 0.0001005, low: 0.1019406, high: 0.102332 },
		{ which: 'A3', u: 0.00018434, low: 0.1010271, high: 0.1017483 }
	] as const)('$which', ({ which, u, low, high }) => {
		const found = draw(which);
		expect(Math.abs(found.sd / u - 1)).toBeLessThan(0.006);
		// A quantile at 2.5 % of 200,000 draws: standard error 0.6 % of u; four of them.
		expect(Math.abs(found.low - low)).toBeLessThan(0.025 * u);
		expect(Math.abs(found.high - high)).toBeLessThan(0.025 * u);
	});
});

// Source: JCGM 100:2008, example in G.4.2: known to a quarter is 8 degrees of freedom.
it('JCGM 100, G.4.2: doubt as degrees of freedom', () => {
	expect(degreesOfDoubt(0.25)).toBeCloseTo(8, 12);
	expect(degreesOfDoubt(0.5)).toBeCloseTo(2, 12);
	expect(() => degreesOfDoubt(0)).toThrow('relativeDoubt must be above 0; found 0');
});
