import { describe, expect, it } from 'vitest';
import {
	densityKgPerL,
	dkhFromMeqPerL,
	dkhFromMolPerKg,
	dkhFromPpmCaCO3,
	meqPerLFromDkh,
	molPerKgFromDkh,
	ppmCaCO3FromDkh,
	seawater
} from '../../src/lib/chemistry';
import seacarb from './data/seacarb-constants.json';

const at35 = seawater({ salinity: 35, temperatureC: 25 });

// Dickson, Sabine & Christian 2007 (Guide to best practices for ocean CO2 measurements, PICES
// Special Publication 3), check values of chapter 5 at salinity 35 and 25 °C; taken from another
// program's tests that quote them. Each is held to half its last digit; those of sulfate and
// fluoride are printed to two decimals.
describe('constants of seawater against the check values of the Guide', () => {
	const { k0, k1, k2, kB, kW, kS, kF } = at35.constants;
	const sulfateRatio = 1 + at35.totals.sulfateMolPerKg / kS;
	it.each([
		['ln K0', Math.log(k0), -3.5617, 4],
		['log10 K1', Math.log10(k1), -5.8472, 4],
		['log10 K2', Math.log10(k2), -8.966, 4],
		['ln KB', Math.log(kB), -19.7964, 4],
		['ln KW', Math.log(kW), -30.434, 3],
		['ln KS', Math.log(kS), -2.3, 2],
		['ln KF, brought to the total scale', Math.log(kF * sulfateRatio), -6.09, 2]
	])('%s', (_name, found, printed, digits) => {
		expect(found).toBeCloseTo(printed, digits);
	});
});

describe('constants of seawater against another writing of the same equations', () => {
	it.each(seacarb.rows)('salinity $salinity, $temperatureC °C', (row) => {
		const { constants, totals } = seawater(row);
		const { k0, k1, k2, kB, kW, kS, kF } = constants;
		expect(-Math.log10(k1)).toBeCloseTo(row.pK1, 9);
		expect(-Math.log10(k2)).toBeCloseTo(row.pK2, 9);
		expect(Math.log(kB)).toBeCloseTo(row.lnKB, 8);
		expect(Math.log(kS)).toBeCloseTo(row.lnKS, 8);
		expect(Math.log(kF * (1 + totals.sulfateMolPerKg / kS))).toBeCloseTo(row.lnKFTotal, 8);
		expect(Math.log(k0)).toBeCloseTo(row.lnK0, 8);
		// Here the two differ by choice: the Guide's first term against an exact change of scale.
		const difference = Math.log(kW) - row.lnKWExactlyChangedToTotal;
		expect(difference).toBeGreaterThan(0.01);
		expect(difference).toBeLessThan(0.02);
		expect(densityKgPerL(row.salinity, row.temperatureC) * 1000).toBeCloseTo(row.densityKgPerM3, 6);
	});
});

// UNESCO 1983 (Technical Papers in Marine Science 44), after Millero & Poisson 1981. The printed
// temperatures are on the scale of 1968, ours on that of 1990.
describe('density of seawater', () => {
	it.each([
		[35, 5, 1027.67547],
		[35, 25, 1023.34306],
		[0, 5, 999.96675]
	])('salinity %d, %d °C of 1968: %d kg/m3', (salinity, t68, kgPerM3) => {
		const t90 = t68 * 0.99975 + 0.0002;
		expect(densityKgPerL(salinity, t90) * 1000).toBeCloseTo(kgPerM3, 5);
	});
});

describe('what seawater of salinity 35 holds', () => {
	it.each([
		['borate: Lee et al. 2010', at35.totals.borateMolPerKg, 432.6e-6, 0.05e-6],
		['sulfate: Morris & Riley 1966', at35.totals.sulfateMolPerKg, 28.235e-3, 0.5e-6],
		// Printed with a molar mass of fluorine that differs in the fifth digit.
		['fluoride: Riley 1965', at35.totals.fluorideMolPerKg, 68.32e-6, 0.01e-6],
		['calcium: Riley & Tongudai 1967', at35.totals.calciumMolPerKg, 10.285e-3, 0.5e-6]
	])('%s', (_name, found, printed, tolerance) => {
		expect(Math.abs(found - printed)).toBeLessThan(tolerance);
	});
});

// By definition: a degree is 10 mg of CaO per litre. Molar masses by IUPAC's standard atomic
// weights (Prohaska et al. 2022): Ca 40.078, O 15.999, C 12.011.
describe('units of alkalinity', () => {
	const caO = 40.078 + 15.999;
	const caCO3 = 40.078 + 12.011 + 3 * 15.999;

	it('one meq/L is 2.80387 dKH', () => {
		expect(dkhFromMeqPerL(1)).toBeCloseTo(2.80387, 5);
		expect(dkhFromMeqPerL(1)).toBeCloseTo(caO / 20, 4);
	});

	it.each([
		[1, 0.35665, 17.848, 348.52],
		[6.5, 2.31822, 116.012, 2265.35],
		[7, 2.49655, 124.936, 2439.61],
		[8, 2.8532, 142.784, 2788.12],
		[12, 4.2798, 214.176, 4182.18]
	])('%d dKH is %d meq/L, %d mg/L of CaCO3 and %d µmol/kg', (dkh, meq, ppm, micromol) => {
		expect(meqPerLFromDkh(dkh)).toBeCloseTo(meq, 5);
		expect(ppmCaCO3FromDkh(dkh)).toBeCloseTo(ppm, 3);
		expect(ppmCaCO3FromDkh(dkh)).toBeCloseTo((dkh * 10 * caCO3) / caO, 2);
		expect(molPerKgFromDkh(dkh, at35.densityKgPerL) * 1e6).toBeCloseTo(micromol, 2);
		expect(dkhFromPpmCaCO3(ppm)).toBeCloseTo(dkh, 3);
		expect(dkhFromMolPerKg(micromol / 1e6, at35.densityKgPerL)).toBeCloseTo(dkh, 4);
	});
});
