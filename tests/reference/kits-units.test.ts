import { describe, expect, it, test } from 'vitest';
import {
	analyteUnits,
	convertValue,
	impliedTitrantStrength,
	valueFromMark,
	type Kit
} from '../../src/lib/kits';
import { plainKit } from '../kits/house';

const trap = (name: string): number => {
	const found = analyteUnits.alkalinity.traps.find((unit) => unit.name === name);
	return found?.size ?? Number.NaN;
};
const dkh = convertValue(1, 'dKH', 'meq/L');

// Factors between hardness degrees as tables of water analysis print them (from memory):
// 1 °dH = 0.1783 mmol/L = 17.85 mg/L CaCO3 = 1.25 °e = 1.78 °fH. Compared to half of the last digit.
describe('one German degree', () => {
	test.each([
		['ppm CaCO3', convertValue(1, 'dKH', 'ppm CaCO3'), 17.85, 2],
		['mmol/L of CaCO3', dkh / trap('mmol/L CaCO₃'), 0.1783, 4],
		['English degrees', dkh / trap('English degrees'), 1.25, 2],
		['French degrees', dkh / trap('French degrees'), 1.78, 2]
	])('in %s', (_unit, found, printed, decimals) => {
		expect(Math.abs(found - printed)).toBeLessThanOrEqual(0.5 * 10 ** -decimals);
	});
});

// Source: water supply of Brussels (Vivaqua), page on the composition of its water: 1 °fH = 0.56 °dH =
// 0.1 mmol/L or 0.2 meq/L of calcium carbonate.
it('one French degree is 0.56 dKH and 0.2 meq/L', () => {
	expect(Math.abs(trap('French degrees') / dkh - 0.56)).toBeLessThanOrEqual(0.005);
	expect(Math.abs(trap('French degrees') - 0.2)).toBeLessThan(0.0005);
	expect(Math.abs(trap('French degrees') / trap('mmol/L CaCO₃') - 0.1)).toBeLessThan(0.0005);
});

// Source: Standard Methods for the Examination of Water and Wastewater, 2320 B: 50 000 mg CaCO3 per
// equivalent, that is 50 mg per meq; a rounding of 50.04.
it('one meq/L is 50 ppm CaCO3, as Standard Methods rounds it', () => {
	expect(Math.abs(convertValue(1, 'meq/L', 'ppm CaCO3') - 50)).toBeLessThan(0.05);
	expect(convertValue(1, 'meq/L', 'ppm CaCO3')).toBeCloseTo(100.0869 / 2, 4);
});

// Source: USGS National Field Manual 6.6.2 (after Fishman and Friedman 1989): 1.00 mL of 0.01639 N
// acid takes up 1.00 mg of bicarbonate.
it('0.01639 meq is 1.00 mg of bicarbonate, the trap of 1.22 to CaCO3', () => {
	expect(Math.abs(0.01639 / trap('mg/L HCO₃') - 1)).toBeLessThan(0.005);
	const perPpm = convertValue(1, 'ppm CaCO3', 'meq/L') / trap('mg/L HCO₃');
	// 2 · 61.017 / 100.087 = 1.2193, by hand.
	expect(perPpm).toBeCloseTo(1.2193, 4);
});

// Source: density of seawater at salinity 35 and 25 °C, 1023.343 kg/m³ (check value of UNESCO
// technical papers in marine science 44, 1983: γ(35, 25 °C, 0) = 1023.343).
it('one mmol/kg of seawater is 1.0233 meq/L', () => {
	expect(trap('mmol/kg')).toBeCloseTo(1.023343, 5);
	expect(trap('µmol/kg') * 1000).toBeCloseTo(trap('mmol/kg'), 12);
});

/** A bench burette of 50 mL as a leaflet in meq/L: what the titration itself makes of each mL. */
const buretteOf = (acidMolPerL: number, sampleMl: number): Kit => ({
	...plainKit(sampleMl, (acidMolPerL * 1000) / sampleMl),
	unit: 'meq/L',
	delivery: {
		by: 'burette',
		capacityMl: 50,
		graduationMl: 0.1,
		numeralEveryMl: 1,
		dropMl: 0.05
	}
});

// Source: Harvey, Analytical Chemistry 2.0, example 9.5 (volumes and answers in part from memory):
// 100.0 mL of water take 48.12 mL of 0.02812 mol/L acid to pH 4.5; it holds 315.1 ppm of carbonate
// and 185.0 ppm of bicarbonate. Carbonate 60.009 g/mol counts twice.
it("Harvey's alkalinity by two end points: the total is that of its two parts", () => {
	const kit = buretteOf(0.02812, 100);
	const { value } = valueFromMark(kit, { markMl: 48.12 });
	const parts = (2 * 315.1) / 60.009 + 185 / 61.0168;
	// Half of the last printed digit of each part.
	const rounding = (2 * 0.05) / 60.009 + 0.05 / 61.0168;
	expect(Math.abs(value - parts)).toBeLessThan(rounding);
	expect(convertValue(value, 'meq/L', 'dKH')).toBeCloseTo(37.94, 2);
});

// Source: Standard Methods 2320 B, standardisation of the acid (equation from memory): normality =
// A · B / (53.00 · C), with A g of sodium carbonate in a litre, B mL of it taken, C mL of acid used.
it('the strength implied by a leaflet made on sodium carbonate is that of Standard Methods', () => {
	const [gramsPerL, takenMl, acidMl] = [2.5, 40, 19.1];
	const carbonateMeqPerL = (gramsPerL * 2000) / 105.988;
	const kit: Kit = {
		...buretteOf(1, takenMl),
		conversion: {
			kind: 'rows',
			column: 'usedMl',
			rows: [
				{ at: 0, value: 0 },
				{ at: acidMl, value: carbonateMeqPerL }
			]
		}
	};
	const normality = (gramsPerL * takenMl) / (53 * acidMl);
	// 53.00 is 105.988 over two, rounded.
	expect(Math.abs(impliedTitrantStrength(kit) / normality - 1)).toBeLessThan(0.0005);
});

// Source: Standard Methods 2320 B: 2.5 ± 0.2 g of sodium carbonate in a litre is 'about 0.05 N'.
it('2.3 to 2.7 g of sodium carbonate a litre read 0.043 to 0.051 N', () => {
	for (const [grams, normality] of [
		[2.3, 0.0434],
		[2.5, 0.0472],
		[2.7, 0.0509]
	] as const) {
		// 25 mL of it take this much of a 0.1 mol/L acid.
		const usedMl = (((grams * 2) / 105.988) * 25) / 0.1;
		const { value } = valueFromMark(buretteOf(0.1, 25), { markMl: usedMl });
		expect(Math.abs(value / 1000 - normality)).toBeLessThanOrEqual(0.00005);
	}
});

it('leaflets in four units agree about one titration', () => {
	const inUnit = (unit: Kit['unit']): Kit => ({
		...plainKit(5, convertValue(15, 'dKH', unit)),
		unit
	});
	for (const unit of ['dKH', 'meq/L', 'ppm CaCO3', 'mmol/L'] as const) {
		const { value } = valueFromMark(inUnit(unit), { markMl: 0.38 });
		expect(convertValue(value, unit, 'dKH')).toBeCloseTo(9.3, 9);
	}
});
