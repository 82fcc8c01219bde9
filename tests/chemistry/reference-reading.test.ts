import { describe, expect, it } from 'vitest';
import { endVolumeMl, kindOf } from '../../src/lib/bench';
import {
	acidToEndMl,
	addIndicator,
	densityKgPerL,
	fillVessel,
	molPerKgFromDkh,
	referenceReading,
	type Matrix,
	type ReferenceSolution,
	type Vessel
} from '../../src/lib/chemistry';
import { houseSyringeKit as kit } from '../../src/lib/kits';
import { asContents } from '../bench/house';

const indicator = {
	volumeMl: 0.05,
	dyes: [
		{ dyeId: 'bromocresolGreen', molPerL: 1.433e-3, addedAs: 'salt' as const },
		{ dyeId: 'methylRed', molPerL: 0.743e-3, addedAs: 'salt' as const }
	]
};

function vialOf(matrix: Matrix, alkalinityDkh: number): Vessel {
	const salinity = matrix === 'purified' ? 0 : 35;
	const alkalinityMolPerKg = molPerKgFromDkh(alkalinityDkh, densityKgPerL(salinity, 25));
	return addIndicator(
		fillVessel({
			matrix,
			salinity,
			temperatureC: 25,
			alkalinityMolPerKg,
			dicMolPerKg: 0.9 * alkalinityMolPerKg,
			volumeMl: 5
		}),
		indicator
	);
}

describe('acid to an end colour', () => {
	it('is that of the practice bench, for every water, hue and loss', () => {
		for (const matrix of ['seawater', 'purified', 'sodiumChloride'] as const)
			for (const hue of [300, 320, 340, 365])
				for (const kept of [1, 0.5]) {
					const vial = vialOf(matrix, 8);
					const own = acidToEndMl(vial, kept, 0.1, { hueDegrees: hue });
					const turning = { ...kit, endPoint: { ...kit.endPoint, hueDegrees: hue } };
					const lost = kindOf(kit).withPassed(asContents(vial), { carbonKept: kept });
					const bench = endVolumeMl(turning, lost, 0.1);
					// Both halve until they are within 1e-5 mL.
					expect(Math.abs(own! - bench!)).toBeLessThan(1.1e-5);
				}
	});

	it('is none where there is no dye, or the colour never comes', () => {
		const clear = { ...vialOf('seawater', 8), dyes: [] };
		expect(acidToEndMl(clear, 1, 0.1, { hueDegrees: 340 })).toBeNull();
		expect(acidToEndMl(clear, 1, 0.1, { ph: 4.5 })).not.toBeNull();
		expect(acidToEndMl(vialOf('seawater', 8), 1, 0.1, { hueDegrees: 479 })).toBeNull();
	});
});

const of = (solution: Partial<ReferenceSolution>, test = {}) =>
	referenceReading({ alkalinityDkh: 8, matrix: 'purified', ...solution }, test);
const atHue = (hueDegrees: number, lost: number | null = null) => ({
	end: { hueDegrees, halfWidthDegrees: 0 },
	...(lost !== null && { carbonLost: { low: lost, high: lost } })
});

// That a reference in plain water reads low by colour, in NaCl hardly, and carbonate above bicarbonate,
// with these sizes, was worked out beforehand by a separate program; no table of it is published.
describe('a known solution read by a test that is right in seawater', () => {
	it.each([320, 330, 340, 350])('bicarbonate in purified water, hue %d: 0.1 to 0.3 low', (hue) => {
		for (const lost of [0, 0.3, 0.6]) {
			const { differenceDkh } = of({}, atHue(hue, lost));
			expect(differenceDkh).toBeLessThan(-0.08);
			expect(differenceDkh).toBeGreaterThan(-0.3);
		}
	});

	it('made in 35 g/L of NaCl: within 0.06', () => {
		for (const hue of [320, 350])
			expect(Math.abs(of({ matrix: 'sodiumChloride' }, atHue(hue)).differenceDkh)).toBeLessThan(
				0.06
			);
	});

	it('carbonate reads about 0.1 above bicarbonate in a closed vial', () => {
		for (const hue of [325, 350]) {
			const test = atHue(hue, 0);
			const above =
				of({ madeWith: 'carbonate' }, test).differenceDkh -
				of({ madeWith: 'bicarbonate' }, test).differenceDkh;
			expect(above).toBeGreaterThan(0.05);
			expect(above).toBeLessThan(0.2);
		}
	});

	it('by a meter to pH 4.5 in a closed vial the sign is the other way', () => {
		const { differenceDkh } = of({}, { end: { meterPh: 4.5 }, carbonLost: { low: 0, high: 0 } });
		expect(differenceDkh).toBeGreaterThan(0);
		expect(differenceDkh).toBeLessThan(0.25);
	});

	it('ordinary seawater reads as what it is, and other salinities within 0.01', () => {
		expect(of({ matrix: 'seawater' }).differenceDkh).toBeCloseTo(0, 9);
		for (const salinity of [25, 30, 40])
			expect(Math.abs(of({ matrix: 'seawater', salinity }).differenceDkh)).toBeLessThan(0.01);
	});

	it('the effect grows with alkalinity, and stays far below that of a weak acid', () => {
		const found = [4, 8, 12].map((alkalinityDkh) => of({ alkalinityDkh }).differenceDkh);
		expect(found[1]).toBeLessThan(found[0]!);
		expect(found[2]).toBeLessThan(found[1]!);
		expect(found[2]! / 12).toBeGreaterThan(-0.04);
	});

	it('its uncertainty holds what people do at random, in two of three cases and more', () => {
		const { differenceDkh, standardUncertaintyDkh: u, causes } = of({});
		expect(u).toBeCloseTo(Math.hypot(causes.carbonDioxide, causes.endPoint, causes.dyes), 12);
		const cases = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6].flatMap((lost) =>
			[320, 325, 330, 335, 340, 345, 350].map((hue) => of({}, atHue(hue, lost)).differenceDkh)
		);
		const within = (times: number) =>
			cases.filter((each) => Math.abs(each - differenceDkh) <= times * u).length / cases.length;
		expect(within(1)).toBeGreaterThan(0.66);
		expect(within(2)).toBe(1);
	});

	it('says what the kit should show', () => {
		const { expectedDkh, differenceDkh, cases } = of({});
		expect(expectedDkh).toBe(8 + differenceDkh);
		expect(cases).toHaveLength(4);
	});

	it.each<[string, Partial<ReferenceSolution>, object]>([
		['alkalinityDkh', { alkalinityDkh: 0 }, {}],
		['salinity', { salinity: 60 }, {}],
		['temperatureC', { temperatureC: -1 }, {}],
		['sampleVolumeMl', {}, { sampleVolumeMl: 0 }],
		['carbonLost.high', {}, { carbonLost: { low: 0.5, high: 0.2 } }],
		['end.meterPh', {}, { end: { meterPh: 9 } }],
		['end must be one', {}, atHue(475)]
	])('refuses by name: %s', (name, solution, test) => {
		expect(() => of(solution, test)).toThrow(RangeError);
		expect(() => of(solution, test)).toThrow(name);
	});
});
