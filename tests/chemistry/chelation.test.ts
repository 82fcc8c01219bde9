import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addAmmoniaBuffer,
	addBase,
	addEdta,
	addMetalDye,
	addPlainWater,
	agedBase,
	blueShareOf,
	chelationColourOf,
	chelationEndVolumeMl,
	chelationStateOf,
	fillChelationVessel,
	metalDyeIds,
	preparedVessel,
	settlePrecipitate,
	titrateWithEdta,
	type ChelationVessel,
	type EdtaTitration
} from '../../src/lib/chemistry';

const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
// Less than a single ion, 1.7e-24 mol, is nothing.
const near = (found: number, wanted: number, relative: number, floor = 1e-24) =>
	expect(Math.abs(found - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + floor);

const strongBase = { hydroxideMolPerL: 2, carbonateMolPerL: 0 };
const calcium: EdtaTitration = {
	salinity: 35,
	temperatureC: 25,
	volumeMl: 5,
	edtaMolPerL: 0.05,
	base: { volumeMl: 0.6, ...strongBase },
	indicator: { dyeId: 'hydroxynaphtholBlue', mol: 1e-7 }
};
const total: EdtaTitration = {
	salinity: 35,
	temperatureC: 25,
	volumeMl: 2,
	edtaMolPerL: 0.05,
	water: { volumeMl: 10 },
	ammoniaBuffer: { volumeMl: 1, ammoniaMolPerL: 5, ammoniumMolPerL: 1 },
	indicator: { dyeId: 'eriochromeBlackT', mol: 1e-7 }
};

const deed = fc.oneof(
	number(0, 3).map((volumeMl) => (v: ChelationVessel) => addEdta(v, { volumeMl, molPerL: 0.1 })),
	number(0, 1).map((volumeMl) => (v: ChelationVessel) => addBase(v, { volumeMl, ...strongBase })),
	number(0, 1).map(
		(volumeMl) => (v: ChelationVessel) =>
			addAmmoniaBuffer(v, { volumeMl, ammoniaMolPerL: 5, ammoniumMolPerL: 1 })
	),
	number(0, 9).map(
		(volumeMl) => (v: ChelationVessel) => addPlainWater(v, { volumeMl, calciumMolPerL: 0.001 })
	),
	fc.tuple(fc.constantFrom(...metalDyeIds), number(0, 1e-6)).map(
		([dyeId, mol]) =>
			(v: ChelationVessel) =>
				addMetalDye(v, { dyeId, mol })
	)
);
const wait = number(0, 200).map((s) => (v: ChelationVessel) => settlePrecipitate(v, s));
const sample = fc.record({
	salinity: number(0, 45),
	temperatureC: number(5, 35),
	volumeMl: number(0.5, 100),
	calciumMolPerKg: number(0, 0.05),
	magnesiumMolPerKg: number(0, 0.2),
	strontiumMolPerKg: number(0, 0.001),
	blockingMolPerKg: number(0, 1e-5)
});

describe('amounts in the vial', () => {
	it('are all found again, to 1e-9 of each', () => {
		fc.assert(
			fc.property(sample, fc.array(fc.oneof(deed, wait), { maxLength: 10 }), (water, deeds) => {
				const vessel = deeds.reduce((v, each) => each(v), fillChelationVessel(water));
				const state = chelationStateOf(vessel);
				const { free, withEdta, dyes } = state;
				const litres = state.volumeMl / 1000;
				const dyed = (of: 'calciumMolPerL' | 'magnesiumMolPerL') =>
					dyes.reduce((sum, dye) => sum + dye[of], 0);
				const calciumIn =
					free.calcium + withEdta.calcium + dyed('calciumMolPerL') + state.occludedCalciumMolPerL;
				near(calciumIn * litres, vessel.calciumMol, 1e-9);
				const magnesiumIn =
					free.magnesium +
					withEdta.magnesium +
					dyed('magnesiumMolPerL') +
					state.solidMagnesiumMolPerL;
				near(magnesiumIn * litres, vessel.magnesiumMol, 1e-9);
				near((free.strontium + withEdta.strontium) * litres, vessel.strontiumMol, 1e-9);
				const edtaIn =
					state.edtaFreeMolPerL + withEdta.calcium + withEdta.magnesium + withEdta.strontium;
				near(edtaIn * litres, vessel.edtaMol, 1e-9);
				dyes.forEach((dye, i) => {
					const dyeIn =
						dye.freeMolPerL.reduce((a, b) => a + b, 0) +
						dye.calciumMolPerL +
						dye.magnesiumMolPerL +
						dye.blockedMolPerL +
						dye.adsorbedMolPerL;
					near(dyeIn * litres, vessel.dyes[i]!.mol, 1e-9);
				});
				expect(vessel.solidMagnesiumMol).toBeGreaterThanOrEqual(0);
				expect(vessel.solidMagnesiumMol).toBeLessThanOrEqual(vessel.magnesiumMol);
			}),
			{ numRuns: 150 }
		);
	});

	it('do not depend on the order in which they came', () => {
		fc.assert(
			fc.property(fc.array(deed, { maxLength: 8 }), (deeds) => {
				const start = fillChelationVessel(calcium);
				const there = chelationStateOf(deeds.reduce((v, each) => each(v), start));
				const back = chelationStateOf([...deeds].reverse().reduce((v, each) => each(v), start));
				near(back.ph, there.ph, 0, 1e-7);
				near(back.free.calcium, there.free.calcium, 1e-6);
			}),
			{ numRuns: 50 }
		);
	});

	it('are the same for one addition and for many', () => {
		fc.assert(
			fc.property(number(0, 3), fc.integer({ min: 2, max: 30 }), (volumeMl, parts) => {
				const start = preparedVessel(calcium);
				let many = start;
				for (let i = 0; i < parts; i++)
					many = addEdta(many, { volumeMl: volumeMl / parts, molPerL: 0.05 });
				const once = chelationStateOf(addEdta(start, { volumeMl, molPerL: 0.05 }));
				near(chelationStateOf(many).free.calcium, once.free.calcium, 1e-6);
			}),
			{ numRuns: 30 }
		);
	});
});

describe('waiting', () => {
	it('is the same in one piece and in many', () => {
		fc.assert(
			fc.property(number(0, 2), number(0, 1), number(1, 100), (edtaMl, baseMl, seconds) => {
				const start = addBase(
					addEdta(fillChelationVessel(calcium), { volumeMl: edtaMl, molPerL: 0.05 }),
					{ volumeMl: baseMl, ...strongBase }
				);
				const once = settlePrecipitate(start, seconds);
				let often = start;
				for (let i = 0; i < 20; i++) often = settlePrecipitate(often, seconds / 20);
				near(often.solidMagnesiumMol, once.solidMagnesiumMol, 1e-9, 1e-18);
				near(often.occludedCalciumMol, once.occludedCalciumMol, 1e-9, 1e-18);
			}),
			{ numRuns: 30 }
		);
	});

	it('brings down nearly all magnesium with base enough, and part of it with base short: two of hydroxide for one', () => {
		const solidShare = (volumeMl: number) => {
			const vessel = preparedVessel({
				...calcium,
				base: { volumeMl, ...strongBase },
				waitSeconds: Infinity
			});
			return vessel.solidMagnesiumMol / vessel.magnesiumMol;
		};
		expect(solidShare(0.6)).toBeGreaterThan(0.9999);
		// 0.4 mmol of base less what bicarbonate and borate take (some 0.013 mmol) for 0.270 mmol of magnesium.
		near(solidShare(0.2), (0.4 - 0.013) / 2 / 0.27, 0.03);
	});

	it('carries calcium down, less when diluted or when EDTA holds it already', () => {
		const occluded = (titration: EdtaTitration) => {
			const vessel = preparedVessel(titration);
			return vessel.occludedCalciumMol / vessel.calciumMol;
		};
		// Common practice, no source: 1 to 3 % in undiluted seawater.
		expect(occluded(calcium)).toBeGreaterThan(0.01);
		expect(occluded(calcium)).toBeLessThan(0.03);
		expect(occluded({ ...calcium, water: { volumeMl: 20 } })).toBeLessThan(0.006);
		expect(occluded({ ...calcium, edtaBeforeMl: 0.95 })).toBeLessThan(0.003);
	});

	it('leaves a buffered sample of pH 10 clear for minutes', () => {
		const vessel = settlePrecipitate(preparedVessel(total), 240);
		expect(vessel.solidMagnesiumMol / vessel.magnesiumMol).toBeLessThan(0.01);
	});
});

describe('base and buffer', () => {
	it('reach pH above 12 and about 10', () => {
		const ph = (titration: EdtaTitration) => titrateWithEdta(titration, [0])[0]!.ph;
		expect(ph(calcium)).toBeGreaterThan(12);
		expect(ph(total)).toBeGreaterThan(9.8);
		expect(ph(total)).toBeLessThan(10.2);
	});
	it('lose hydroxide, not alkalinity, to the air', () => {
		const aged = agedBase(strongBase, 0.4);
		expect(aged).toEqual({ hydroxideMolPerL: 1.2, carbonateMolPerL: 0.4 });
		const ph = (base: typeof strongBase) =>
			titrateWithEdta({ ...calcium, base: { volumeMl: 0.6, ...base } }, [0])[0]!.ph;
		expect(ph(aged)).toBeLessThan(ph(strongBase) - 0.1);
	});
	it('a weak buffer gives way to the hydrogen ion that EDTA sets free', () => {
		const falls = (strength: number) => {
			const ammoniaBuffer = {
				volumeMl: 1,
				ammoniaMolPerL: 5 * strength,
				ammoniumMolPerL: strength
			};
			const [first, last] = titrateWithEdta({ ...total, ammoniaBuffer }, [0, 2.5]);
			return first!.ph - last!.ph;
		};
		expect(falls(1)).toBeLessThan(0.2);
		expect(falls(0.1)).toBeGreaterThan(0.5);
	});
});

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

describe('what cannot be', () => {
	it('is refused with field and range', () => {
		expect(() => fillChelationVessel({ ...calcium, calciumMolPerKg: -1 })).toThrow(
			'calciumMolPerKg must be between 0 and 2; found -1'
		);
		expect(() => titrateWithEdta(calcium, [NaN])).toThrow('addedMl[0]');
		expect(() => settlePrecipitate(fillChelationVessel(calcium), -1)).toThrow('seconds');
		expect(() => agedBase(strongBase, 2)).toThrow('carbonDioxideMolPerL');
		expect(() => addMetalDye(fillChelationVessel(calcium), { dyeId: 'x', mol: 0 })).toThrow(
			'dyeId must be one of'
		);
	});
});
