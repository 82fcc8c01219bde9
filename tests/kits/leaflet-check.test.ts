import { describe, expect, it } from 'vitest';
import {
	checkLeaflet,
	houseKitOf,
	houseKits,
	leafletEndOf,
	worthOf,
	type Kit,
	type LeafletRemark
} from '../../src/lib/kits';
import { plainKit } from './house';

const syringeKit = houseKitOf('house-syringe');
const tableKit = (
	rows: { at: number; value: number }[],
	column: 'mark' | 'usedMl' | 'leftMl' | 'drops' = 'usedMl'
): Kit => ({ ...plainKit(5, 1), conversion: { kind: 'rows', column, rows } });
const straight = [0, 0.2, 0.4, 0.6, 0.8, 1].map((at) => ({
	at,
	value: Number((15 * at).toFixed(1))
}));
const remark = (kit: Kit, id: LeafletRemark['id']) =>
	checkLeaflet(kit).remarks.find((each) => each.id === id);

describe('what the parts of a leaflet are worth', () => {
	it('by hand, for both samples of the house syringe', () => {
		// 16 dKH per mL at 6 mL; a drop of 0.021 mL, lines of 0.02 mL. At 10 mL six tenths of it.
		const [normal, fine] = worthOf(syringeKit);
		expect(normal?.dropValue).toBeCloseTo(0.336, 6);
		expect(normal?.graduationValue).toBeCloseTo(0.32, 6);
		expect(normal?.fillingValue).toBeCloseTo(15.7, 6);
		expect(fine?.dropValue).toBeCloseTo(0.2016, 6);
		expect(fine?.graduationValue).toBeCloseTo(0.192, 6);
		expect(fine?.fillingValue).toBeCloseTo(9.42, 6);
	});
	it('a dropper has neither lines nor an end', () => {
		const [only] = worthOf(houseKitOf('house-dropper'));
		expect(only).toMatchObject({ graduationValue: null, fillingValue: null });
		expect(only?.dropValue).toBeCloseTo(0.6, 9);
	});
	it('one filling shows no more than the table does', () => {
		expect(leafletEndOf(tableKit(straight.slice(0, 4)))).toBeCloseTo(9, 9);
	});
});

