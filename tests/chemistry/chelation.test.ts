import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	addBase,
	addEdta,
	addMetalDye,
	agedBase,
	chelationConstants,
	chelationStateOf,
	fillChelationVessel,
	preparedVessel,
	settlePrecipitate,
	titrateWithEdta,
	type EdtaTitration
} from '../../src/lib/chemistry';

import { calcium, strongBase, total } from './chelation-titrations';

const number = (min: number, max: number) =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
// Less than a single ion, 1.7e-24 mol, is nothing.
const near = (found: number, wanted: number, relative: number, floor = 1e-24) =>
	expect(Math.abs(found - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + floor);

describe('amounts in the vial', () => {
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

	const { edta, hydroxide } = chelationConstants;
	it.each<[string, Partial<EdtaTitration>]>([
		['edtaMolPerL', { edtaMolPerL: NaN }],
		['edtaHydroxidePerMol', { edtaHydroxidePerMol: 3 }],
		['edtaBeforeMl', { edtaBeforeMl: -1 }],
		['waitSeconds', { waitSeconds: -1 }],
		['pathCm', { pathCm: NaN }],
		['water.volumeMl', { water: { volumeMl: -2 } }],
		['water.calciumMolPerL', { water: { volumeMl: 2, calciumMolPerL: 3 } }],
		['base.volumeMl', { base: { ...strongBase, volumeMl: NaN } }],
		['base.hydroxideMolPerL', { base: { volumeMl: 1, hydroxideMolPerL: 20, carbonateMolPerL: 0 } }],
		[
			'ammoniaBuffer.ammoniumMolPerL',
			{ ammoniaBuffer: { volumeMl: 1, ammoniaMolPerL: 5, ammoniumMolPerL: -1 } }
		],
		['indicator.mol', { indicator: { dyeId: 'hydroxynaphtholBlue', mol: -1 } }],
		['indicator.dyeId', { indicator: { dyeId: 'beetroot', mol: 1e-7 } }],
		['indicator.dyeId', { indicator: { mol: 1e-7 } as never }],
		['indicator.molPerL', { indicator: { dyeId: 'hydroxynaphtholBlue', volumeMl: 0.1 } as never }],
		['base.carbonateMolPerL', { base: { volumeMl: 1, hydroxideMolPerL: 2 } as never }],
		['water.volumeMl', { water: { calciumMolPerL: 0.01 } as never }],
		[
			'ammoniaBuffer.ammoniaMolPerL',
			{ ammoniaBuffer: { volumeMl: 1, ammoniumMolPerL: 1 } as never }
		],
		['matrix', { matrix: 'foo' as never }],
		['constants.ammoniumPKa', { constants: { ammoniumPKa: NaN } }],
		['constants.edta.pKa[1]', { constants: { edta: { ...edta, pKa: [1, NaN] } } }],
		['constants.edta.pKa', { constants: { edta: { ...edta, pKa: [] } } }],
		['constants.edta.logKSodium', { constants: { edta: { ...edta, logKSodium: Infinity } } }],
		['constants.edta.logKCalcium', { constants: { edta: {} as typeof edta } }],
		['constants.hydroxide.logK', { constants: { hydroxide: { ...hydroxide, logK: NaN } } }],
		[
			'constants.hydroxide.formingSeconds',
			{ constants: { hydroxide: { ...hydroxide, formingSeconds: 0 } } }
		],
		[
			'constants.dyeLogK.hydroxynaphtholBlue.calcium',
			{ constants: { dyeLogK: { hydroxynaphtholBlue: { calcium: NaN } } } }
		],
		// A constant that nothing would look at.
		['constants.dyeLogK.nobody', { constants: { dyeLogK: { nobody: { calcium: 5 } } } }],
		[
			'constants.dyeLogK.hydroxynaphtholBlue.strontium',
			{ constants: { dyeLogK: { hydroxynaphtholBlue: { strontium: 5 } as never } } }
		],
		['constants.ammonia', { constants: { ammonia: 9 } as never }],
		['constants.edta.logKBarium', { constants: { edta: { ...edta, logKBarium: 7 } as never } }],
		[
			'constants.hydroxide.logKs',
			{ constants: { hydroxide: { ...hydroxide, logKs: 9 } as never } }
		],
		// Something else in the place of a record.
		...['base', 'water', 'ammoniaBuffer', 'indicator', 'constants'].flatMap((field) =>
			[null, 3, 'some', true, [1]].map((wrong): [string, never] => [
				field,
				{ [field]: wrong } as never
			])
		),
		...['edta', 'hydroxide', 'dyeLogK'].flatMap((field) =>
			[undefined, null, 3, [1]].map((wrong): [string, never] => [
				`constants.${field}`,
				{ constants: { [field]: wrong } } as never
			])
		),
		[
			'constants.dyeLogK.hydroxynaphtholBlue',
			{ constants: { dyeLogK: { hydroxynaphtholBlue: null as never } } }
		],
		...(['salinity', 'temperatureC', 'volumeMl', 'edtaMolPerL'] as (keyof EdtaTitration)[]).flatMap(
			(field) =>
				[undefined, null, '5', {}].map((wrong): [string, never] => [
					field,
					{ [field]: wrong } as never
				])
		)
	])('%s is named as it stands in the titration', (field, wrong) => {
		const titrated = () => titrateWithEdta({ ...calcium, ...wrong }, [1]);
		expect(titrated).toThrow(RangeError);
		expect(titrated).toThrow(new RegExp(`^${field.replace(/[[\].]/g, '\\$&')} must .*found`));
	});
});

describe('what is not there at all', () => {
	it.each([undefined, null, 3, [calcium]])('%s for a titration is refused by name', (wrong) => {
		const titrated = () => titrateWithEdta(wrong as never, [1]);
		expect(titrated).toThrow(RangeError);
		expect(titrated).toThrow(/^titration must be an object; found/);
	});
	it.each([undefined, null, 1, '12', {}])('%s for volumes is refused by name', (wrong) => {
		const titrated = () => titrateWithEdta(calcium, wrong as never);
		expect(titrated).toThrow(RangeError);
		expect(titrated).toThrow(/^addedMl must be a list of volumes; found/);
	});
	it('an addition that is undefined is one left out', () => {
		const [left] = titrateWithEdta(calcium, [1]);
		const [undefinedOne] = titrateWithEdta({ ...calcium, water: undefined } as never, [1]);
		expect(undefinedOne).toEqual(left);
	});
});

describe('the strongest base that may be given', () => {
	it('swamps the smallest sample, and the strengths of both its parts are taken', () => {
		const base = { volumeMl: 5, hydroxideMolPerL: 15, carbonateMolPerL: 5 };
		const [point] = titrateWithEdta({ ...calcium, volumeMl: 0.001, base }, [0]);
		expect(point!.ph).toBeGreaterThan(14);
		expect(point!.ph).toBeLessThan(16);
	});
});

describe('the wait that is taken where none is said', () => {
	it('brings magnesium down at a held pH of 10; without a wait it stays', () => {
		const magnesium: EdtaTitration = {
			...{ matrix: 'purified', salinity: 0, temperatureC: 25, volumeMl: 5 },
			...{ magnesiumMolPerKg: 0.05, edtaMolPerL: 0.05, heldPh: 10 }
		};
		const shareAt = (titration: EdtaTitration) =>
			titrateWithEdta(titration, [0])[0]!.precipitatedShare;
		expect(shareAt(magnesium)).toBeGreaterThan(0.7);
		expect(shareAt({ ...magnesium, waitSeconds: 0 })).toBe(0);
	});
});
