import * as fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
	analyteUnits,
	convertValue,
	decimalsFor,
	plausibleRange,
	roundedAs,
	unitFor,
	unitName,
	unitOf,
	unitsLikely,
	unitsOfLeaflet,
	unitsOf,
	type Analyte,
	type Unit
} from '../../src/lib/kits';

const anyUnit = fc.constantFrom(...unitsOf('alkalinity'));
const finite = fc.double({ min: -1e6, max: 1e6, noNaN: true });

describe('units', () => {
	it('lists the four that a leaflet may use, the customary one first, each with its meaning', () => {
		expect(unitsOf('alkalinity')).toEqual(['dKH', 'meq/L', 'ppm CaCO3', 'mmol/L']);
		expect(unitName('ppm CaCO3')).toBe('ppm CaCO₃');
		// For alkalinity mmol/L is that of acid taken up.
		expect(unitOf('mmol/L').explanation).toMatch(/acid.*same number as meq\/L/);
		for (const unit of unitsOf('alkalinity'))
			expect(unitOf(unit).explanation.length).toBeGreaterThan(30);
	});

	it('names a unit that an analyte is not measured in', () => {
		expect(() => unitOf('mol/kg' as Unit)).toThrow(
			new RangeError(
				'unit must be one of dKH, meq/L, ppm CaCO3, mmol/L for alkalinity; found mol/kg'
			)
		);
	});

	it('converts there and back to the same value, and through a third unit as well', () => {
		fc.assert(
			fc.property(finite, anyUnit, anyUnit, anyUnit, (value, a, b, c) => {
				const there = convertValue(value, a, b);
				expect(convertValue(there, b, a)).toBeCloseTo(value, 6);
				expect(convertValue(there, b, c)).toBeCloseTo(convertValue(value, a, c), 5);
				expect(convertValue(value, a, a)).toBe(value);
			})
		);
	});

	it('converts there and back for every analyte, in each of its units', () => {
		const measured = fc
			.constantFrom(...(Object.keys(analyteUnits) as Analyte[]))
			.chain((analyte) => {
				const unit = fc.constantFrom(...unitsOf(analyte));
				return fc.record({ analyte: fc.constant(analyte), a: unit, b: unit, c: unit });
			});
		fc.assert(
			fc.property(finite, measured, (value, { analyte, a, b, c }) => {
				const there = convertValue(value, a, b, analyte);
				const size = Math.max(1, Math.abs(value));
				expect(convertValue(there, b, a, analyte) / size).toBeCloseTo(value / size, 9);
				expect(convertValue(there, b, c, analyte) / size).toBeCloseTo(
					convertValue(value, a, c, analyte) / size,
					9
				);
			})
		);
	});

	it('takes the unit that is preferred where the analyte has it, else the customary one', () => {
		expect(unitFor('calcium', 'mmol/L')).toBe('mmol/L');
		expect(unitFor('calcium', 'dKH')).toBe('mg/L');
		expect(unitFor('alkalinity', 'mg/L')).toBe('dKH');
		expect(unitFor('hardness', undefined)).toBe('mmol/L');
	});

	it('converts what the explanations say in round numbers', () => {
		expect(convertValue(1, 'dKH', 'meq/L')).toBeCloseTo(0.357, 3);
		expect(convertValue(1, 'meq/L', 'dKH')).toBeCloseTo(2.8, 2);
		expect(convertValue(1, 'dKH', 'ppm CaCO3')).toBeCloseTo(17.8, 1);
		expect(convertValue(2.5, 'meq/L', 'mmol/L')).toBe(2.5);
	});
});

describe('decimals', () => {
	test.each([
		['dKH', 0.4, 1],
		['dKH', 0.2, 1],
		['dKH', 0.14, 2],
		['dKH', 2.5, 0],
		['meq/L', 0.143, 2],
		['ppm CaCO3', 7.1, 0],
		['ppm CaCO3', 40, 0],
		['dKH', 1e-9, 4]
	] as const)('in %s for ± %f: %i', (unit, uncertainty, decimals) => {
		expect(decimalsFor(unit, uncertainty)).toBe(decimals);
	});
	it('are those of the unit where no uncertainty is known', () => {
		expect(unitsOf('alkalinity').map((unit) => decimalsFor(unit))).toEqual([1, 2, 0, 2]);
		expect(decimalsFor('dKH', Number.NaN)).toBe(1);
	});
	it('go beyond the point where the uncertainty is tens: 1295 ± 91 is told as 1300 ± 90', () => {
		expect([roundedAs(1295, 91), roundedAs(91, 91)]).toEqual([1300, 90]);
		expect([roundedAs(412.8, 19), roundedAs(1295, undefined)]).toEqual([412.8, 1295]);
		fc.assert(
			fc.property(fc.double({ min: 20, max: 5000, noNaN: true }), (u) => {
				expect(Math.abs(roundedAs(u, u) / u - 1)).toBeLessThanOrEqual(0.25 + 1e-9);
			})
		);
	});
	it('never change an uncertainty by more than a quarter of it, and are as few as that allows', () => {
		fc.assert(
			fc.property(fc.double({ min: 0.001, max: 100, noNaN: true }), (uncertainty) => {
				const decimals = decimalsFor('dKH', uncertainty);
				const off = (places: number) => 0.5 * 10 ** -places;
				expect(off(decimals)).toBeLessThanOrEqual(uncertainty / 4 + 1e-9);
				if (decimals > 0) expect(off(decimals - 1)).toBeGreaterThan(uncertainty / 4);
			})
		);
	});
});

