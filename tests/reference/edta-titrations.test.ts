import { describe, expect, it } from 'vitest';
import {
	chelationConstants,
	chelationEndVolumeMl,
	densityKgPerL,
	edtaOfHarvey,
	magnesiumHydroxide,
	titrateWithEdta,
	type EdtaTitration
} from '../../src/lib/chemistry';

// Concentration per litre as per kg of the sample.
const seawaterKg = densityKgPerL(35, 25);
const plainKg = densityKgPerL(0, 25);
// By definition a dye turns where half of it has changed: pM = log K′ of the dye.
const HALF = 0.5;
// So little dye that it takes no EDTA of its own.
const trace = (dyeId: string) => ({ dyeId, mol: 1e-11 });
const noOcclusion = {
	...chelationConstants,
	hydroxide: { ...magnesiumHydroxide, occlusionLPerMol: 0 }
};

describe('where the colour turns', () => {
	it('sum in 0.500 mL of standard seawater, 64.64 mmol/L, by 30 mmol/L: 1.0773 mL (institute method page)', () => {
		const endMl = chelationEndVolumeMl(
			{
				salinity: 35,
				temperatureC: 25,
				volumeMl: 0.5,
				calciumMolPerKg: 0.01055 / seawaterKg,
				magnesiumMolPerKg: (0.06464 - 0.01055) / seawaterKg,
				strontiumMolPerKg: 0,
				water: { volumeMl: 10 },
				edtaMolPerL: 0.03,
				heldPh: 10,
				indicator: trace('eriochromeBlackT')
			},
			HALF
		);
		// A millilitre by colour lies within 0.2 % of stoichiometry; 0.0022 is that.
		expect(Math.abs(endMl! - 1.0773)).toBeLessThan(0.0022);
	});

	it('magnesium by difference in 2.000 mL of seawater by 0.0500 mol/L: 2.5866 and 0.4246 mL, 54.05 mmol/L', () => {
		const sample = { salinity: 35, temperatureC: 25, volumeMl: 2, edtaMolPerL: 0.05 };
		const sumMl = chelationEndVolumeMl(
			{
				...sample,
				heldPh: 10,
				water: { volumeMl: 20 },
				indicator: trace('eriochromeBlackT')
			},
			HALF
		)!;
		const calciumMl = chelationEndVolumeMl({
			...sample,
			heldPh: 12.5,
			indicator: trace('hydroxynaphtholBlue'),
			constants: noOcclusion
		})!;
		// The colour's own error: 0.2 % of the sum, 1 % of calcium, whose strontium comes last.
		expect(Math.abs(sumMl - 2.5866)).toBeLessThan(0.0052);
		expect(Math.abs(calciumMl - 0.4246)).toBeLessThan(0.0043);
		expect(Math.abs((sumMl - calciumMl) * 25 - 54.05)).toBeLessThan(0.2);
	});

	it('0.05 mol/L of calcium needs 1 mL of 0.05 mol/L for each mL (UK Statutory Instrument 1996/1342)', () => {
		const endMl = chelationEndVolumeMl({
			matrix: 'purified',
			salinity: 0,
			temperatureC: 25,
			volumeMl: 1,
			calciumMolPerKg: 5.004 / 100.087 / plainKg,
			edtaMolPerL: 0.05,
			heldPh: 12.5,
			indicator: trace('hydroxynaphtholBlue')
		});
		expect(Math.abs(endMl! - 1)).toBeLessThan(0.001);
	});

	it('23 mL of 0.1 mol/L for 92.2 mg of calcium (school laboratory page)', () => {
		const endMl = chelationEndVolumeMl({
			matrix: 'purified',
			salinity: 0,
			temperatureC: 25,
			volumeMl: 100,
			calciumMolPerKg: 0.0922 / 40.078 / 0.1 / plainKg,
			edtaMolPerL: 0.1,
			heldPh: 12.5,
			indicator: trace('hydroxynaphtholBlue')
		});
		expect(Math.abs(endMl! - 23)).toBeLessThan(0.05);
	});

	// Harvey, Analytical Chemistry (from memory). Calcium alone turns the total-hardness dye vaguely, so that
	// the calcium of the standard is titrated at high pH; groundwater as nine parts calcium to one magnesium.
	it('standardizing with 0.4071 g CaCO3 in 500.0 mL: 50.00 mL takes 42.63 mL of 0.009541 mol/L', () => {
		const endMl = chelationEndVolumeMl({
			matrix: 'purified',
			salinity: 0,
			temperatureC: 25,
			volumeMl: 50,
			calciumMolPerKg: 0.4071 / 100.087 / 0.5 / plainKg,
			edtaMolPerL: 0.009541,
			heldPh: 12.5,
			indicator: trace('hydroxynaphtholBlue')
		});
		expect(Math.abs(endMl! - 42.63)).toBeLessThan(0.05);
	});
	it('groundwater of 257.8 mg/L as CaCO3: 100.0 mL takes 23.63 mL of 0.0109 mol/L at pH 10', () => {
		const hardness = 0.2578 / 100.087 / plainKg;
		const endMl = chelationEndVolumeMl(
			{
				matrix: 'purified',
				salinity: 0,
				temperatureC: 25,
				volumeMl: 100,
				calciumMolPerKg: hardness * 0.9,
				magnesiumMolPerKg: hardness * 0.1,
				edtaMolPerL: 0.0109,
				heldPh: 10,
				indicator: trace('eriochromeBlackT')
			},
			HALF
		);
		expect(Math.abs(endMl! - 23.63)).toBeLessThan(0.05);
	});
});

