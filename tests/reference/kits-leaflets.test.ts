import { describe, expect, it } from 'vitest';
import {
	impliedTitrantStrength,
	valueFromMark,
	type Conversion,
	type Kit
} from '../../src/lib/kits';
import { plainKit } from '../kits/house';

/*
 * One made-up leaflet said in every way that leaflets have, and worked by hand: 5 mL of sample, a
 * syringe of 1 mL, 15 dKH for each mL used and a half of one drop of 0.02 mL taken off, 0.15 dKH.
 */
const used = [0, 0.25, 0.5, 0.75, 1];
const valueOf = (usedMl: number) => Number((15 * usedMl - 0.15).toFixed(2));
const sayingRows = (
	column: 'mark' | 'usedMl' | 'leftMl' | 'drops',
	at: (usedMl: number) => number
): Conversion => ({
	kind: 'rows',
	column,
	rows: used.map((usedMl) => ({ at: at(usedMl), value: valueOf(usedMl) }))
});

const ways: { way: string; scale: 'down' | 'up'; conversion: Conversion }[] = [
	{
		way: 'so much per mL',
		scale: 'down',
		conversion: { kind: 'perMl', valuePerMl: 15, offset: -0.15 }
	},
	{
		way: 'so much per mL',
		scale: 'up',
		conversion: { kind: 'perMl', valuePerMl: 15, offset: -0.15 }
	},
	{
		way: 'so much per drop',
		scale: 'down',
		conversion: { kind: 'perDrop', valuePerDrop: 0.3, offset: -0.15 }
	},
	{ way: 'rows of marks', scale: 'down', conversion: sayingRows('mark', (usedMl) => 1 - usedMl) },
	{ way: 'rows of marks', scale: 'up', conversion: sayingRows('mark', (usedMl) => usedMl) },
	{ way: 'rows of mL used', scale: 'down', conversion: sayingRows('usedMl', (usedMl) => usedMl) },
	{ way: 'rows of mL used', scale: 'up', conversion: sayingRows('usedMl', (usedMl) => usedMl) },
	{
		way: 'rows of mL left',
		scale: 'down',
		conversion: sayingRows('leftMl', (usedMl) => 1 - usedMl)
	},
	{ way: 'rows of mL left', scale: 'up', conversion: sayingRows('leftMl', (usedMl) => 1 - usedMl) },
	{ way: 'rows of drops', scale: 'down', conversion: sayingRows('drops', (usedMl) => 50 * usedMl) }
];

describe.each(ways)('$way, scale running $scale', ({ scale, conversion }) => {
	const kit: Kit = {
		...plainKit(5, 15, scale),
		sample: {
			volumes: [
				{ id: 'normal', name: '5 mL', volumeMl: 5 },
				{ id: 'fine', name: '10 mL', volumeMl: 10 }
			],
			measuredIn: 'syringe'
		},
		conversion
	};
	const numeral = (usedMl: number) => (scale === 'down' ? 1 - usedMl : usedMl);

	it.each([
		// By hand: 15 · 0.62 − 0.15 = 9.15; half of it for twice the sample.
		{ usedMl: 0.62, value: 9.15, fine: 4.575 },
		{ usedMl: 0.25, value: 3.6, fine: 1.8 },
		{ usedMl: 0.04, value: 0.45, fine: 0.225 }
	])('$usedMl mL used are $value dKH, or $fine of twice the sample', ({ usedMl, value, fine }) => {
		const markMl = numeral(usedMl);
		expect(valueFromMark(kit, { markMl }).value).toBeCloseTo(value, 9);
		expect(valueFromMark(kit, { markMl, sampleVolumeMl: 10 }).value).toBeCloseTo(fine, 9);
		expect(valueFromMark(kit, { markMl, sampleVolumeMl: 10 }).valuePerMl).toBeCloseTo(7.5, 9);
	});

	it('begun elsewhere than at the full mark, it is the travel that counts', () => {
		const end = { startMarkMl: numeral(0.2), markMl: numeral(0.82) };
		expect(valueFromMark(kit, end).value).toBeCloseTo(9.15, 9);
	});

	it('refilled once, it is both fillings', () => {
		// 0.9 mL used, 0.7 drawn in again, 0.4 of it used: 1.3 mL, and the seal stands where 0.6 are gone.
		const end = { markMl: numeral(0.6), refilledMl: 0.7 };
		// 15 · 1.3 − 0.15, by hand.
		expect(valueFromMark(kit, end).value).toBeCloseTo(19.35, 9);
	});

	it('implies one and the same titrant', () => {
		// 15 dKH = 5.34975 meq/L for each mL, out of 5 mL: 0.0267487 mmol in that mL.
		expect(impliedTitrantStrength(kit)).toBeCloseTo(0.0267487, 7);
	});
});
