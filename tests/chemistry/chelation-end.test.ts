import { describe, expect, it } from 'vitest';
import {
	addEdta,
	agedBase,
	blueShareOf,
	chelationColourOf,
	chelationEndVolumeMl,
	chelationStateOf,
	edtaSlope,
	preparedVessel,
	titrateWithEdta,
	type EdtaTitration
} from '../../src/lib/chemistry';
import { calcium, strongBase, total } from './chelation-titrations';

// Less than a single ion, 1.7e-24 mol, is nothing.
const near = (found: number, wanted: number, relative: number, floor = 1e-24) =>
	expect(Math.abs(found - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + floor);

describe('on the way to the end', () => {
	it('pCa only rises', () => {
		const volumes = Array.from({ length: 60 }, (_, i) => i * 0.03);
		for (const titration of [calcium, total]) {
			const points = titrateWithEdta(titration, volumes);
			for (let i = 1; i < points.length; i++)
				expect(points[i]!.pCa).toBeGreaterThan(points[i - 1]!.pCa);
		}
	});

	it('scales with the sample', () => {
		const tenfold: EdtaTitration = {
			...total,
			volumeMl: 20,
			water: { volumeMl: 100 },
			ammoniaBuffer: { ...total.ammoniaBuffer!, volumeMl: 10 },
			indicator: { dyeId: 'eriochromeBlackT', mol: 1e-6 }
		};
		near(chelationEndVolumeMl(tenfold)!, 10 * chelationEndVolumeMl(total)!, 1e-5);
	});

	it('turns from red through purple to blue', () => {
		for (const [titration, endMl] of [
			[calcium, chelationEndVolumeMl(calcium)!],
			[total, chelationEndVolumeMl(total)!]
		] as const) {
			const [before, after] = titrateWithEdta(titration, [0.5 * endMl, 1.03 * endMl]);
			const red = before!.colour.lab.hueDegrees;
			expect(red > 320 || red < 20).toBe(true);
			expect(after!.colour.lab.hueDegrees).toBeGreaterThan(200);
			expect(after!.colour.lab.hueDegrees).toBeLessThan(275);
			expect(chelationEndVolumeMl(titration, 0.5)!).toBeLessThan(endMl);
		}
	});

	it('needs next to nothing for a blank, and something for hard water', () => {
		const blank: EdtaTitration = {
			...total,
			matrix: 'purified',
			salinity: 0
		};
		expect(chelationEndVolumeMl(blank)).toBe(0);
		const hard = { ...blank, water: { volumeMl: 10, magnesiumMolPerL: 0.001 } };
		near(chelationEndVolumeMl(hard)!, 0.2, 0.03);
	});

	it('is the first blue on the way, also with base short', () => {
		const short = { ...calcium, base: { volumeMl: 0.2, ...strongBase } };
		const endMl = chelationEndVolumeMl(short)!;
		const volumes = Array.from({ length: 100 }, (_, i) => (i + 1) * 0.05);
		const shares = titrateWithEdta(short, volumes).map(({ dyes }) => blueShareOf(dyes)!);
		const first = shares.findIndex((share) => share >= 0.8);
		expect(endMl).toBeGreaterThan(volumes[first]! - 0.051);
		expect(endMl).toBeLessThanOrEqual(volumes[first]!);
	});

	it('never comes when copper or iron has the dye', () => {
		expect(chelationEndVolumeMl({ ...total, blockingMolPerKg: 1e-4 })).toBeNull();
		const vessel = preparedVessel({ ...total, blockingMolPerKg: 1e-4 });
		const flooded = addEdta(vessel, { volumeMl: 10, molPerL: 0.05 });
		expect(blueShareOf(chelationStateOf(flooded).dyes)).toBe(0);
	});

	it('shows more blue where a drop fell', () => {
		const vessel = addEdta(preparedVessel(total), { volumeMl: 2.5, molPerL: 0.05 });
		const hue = (extraEdtaMolPerKg: number) =>
			chelationColourOf(vessel, 2, 'white', { extraEdtaMolPerKg }).lab.hueDegrees;
		expect(hue(0.01)).toBeLessThan(275);
		expect(hue(0)).toBeGreaterThan(320);
	});
});

describe('base short', () => {
	const fullMl = chelationEndVolumeMl(calcium)!;
	const MG_PER_L_FOR_EACH_ML = (0.05 / 5) * 40078;
	/** By how many mg/L of calcium it reads more; `share` of the hydroxide that the magnesium takes. */
	const excess = (share: number, edtaHydroxidePerMol: number, dyeId = 'hydroxynaphtholBlue') => {
		const magnesiumMol = preparedVessel(calcium).magnesiumMol;
		const base = { volumeMl: 0.6, carbonateMolPerL: 0 };
		const hydroxideMolPerL = (share * 2 * magnesiumMol) / (base.volumeMl / 1000);
		const endMl = chelationEndVolumeMl({
			...calcium,
			base: { ...base, hydroxideMolPerL },
			indicator: { dyeId, mol: 1e-7 },
			edtaHydroxidePerMol
		})!;
		return (endMl - fullMl) * MG_PER_L_FOR_EACH_ML;
	};

	it('does nothing while magnesium and the acid of EDTA have enough', () => {
		expect(Math.abs(excess(1.45, 0))).toBeLessThan(3);
		expect(Math.abs(excess(1.15, 2))).toBeLessThan(3);
	});

	// Common practice, no source: too little or old base reads 20 to 200 mg/L high.
	it.each(['hydroxynaphtholBlue', 'calconcarboxylicAcid'])(
		'of EDTA as tetrasodium salt, %s: 20 to 200 mg/L more from 1.02 to 0.94 of what magnesium takes',
		(dyeId) => {
			expect(excess(1.02, 2, dyeId)).toBeGreaterThan(15);
			expect(excess(1.02, 2, dyeId)).toBeLessThan(60);
			expect(excess(0.94, 2, dyeId)).toBeGreaterThan(140);
			expect(excess(0.94, 2, dyeId)).toBeLessThan(230);
		}
	);

	it('of EDTA as disodium salt: the end runs away, for each mol frees a mol of magnesium', () => {
		expect(excess(1.1, 0)).toBeGreaterThan(1000);
		expect(excess(1.1, 1)).toBeLessThan(200);
	});

	it('by carbon dioxide: the same from half of the hydroxide gone', () => {
		const endWith = (taken: number) =>
			chelationEndVolumeMl({
				...calcium,
				base: { volumeMl: 0.6, ...agedBase(strongBase, taken) },
				edtaHydroxidePerMol: 2
			})!;
		near(endWith(0.4), endWith(0), 0.005);
		const more = (endWith(0.55) - endWith(0)) * MG_PER_L_FOR_EACH_ML;
		expect(more).toBeGreaterThan(20);
		expect(more).toBeLessThan(200);
	});
});

describe('what a mL of EDTA is worth', () => {
	it('is its strength over the sample, where no solid carries calcium down', () => {
		const hardness = edtaSlope(total, 'magnesium')!;
		near(hardness.molPerLPerMl, 0.05 / 2, 0.015);
		near(hardness.mgPerLPerMl, hardness.molPerLPerMl * 24305, 1e-12);
		near(edtaSlope(total, 'calcium')!.molPerLPerMl, 0.05 / 2, 0.005);
	});

	it('is more by what the solid carries down', () => {
		const { molPerLPerMl, offsetMolPerL, endMl } = edtaSlope(calcium, 'calcium')!;
		const vessel = preparedVessel(calcium);
		const open = 1 - vessel.occludedCalciumMol / vessel.calciumMol;
		near(molPerLPerMl * open, 0.05 / 5, 0.002);
		// What is left is strontium, 0.093 mmol/L, and dye.
		expect(-offsetMolPerL).toBeGreaterThan(0.6 * 0.000093);
		expect(-offsetMolPerL).toBeLessThan(1.3 * 0.000093);
		near(endMl, chelationEndVolumeMl(calcium)!, 1e-12);
	});

	it('doubles with strength and halves with the sample', () => {
		const slope = (titration: EdtaTitration) => edtaSlope(titration, 'calcium')!.molPerLPerMl;
		near(slope({ ...calcium, edtaMolPerL: 0.1 }), 2 * slope(calcium), 0.005);
		const small = { ...calcium, volumeMl: 2.5, base: { ...calcium.base!, volumeMl: 0.3 } };
		near(
			slope({ ...small, indicator: { dyeId: 'hydroxynaphtholBlue', mol: 5e-8 } }),
			2 * slope(calcium),
			1e-4
		);
	});

	it('is not known where no end comes, and refused where there is none of the metal', () => {
		expect(edtaSlope({ ...total, blockingMolPerKg: 1e-4 }, 'calcium')).toBeNull();
		expect(() => edtaSlope({ ...calcium, calciumMolPerKg: 0 }, 'calcium')).toThrow(
			'calciumMolPerKg'
		);
		expect(() => edtaSlope(calcium, 'calcium', { step: 0 })).toThrow('step');
	});
});

describe('the example of titrateWithEdta', () => {
	it('says what it prints', () => {
		const points = titrateWithEdta(calcium, [1, 1.5]);
		expect(points[0]!.ph).toBeCloseTo(12.2, 2);
		expect(points[0]!.pCa).toBeCloseTo(3.61, 2);
		expect(points[1]!.ph).toBeCloseTo(12.17, 2);
		expect(points[1]!.pCa).toBeCloseTo(8.32, 2);
	});
});