describe('remarks beside a leaflet', () => {
	it('have nothing to warn of in the house kits', () => {
		for (const kit of houseKits)
			expect(checkLeaflet(kit).remarks.filter(({ tone }) => tone === 'warn')).toEqual([]);
	});

	it('say that all rows lie on one line', () => {
		expect(remark(syringeKit, 'line')?.text).toBe('All 11 rows lie on one straight line.');
	});

	it('name the row that does not, what it says, and what the others put there', () => {
		const rows = straight.map((row, i) => (i === 3 ? { ...row, value: 6 } : row));
		// 15 · 0.6 = 9, by hand; 6 is a 9 upside down.
		expect(remark(tableKit(rows), 'rowOff')).toEqual({
			id: 'rowOff',
			about: 'conversion',
			tone: 'warn',
			text: 'Row 4 (mL used 0.6) says 6; the other rows put 9 there.',
			rows: [4]
		});
	});

	it('tell a table that bends, one read from the wrong end, and rows out of order', () => {
		const bent = straight.map(({ at }) => ({ at, value: Number((15 * at * at).toFixed(1)) }));
		expect(remark(tableKit(bent), 'bends')?.tone).toBe('say');
		expect(remark(tableKit(straight, 'leftMl'), 'falling')?.text).toContain('falls');
		const swapped = straight.map((row, i) => (i === 4 ? { ...row, value: 1 } : row));
		expect(remark(tableKit(swapped), 'outOfOrder')).toMatchObject({ rows: [5], tone: 'warn' });
	});

	it('name a row whose mark stands in the table already', () => {
		const kit = tableKit([...straight, { at: 0.4, value: 6 }]);
		expect(remark(kit, 'twice')).toMatchObject({ rows: [7], tone: 'warn' });
	});

	it('say where the table ends before the syringe does', () => {
		expect(remark(tableKit(straight.slice(0, 4)), 'tableEnds')?.text).toBe(
			'The table ends at mL used 0.6, before the syringe does. Beyond, the value goes on as straight as the table.'
		);
		expect(remark(tableKit(straight), 'tableEnds')).toBeUndefined();
	});

	it('warn when no titrant at all would be a value, as with a column or capacity mistaken', () => {
		const shifted = straight.map(({ at, value }) => ({ at, value: value + 5 }));
		expect(remark(tableKit(shifted), 'startValue')?.text).toContain('would mean 5 dKH');
		expect(remark(syringeKit, 'startValue')).toBeUndefined();
	});

	it('warn of a titrant that dilute acid of such kits is not, and say only that', () => {
		// 150 dKH per mL at 5 mL: 150 · 0.35665 · 5 / 1000 = 0.267 mol/L.
		const strong = remark(plainKit(5, 150), 'strength');
		expect(strong?.text).toBe(
			'This implies acid of 0.27 mol/L, which is unusual (0.005 to 0.2): check sample, capacity, unit and values.'
		);
		expect(remark(plainKit(5, 2), 'strength')?.text).toContain('0.0036 mol/L');
		expect(remark(plainKit(5, 15), 'strength')).toBeUndefined();
	});

	it('the strength does not depend on the unit of the leaflet', () => {
		const inMeq: Kit = {
			...plainKit(5, 15 * 0.35665),
			unit: 'meq/L'
		};
		expect(checkLeaflet(inMeq).strengthMolPerL).toBeCloseTo(
			checkLeaflet(plainKit(5, 15)).strengthMolPerL,
			6
		);
		expect(checkLeaflet({ ...inMeq, unit: 'mmol/L' }).strengthMolPerL).toBe(
			checkLeaflet(inMeq).strengthMolPerL
		);
	});

	it('EDTA by hand: mmol/L times sample over titrant, one to one', () => {
		const edta: Kit = { ...plainKit(5, 200), analyte: 'calcium', unit: 'mg/L' };
		// 200 mg/L are 4.99 mmol/L (40.078 g/mol); 4.99 · 5 / 1 = 24.95 mmol in a litre of titrant.
		expect(checkLeaflet(edta).strengthMolPerL).toBeCloseTo(0.02495, 5);
		const together: Kit = { ...plainKit(5, 40), analyte: 'hardness', unit: 'mmol/L' };
		expect(checkLeaflet(together).strengthMolPerL).toBeCloseTo(0.2, 12);
		// 40 mmol/L are 4003 mg/L of CaCO3 (100.0869 g/mol, IUPAC standard atomic weights): the same EDTA.
		expect(
			checkLeaflet({
				...together,
				unit: 'ppm CaCO3',
				conversion: { kind: 'perMl', valuePerMl: 40 * 100.0869, offset: 0 }
			}).strengthMolPerL
		).toBeCloseTo(0.2, 6);
		expect(remark({ ...together, unit: 'ppm CaCO3' }, 'strength')?.text).toMatch(
			/^This implies EDTA of/
		);
	});

	it('a syringe that the leaflet has filled again says how many fillings tanks take', () => {
		const filledAgain = (valuePerMl: number): Kit => {
			const kit = plainKit(5, valuePerMl);
			return {
				...kit,
				analyte: 'calcium',
				unit: 'mg/L',
				delivery: { ...kit.delivery, refilled: true } as Kit['delivery']
			};
		};
		// Tanks have 250 to 600 mg/L of calcium (common practice): at 200 each, 2 to 3 fillings.
		expect(remark(filledAgain(200), 'reach')).toMatchObject({
			tone: 'say',
			text: 'One filling shows 200 mg/L at most; 2 to 3 fillings are needed, and each mark is noted.'
		});
		expect(remark(filledAgain(620), 'reach')).toBeUndefined();
		// Eleven or more hardly: a blank is wrong.
		expect(remark(filledAgain(55), 'reach')?.tone).toBe('warn');
	});

	it('say how far one filling goes, and warn when hardly a tank is so low', () => {
		expect(remark(plainKit(5, 12), 'reach')).toMatchObject({
			tone: 'say',
			text: 'One filling shows 12.0 dKH at most; above that it is filled again on the way.'
		});
		expect(remark(plainKit(5, 3.5), 'reach')?.tone).toBe('warn');
		expect(remark(plainKit(5, 16), 'reach')).toBeUndefined();
	});

	it('warn of a claim finer than one drop', () => {
		const claimed = (statedAccuracy: number): Kit => ({ ...syringeKit, statedAccuracy });
		expect(remark(claimed(0.1), 'accuracy')?.text).toContain(
			'±0.1 dKH is finer than one drop, 0.34'
		);
		// 0.25 is finer than a drop at 6 mL (0.336), not at 10 mL (0.202).
		expect(remark(claimed(0.25), 'accuracy')?.text).toContain('With the larger sample');
		expect(remark(claimed(0.4), 'accuracy')).toBeUndefined();
	});

	it('say that drops out of a syringe rest on the size of its drop', () => {
		const byDrop: Kit = {
			...plainKit(5, 1),
			conversion: { kind: 'perDrop', valuePerDrop: 0.3, offset: 0 }
		};
		expect(remark(byDrop, 'dropsDecide')?.text).toContain('0.02 mL');
		expect(remark(houseKitOf('house-dropper'), 'dropsDecide')).toBeUndefined();
	});
});
