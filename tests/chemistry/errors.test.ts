import { describe, expect, it } from 'vitest';
import {
	addAcid,
	addAlkalinity,
	addIndicator,
	addWater,
	colourOf,
	dicFromAlkalinityAndPh,
	dkhFromMolPerKg,
	dyeOf,
	fillVessel,
	loseCarbonDioxide,
	molPerKgFromDkh,
	phFromAlkalinityAndDic,
	seawater,
	titrateWithAcid
} from '../../src/lib/chemistry';

const state = { salinity: 35, temperatureC: 25, alkalinityMolPerKg: 0.0024, dicMolPerKg: 0.0021 };
const titration = { ...state, sampleVolumeMl: 5, acidMolPerL: 0.1 };
const sample = { matrix: 'seawater' as const, ...state, volumeMl: 5 };
const vessel = fillVessel(sample);
const nonsense = [NaN, Infinity, -Infinity, -1000, 1e9, undefined, null, '35', {}] as never[];

/** A call, and the fields of its input that must be named when they make no sense. */
const calls: [name: string, call: (input: never) => unknown, good: object, fields: string[]][] = [
	['seawater', seawater, { salinity: 35, temperatureC: 25 }, ['salinity', 'temperatureC']],
	['phFromAlkalinityAndDic', phFromAlkalinityAndDic, state, Object.keys(state)],
	[
		'dicFromAlkalinityAndPh',
		dicFromAlkalinityAndPh,
		{ salinity: 35, temperatureC: 25, alkalinityMolPerKg: 0.0024, ph: 8 },
		['salinity', 'temperatureC', 'alkalinityMolPerKg', 'ph']
	],
	['titrateWithAcid', (input) => titrateWithAcid(input, [0.5]), titration, Object.keys(titration)],
	[
		'fillVessel',
		fillVessel,
		sample,
		['salinity', 'temperatureC', 'alkalinityMolPerKg', 'dicMolPerKg', 'volumeMl']
	],
	[
		'addAcid',
		(input) => addAcid(vessel, input),
		{ volumeMl: 1, molPerL: 0.1 },
		['volumeMl', 'molPerL']
	],
	[
		'addWater',
		(input) => addWater(vessel, input),
		{ volumeMl: 1, alkalinityMolPerL: 0 },
		['volumeMl', 'alkalinityMolPerL']
	],
	[
		'addAlkalinity',
		(input) => addAlkalinity(vessel, input),
		{ alkalinityMol: 2e-6, dicMol: 1e-6 },
		['alkalinityMol', 'dicMol']
	]
];

describe('nonsense', () => {
	for (const [name, call, good, fields] of calls)
		for (const field of fields)
			it(`${name}: ${field} is named`, () => {
				expect(() => call(good as never)).not.toThrow();
				for (const value of nonsense) {
					const bad = { ...good, [field]: value } as never;
					expect(() => call(bad)).toThrow(RangeError);
					expect(() => call(bad)).toThrow(new RegExp(`^${field} must be`));
				}
			});

	it('says what was found and what is allowed', () => {
		expect(() => seawater({ salinity: -3, temperatureC: 25 })).toThrow(
			'salinity must be between 0 and 45; found -3'
		);
	});

	it('a bad addition is named by its place in the list', () => {
		for (const value of nonsense.filter((each) => each !== 1e9))
			expect(() => titrateWithAcid(titration, [0, 0.5, value])).toThrow(/^addedMl\[2\] must be/);
	});

	it('a pH that no amount of carbon can give', () => {
		const input = { salinity: 35, temperatureC: 25, alkalinityMolPerKg: 0.0024 };
		expect(() => dicFromAlkalinityAndPh({ ...input, ph: 12.5 })).toThrow(/^ph must be/);
	});

	it('a share, a dye, a dose, a path, a density', () => {
		for (const value of nonsense) {
			expect(() => loseCarbonDioxide(vessel, value)).toThrow(/^fraction must be/);
			expect(() => colourOf(vessel, value, 'white')).toThrow(/^pathCm must be/);
			expect(() => dkhFromMolPerKg(0.0024, value)).toThrow(/^densityKgPerL must be/);
			expect(() => molPerKgFromDkh(7, value)).toThrow(/^densityKgPerL must be/);
			expect(() =>
				addIndicator(vessel, {
					volumeMl: 0.05,
					dyes: [{ dyeId: 'methylRed', molPerL: value, addedAs: 'salt' }]
				})
			).toThrow(/^molPerL must be/);
		}
		expect(() => dyeOf('beetroot')).toThrow(/^dyeId must be one of bromocresolGreen, .*beetroot/);
		expect(() =>
			addIndicator(vessel, {
				volumeMl: 0.05,
				dyes: [{ dyeId: 'beetroot', molPerL: 0.001, addedAs: 'salt' }]
			})
		).toThrow(/^dyeId must be/);
	});

	it('more carbon taken than there is', () => {
		expect(() =>
			addAlkalinity(vessel, { alkalinityMol: 0, dicMol: -1.01 * vessel.dicMol })
		).toThrow(/^dicMol must be/);
	});
});