describe('a number that looks like another unit', () => {
	const namesFor = (value: number, unit: Unit) => unitsLikely(value, unit).map(({ name }) => name);

	it('2.9 where dKH are asked is told as meq/L, and what it would be', () => {
		const [first] = unitsLikely(2.9, 'dKH');
		expect(first).toMatchObject({
			unit: 'meq/L',
			sentence: '2.9 in meq/L would be 8.1 dKH.'
		});
		expect(first?.value).toBeCloseTo(2.9 / 0.35665, 3);
		// mmol/L is the same number: one candidate, not two.
		expect(namesFor(2.9, 'dKH')).toEqual(['meq/L', 'mmol/kg']);
	});
	it('145 where dKH are asked is ppm CaCO3 or one of its like', () => {
		expect(namesFor(145, 'dKH')).toEqual(['ppm CaCO₃', 'mg/L HCO₃']);
	});
	it('8 where meq/L are asked is dKH first; French and English degrees could be as well', () => {
		expect(namesFor(8, 'meq/L')).toEqual(['dKH', 'English degrees', 'French degrees']);
	});
	it('2350 is a value in µmol/kg, and nothing else', () => {
		expect(namesFor(2350, 'dKH')).toEqual(['µmol/kg']);
		// 2350 µmol/kg · 1.02334 kg/L = 2.405 meq/L = 6.74 dKH, by hand.
		expect(unitsLikely(2350, 'dKH')[0]?.value).toBeCloseTo(6.74, 2);
	});
	it('1.4 may be mmol/L of calcium carbonate, half of meq/L', () => {
		expect(unitsLikely(1.4, 'meq/L').map(({ name, value }) => [name, value])).toContainEqual([
			'mmol/L CaCO₃',
			2.8
		]);
	});
	it('says nothing of a value that can be, nor of one that no unit explains', () => {
		expect(unitsLikely(8, 'dKH')).toEqual([]);
		expect(unitsLikely(2.8, 'meq/L')).toEqual([]);
		expect(unitsLikely(0, 'dKH')).toEqual([]);
		expect(unitsLikely(1e6, 'dKH')).toEqual([]);
		expect(unitsLikely(Number.NaN, 'dKH')).toEqual([]);
	});
	it('with a last value to go by, finds the trap that hides among plausible values', () => {
		// 174 mg/L as HCO3 is 142.7 as CaCO3: both could be a tank.
		expect(unitsLikely(174, 'ppm CaCO3')).toEqual([]);
		const near = unitsLikely(174, 'ppm CaCO3', 'alkalinity', { low: 135, high: 150 });
		expect(near.map(({ name }) => name)).toEqual(['mg/L HCO₃']);
		expect(near[0]?.value).toBeCloseTo(142.7, 1);
	});
	it('every candidate is inside what was asked for, and its unit is not the one asked', () => {
		fc.assert(
			fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), anyUnit, (value, unit) => {
				const { low, high } = plausibleRange(unit);
				for (const likely of unitsLikely(value, unit)) {
					expect(likely.value).toBeGreaterThanOrEqual(low);
					expect(likely.value).toBeLessThanOrEqual(high);
					expect(likely.unit).not.toBe(unit);
				}
			})
		);
	});
	it('a leaflet that goes up to 18 dKH is known by its reach in any unit', () => {
		const of = (highest: number, unit: Unit) =>
			unitsOfLeaflet(highest, unit).map(({ name, value }) => [name, Number(value.toFixed(1))]);
		// 18 dKH · 0.35665 = 6.42 meq/L; · 17.85 = 321 ppm CaCO3; · 21.76 = 392 mg/L HCO3, by hand.
		expect(of(6.42, 'dKH')).toEqual([['meq/L', 18]]);
		expect(of(321.2, 'dKH')).toEqual([
			['ppm CaCO₃', 18],
			['mg/L HCO₃', 14.8]
		]);
		expect(of(391.7, 'dKH')).toContainEqual(['mg/L HCO₃', 18]);
		expect(of(32.12, 'dKH')).toEqual([['French degrees', 18]]);
		expect(of(18, 'meq/L')[0]).toEqual(['dKH', 6.4]);
		expect(of(18, 'ppm CaCO3')).toContainEqual(['dKH', 321.3]);
	});
	it('a leaflet that goes about as far as tanks do says nothing', () => {
		for (const highest of [8, 12, 15, 20, 29]) expect(unitsOfLeaflet(highest, 'dKH')).toEqual([]);
		expect(unitsOfLeaflet(Number.NaN, 'dKH')).toEqual([]);
	});
	it('the traps are not units of a leaflet', () => {
		const names = new Set(unitsOf('alkalinity').map((unit) => unitName(unit)));
		for (const { name } of analyteUnits.alkalinity.traps) expect(names.has(name)).toBe(false);
	});
});
