import { describe, expect, it } from 'vitest';
import {
	colourDifference,
	colourOfDyes,
	labFromXyz,
	lampSpectra,
	rgbFromXyz,
	xyzFromRgb,
	xyzOfSpectrum,
	type Xyz
} from '../../src/lib/chemistry';
import sharma from './data/ciede2000-pairs.json';

const chromaticity = ({ x, y, z }: Xyz) => ({ x: x / (x + y + z), y: y / (x + y + z) });
const wavelengthsNm = Array.from({ length: 81 }, (_, i) => 380 + 5 * i);

// Chromaticities of the illuminants: CIE 015:2018, printed to five decimals for A and D65.
describe('white points by the 1931 2° observer', () => {
	it('daylight D65: 0.31272, 0.32903', () => {
		const { x, y } = chromaticity(xyzOfSpectrum(lampSpectra.white));
		expect(x).toBeCloseTo(0.31272, 4);
		expect(y).toBeCloseTo(0.32903, 4);
	});

	it('incandescent light A, from the law of Planck: 0.44757, 0.40745', () => {
		// CIE 015: c2 1.435e-2 m K and 2848 K, relative to 100 at 560 nm.
		const term = (nm: number) => Math.exp(1.435e7 / (2848 * nm)) - 1;
		const power = wavelengthsNm.map((nm) => 100 * (560 / nm) ** 5 * (term(560) / term(nm)));
		const { x, y } = chromaticity(xyzOfSpectrum(power));
		expect(x).toBeCloseTo(0.44757, 4);
		expect(y).toBeCloseTo(0.40745, 4);
	});

	it('equal energy E: one third, one third', () => {
		const { x, y } = chromaticity(xyzOfSpectrum(wavelengthsNm.map(() => 1)));
		expect(x).toBeCloseTo(1 / 3, 4);
		expect(y).toBeCloseTo(1 / 3, 4);
	});
});

// CIELAB of the primaries of sRGB (IEC 61966-2-1), to two decimals as commonly printed; the matrix
// of the standard is rounded to four digits.
describe('display colours in CIELAB', () => {
	it.each([
		['red', { r: 1, g: 0, b: 0 }, 53.24, 80.09, 67.2],
		['green', { r: 0, g: 1, b: 0 }, 87.73, -86.18, 83.18],
		['blue', { r: 0, g: 0, b: 1 }, 32.3, 79.19, -107.86],
		['white', { r: 1, g: 1, b: 1 }, 100, 0, 0]
	])('%s', (_name, rgb, l, a, b) => {
		const lab = labFromXyz(xyzFromRgb(rgb));
		expect(Math.abs(lab.l - l)).toBeLessThan(0.02);
		expect(Math.abs(lab.a - a)).toBeLessThan(0.05);
		expect(Math.abs(lab.b - b)).toBeLessThan(0.05);
	});

	it('come back from tristimulus values as they were', () => {
		for (const r of [0, 0.02, 0.3, 1])
			for (const g of [0, 0.04, 0.6, 1])
				for (const b of [0, 0.1, 0.9, 1]) {
					const back = rgbFromXyz(xyzFromRgb({ r, g, b }));
					expect(Math.abs(back.r - r)).toBeLessThan(0.001);
					expect(Math.abs(back.g - g)).toBeLessThan(0.001);
					expect(Math.abs(back.b - b)).toBeLessThan(0.001);
				}
	});

	it('an empty vial in daylight is #ffffff', () => {
		const { rgb, xyz } = colourOfDyes([], 2, 'white');
		expect(xyz.y).toBeCloseTo(1, 12);
		expect([rgb.r, rgb.g, rgb.b].map((channel) => Math.round(channel * 255))).toEqual([
			255, 255, 255
		]);
	});
});

// Sharma, Wu & Dalal 2005 (Color Res. Appl. 30:21), table 1, four decimals.
describe('CIEDE2000 differences', () => {
	it.each(sharma.pairs.map((numbers, i) => ({ pair: i + 1, numbers })))(
		'pair $pair',
		({ numbers }) => {
			const [l1, a1, b1, l2, a2, b2, printed] = numbers as [
				number,
				number,
				number,
				number,
				number,
				number,
				number
			];
			const one = { l: l1, a: a1, b: b1 };
			const other = { l: l2, a: a2, b: b2 };
			expect(Math.abs(colourDifference(one, other) - printed)).toBeLessThan(1e-4);
			expect(Math.abs(colourDifference(other, one) - printed)).toBeLessThan(1e-4);
		}
	);
});
