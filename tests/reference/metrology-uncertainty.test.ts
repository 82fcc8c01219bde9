import { describe, expect, it } from 'vitest';
import {
	combineUncertainty,
	effectiveDegreesOfFreedom,
	mean,
	standardDeviation,
	studentTQuantile,
	type UncertaintyInput
} from '../../src/lib/metrology';

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
it('EURACHEM/CITAC CG4, A3: acid standardised against hydroxide', () => {
	const c = (1000 * 0.3888 * 14.89) / (18.64 * 204.2212 * 15);
	const withTemperature = (calibration: number, volume: number) =>
		Math.hypot(triangular(calibration), even(volume * 2.1e-4 * 4));
	const { standardUncertainty } = combineUncertainty(
		ofProduct(c, [
			{ name: 'repeatability', value: 1, u: 0.001, power: 1 },
			{ name: 'mass', value: 0.3888, u: weighing, power: 1 },
			{ name: 'purity', value: 1, u: even(0.0005), power: 1 },
			{ name: 'molar mass', value: 204.2212, u: phthalate, power: -1 },
			{ name: 'hydroxide 1', value: 18.64, u: withTemperature(0.03, 19), power: -1 },
			{ name: 'hydroxide 2', value: 14.89, u: withTemperature(0.03, 15), power: 1 },
			{ name: 'acid', value: 15, u: withTemperature(0.02, 15), power: -1 }
		])
	);
	expect(c).toBeCloseTo(0.10139, 5);
	expect(standardUncertainty).toBeCloseTo(0.00018434, 7);
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
		expect(effectiveDegreesOfFreedom(inputs)).toBeCloseTo(16.75, 1);
	});
	it('t and the expanded uncertainty at 99 % follow', () => {
		const t = studentTQuantile(0.995, 16);
		expect(t.toFixed(2)).toBe('2.92');
		// The guide rounds 92.5 up.
		expect(Math.abs(t * combineUncertainty(inputs).standardUncertainty - 93)).toBeLessThan(0.6);
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
	it('without the correlations they are not', () => {
		expect(combineUncertainty(resistance).standardUncertainty).toBeGreaterThan(0.19);
	});
});