describe('calcium beside magnesium by a titrant that magnesium does not bind', () => {
	// EGTA: log K of calcium 10.97 and magnesium 5.2, steps 2.0, 2.66, 8.85, 9.47 (from memory; 25 °C, 0.1 mol/L).
	const egta = {
		...edtaOfHarvey,
		pKa: [2.0, 2.66, 8.85, 9.47],
		logKCalcium: 10.97,
		logKMagnesium: 5.2,
		logKStrontium: 8.5,
		logKSodium: null
	};
	// A method page of a marine institute: 10.55 mmol/L in standard seawater, 0.527 mL; 0.5275 by rule of three.
	it('0.500 mL of standard seawater takes 0.527 mL of 10 mmol/L EGTA', () => {
		const step = 0.0005;
		const volumes = Array.from({ length: 121 }, (_, i) => 0.5 + i * step);
		const points = titrateWithEdta(
			{
				salinity: 35,
				temperatureC: 25,
				volumeMl: 0.5,
				calciumMolPerKg: 0.01055 / seawaterKg,
				magnesiumMolPerKg: (0.06464 - 0.01055) / seawaterKg,
				strontiumMolPerKg: 0,
				water: { volumeMl: 10 },
				edtaMolPerL: 0.01,
				heldPh: 10,
				waitSeconds: 0,
				constants: { edta: egta }
			},
			volumes
		);
		const rises = points.slice(1).map(({ pCa }, i) => pCa - points[i]!.pCa);
		const steepest = rises.indexOf(Math.max(...rises));
		const endMl = volumes[steepest]! + step / 2;
		expect(Math.abs(endMl - 0.5275)).toBeLessThan(0.0008);
	});
});

describe('pM on the way: 50.0 mL of 0.0100 mol/L at pH 10, 0.0100 mol/L EDTA', () => {
	// By hand from K′ 1.63e10 and log K 8.79 with the steps of Harvey's set, no sodium.
	const table = [
		[0, 2.0, 2.0],
		[10, 2.176, 2.176],
		[25, 2.477, 2.477],
		[40, 2.954, 2.954],
		[49, 3.996, 3.995],
		[49.9, 4.998, 4.925],
		[50, 6.257, 5.327],
		[50.1, 7.515, 5.728],
		[51, 8.514, 6.655],
		[60, 9.514, 7.654]
	] as const;
	const titration = (metal: 'calcium' | 'magnesium'): EdtaTitration => ({
		matrix: 'purified',
		salinity: 0,
		temperatureC: 25,
		volumeMl: 50,
		[`${metal}MolPerKg`]: 0.01 / plainKg,
		edtaMolPerL: 0.01,
		heldPh: 10,
		waitSeconds: 0,
		constants: { edta: { ...edtaOfHarvey, logKSodium: null } }
	});
	it.each(table)('%d mL: pCa %d, pMg %d', (addedMl, pCa, pMg) => {
		const [calcium] = titrateWithEdta(titration('calcium'), [addedMl]);
		const [magnesium] = titrateWithEdta(titration('magnesium'), [addedMl]);
		expect(calcium!.pCa).toBeCloseTo(pCa, 2);
		expect(magnesium!.pMg).toBeCloseTo(pMg, 2);
		expect(Math.abs(calcium!.pCa - pCa)).toBeLessThan(0.0012);
		expect(Math.abs(magnesium!.pMg - pMg)).toBeLessThan(0.0012);
	});
});
