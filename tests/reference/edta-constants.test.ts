import { describe, expect, it } from 'vitest';
import {
	conditionalDyeLogK,
	conditionalLogK,
	densityKgPerL,
	edtaAlpha,
	edtaOfHarris,
	edtaOfHarvey,
	hydroxideOnsetPh,
	metalsOfSeawater,
	saturatedMagnesiumMolPerL
} from '../../src/lib/chemistry';

describe('EDTA by pH', () => {
	// Worked out by hand from the printed pKa of each set and log K 10.65 and 8.79; shown to these digits.
	it.each([
		[9, 0.0543, 0.0409, 9.39, 9.26, 7.53, 7.4],
		[10, 0.3652, 0.299, 10.21, 10.13, 8.35, 8.27],
		[11, 0.852, 0.81, 10.58, 10.56, 8.72, 8.7],
		[12, 0.983, 0.977, 10.64, 10.64, 8.78, 8.78],
		[13, 0.998, 0.998, 10.65, 10.65, 8.79, 8.79]
	])('pH %d', (ph, harvey, harris, caHarvey, caHarris, mgHarvey, mgHarris) => {
		const alphaDigits = ph <= 10 ? 4 : 3;
		expect(edtaAlpha(ph, edtaOfHarvey)).toBeCloseTo(harvey, alphaDigits);
		expect(edtaAlpha(ph, edtaOfHarris)).toBeCloseTo(harris, alphaDigits);
		expect(conditionalLogK('calcium', ph, edtaOfHarvey)).toBeCloseTo(caHarvey, 2);
		expect(conditionalLogK('calcium', ph, edtaOfHarris)).toBeCloseTo(caHarris, 2);
		expect(conditionalLogK('magnesium', ph, edtaOfHarvey)).toBeCloseTo(mgHarvey, 2);
		expect(conditionalLogK('magnesium', ph, edtaOfHarris)).toBeCloseTo(mgHarris, 2);
	});

	it('agrees with the fractions printed by Harris, Quantitative Chemical Analysis (from memory)', () => {
		expect(edtaAlpha(10)).toBeCloseTo(0.3, 2);
		expect(edtaAlpha(12)).toBeCloseTo(0.98, 2);
	});

	// Estimate, no source: roughly one unit at pH 10, and still above 10^7 for Mg and 10^9 for Ca.
	it('is lowered by the sodium of seawater, not spoiled', () => {
		const lowering =
			conditionalLogK('calcium', 10) - conditionalLogK('calcium', 10, edtaOfHarris, 0.48);
		expect(lowering).toBeGreaterThan(0.7);
		expect(lowering).toBeLessThan(1.3);
		expect(conditionalLogK('magnesium', 10, edtaOfHarris, 0.48)).toBeGreaterThan(7);
		expect(conditionalLogK('calcium', 10, edtaOfHarris, 0.48)).toBeGreaterThan(9);
	});
});

describe('indicators at pH 10', () => {
	// By hand from log K 7.0, 5.4 and 8.05, 6.05 and the steps of the records; textbook values from memory.
	it.each([
		['eriochromeBlackT', 'magnesium', 5.44],
		['eriochromeBlackT', 'calcium', 3.84],
		['calmagite', 'magnesium', 5.69],
		['calmagite', 'calcium', 3.69]
	] as const)('%s turns with %s at pM %d', (dyeId, metal, logK) => {
		expect(conditionalDyeLogK(dyeId, metal, 10)).toBeCloseTo(logK, 2);
	});
});

describe('magnesium hydroxide', () => {
	// Ksp 7.1e-12 (minteq.v4, log K 16.844), without the effect of salt.
	it.each([
		[0.0528, 9.06],
		[0.00528, 9.56]
	])('can form from %d mol/L at pH %d', (magnesium, ph) => {
		expect(hydroxideOnsetPh(magnesium, 0)).toBeCloseTo(ph, 2);
	});
	it.each([
		[12, 7e-8],
		[12.5, 7e-9],
		[13, 7e-10]
	])('leaves at pH %d %d mol/L', (ph, left) => {
		expect(saturatedMagnesiumMolPerL(ph, 0) / left).toBeCloseTo(1, 1);
	});
	// Estimate, no source: turbidity in seawater near pH 9.5 to 10.
	it('forms later in seawater', () => {
		expect(hydroxideOnsetPh(0.054, 35)).toBeGreaterThan(9.36);
		expect(hydroxideOnsetPh(0.054, 35)).toBeLessThan(10);
	});
});

describe('metals of seawater at salinity 35', () => {
	const mmolPerL = (molPerKg: number) => molPerKg * 1000 * densityKgPerL(35, 25);
	it('come to the mmol/L and mg/L of reference seawater (Millero et al. 2008, from memory)', () => {
		const { calciumMolPerKg, magnesiumMolPerKg, strontiumMolPerKg } = metalsOfSeawater;
		expect(mmolPerL(calciumMolPerKg)).toBeCloseTo(10.522, 3);
		expect(mmolPerL(magnesiumMolPerKg)).toBeCloseTo(54.05, 2);
		expect(mmolPerL(strontiumMolPerKg)).toBeCloseTo(0.0928, 4);
		expect(mmolPerL(calciumMolPerKg) * 40.078).toBeCloseTo(421.7, 1);
		expect(mmolPerL(magnesiumMolPerKg) * 24.305).toBeCloseTo(1313.7, 1);
	});
	// A method page of a marine institute: 64.64 mmol/L in all; printed to 0.02 of our 64.66.
	it('add up to what an institute takes for standard seawater', () => {
		const { calciumMolPerKg, magnesiumMolPerKg, strontiumMolPerKg } = metalsOfSeawater;
		const sum = mmolPerL(calciumMolPerKg + magnesiumMolPerKg + strontiumMolPerKg);
		expect(Math.abs(sum - 64.64)).toBeLessThan(0.03);
	});
	// Direct titrations: Ca/Cl 0.02120 ± 0.00004, Mg/Cl 0.06671 ± 0.00014 g per kg for each per mille of
	// chlorinity (Carpenter & Manella 1973, from memory); salinity is 1.80655 times chlorinity.
	it.each([
		['calcium', 0.0212, 40.078, metalsOfSeawater.calciumMolPerKg],
		['magnesium', 0.06671, 24.305, metalsOfSeawater.magnesiumMolPerKg]
	] as const)('%s is within 1 %% of what titrations found', (_, ratio, molarMass, molPerKg) => {
		const titrated = (ratio * (35 / 1.80655)) / molarMass;
		expect(Math.abs(molPerKg / titrated - 1)).toBeLessThan(0.01);
	});
});
