import { describe, expect, it } from 'vitest';
import {
	colourOfDyes,
	dyeOf,
	dyeShares,
	labFromXyz,
	rgbFromXyz,
	spectrumOfBands,
	type Lab
} from '../../src/lib/chemistry';

/**
 * The mixed indicator at a usual dose: 0.05 mL of 0.1 g bromocresol green and 0.02 g methyl red in
 * 100 mL, into 5 mL, seen through 2 cm.
 */
const dose = [
	{ dyeId: 'bromocresolGreen', molPerL: ((1 / 698.01) * 0.05) / 5.05 },
	{ dyeId: 'methylRed', molPerL: ((0.2 / 269.3) * 0.05) / 5.05 }
];
type Water = 'fresh' | 'sea';

function mixedAt(ph: number, water: Water, dyes = dose) {
	const inLight = dyes.map(({ dyeId, molPerL }) => {
		const dye = dyeOf(dyeId);
		const pK = water === 'sea' ? dye.pKSeawater(35) : dye.pKFresh;
		const shares = dyeShares(
			10 ** -ph,
			pK.map((value) => 10 ** -value)
		);
		return { dyeId, formsMolPerL: shares.map((share) => share * molPerL) };
	});
	const { rgb, xyz } = colourOfDyes(inLight, 2, 'white');
	const hex = [rgb.r, rgb.g, rgb.b]
		.map((channel) =>
			Math.round(channel * 255)
				.toString(16)
				.padStart(2, '0')
		)
		.join('');
	return { lab: labFromXyz(xyz), rgb: rgbFromXyz(xyz), hex };
}

/** Hue counted on past 360, so that rose follows mauve. */
const hueOnward = ({ hueDegrees }: Lab) => (hueDegrees < 150 ? hueDegrees + 360 : hueDegrees);
const between = (value: number, low: number, high: number) => {
	expect(value).toBeGreaterThanOrEqual(low);
	expect(value).toBeLessThanOrEqual(high);
};

// Colours of the mixed indicator in fresh water: table in method 2320 B of Standard Methods for the
// Examination of Water and Wastewater, as quoted at second hand (5.2 greenish blue, 5.0 light blue
// with lavender grey, 4.8 light pink-grey with a bluish cast, 4.6 light pink). Hue angles of the
// words are ours: greenish blue 190 to 250, pink 330 to 35; grey is a chroma of 8 at most.
describe('the mixed indicator in fresh water, by the published colours', () => {
	it('pH 5.2 is greenish blue', () => {
		const { lab } = mixedAt(5.2, 'fresh');
		between(lab.hueDegrees, 190, 250);
		expect(lab.chroma).toBeGreaterThan(6);
	});

	it('pH 5.0 is all but grey, on the blue side', () => {
		const { lab } = mixedAt(5.0, 'fresh');
		expect(lab.chroma).toBeLessThan(8);
		between(lab.hueDegrees, 230, 330);
	});

	it('pH 4.8 is pink-grey', () => {
		const { lab } = mixedAt(4.8, 'fresh');
		between(hueOnward(lab), 330, 380);
		between(lab.chroma, 5, 14);
	});

	it('pH 4.6 is light pink', () => {
		const { lab } = mixedAt(4.6, 'fresh');
		between(hueOnward(lab), 350, 395);
		expect(lab.chroma).toBeGreaterThan(12);
		expect(lab.l).toBeGreaterThan(60);
	});
});

describe('the mixed indicator in seawater', () => {
	// Names of hues by their angle in CIELAB; that seawater takes this way is worked out from the
	// constants of Yao & Byrne 1998, and common practice calls the colours so.
	it('goes teal, blue, violet, mauve, rose', () => {
		const bands: [ph: number, low: number, high: number][] = [
			[8.2, 180, 210],
			[5.1, 235, 265],
			[4.6, 290, 320],
			[4.3, 330, 350],
			[4.0, 360, 380]
		];
		for (const [ph, low, high] of bands) between(hueOnward(mixedAt(ph, 'sea').lab), low, high);
		let last = 0;
		for (let ph = 8.3; ph >= 3.8; ph -= 0.1) {
			const hue = hueOnward(mixedAt(ph, 'sea').lab);
			// Above pH 6.5 the hue stands all but still.
			expect(hue).toBeGreaterThan(last - 0.5);
			last = hue;
		}
	});

	it('never passes through grey, as it does in fresh water', () => {
		const chromas = (water: Water) =>
			Array.from({ length: 46 }, (_, i) => mixedAt(8.3 - i / 10, water).lab.chroma);
		expect(Math.min(...chromas('sea'))).toBeGreaterThan(16);
		expect(Math.min(...chromas('fresh'))).toBeLessThan(5);
	});

	// Bromocresol green turns 0.5 lower (Yao & Byrne 1998 against 4.80 in fresh water), methyl red
	// hardly; the pinks lie between mauve and rose.
	it('reaches its pinks 0.4 to 0.8 pH lower than in fresh water', () => {
		for (const hue of [315, 330, 345, 360, 370, 380])
			between(phOfHue('fresh', hue) - phOfHue('sea', hue), 0.4, 0.8);
	});

	// Worked out beforehand by a separate program from the same bands and constants: these hold the
	// renderer, not the dyes.
	it.each([
		[270, 4.91],
		[315, 4.52],
		[360, 4.12]
	])('hue %d at pH %d', (hue, ph) => {
		expect(Math.abs(phOfHue('sea', hue) - ph)).toBeLessThan(0.006);
	});

	it.each([
		['sea', 8.3, '46bdbd', 197, 34],
		['sea', 5.4, '6aaabb', 223, 21.9],
		['sea', 5.0, '819cb7', 259, 17.2],
		['sea', 4.5, 'a490ab', 318, 17.5],
		['sea', 4.3, 'b58ea5', 341, 19.2],
		['sea', 4.0, 'ce909a', 9, 25.5],
		['fresh', 5.2, '8fa5ad', 229, 8.8],
		['fresh', 5.1, '98a2aa', 249, 5.7],
		['fresh', 5.0, 'a1a0a7', 296, 4],
		['fresh', 4.8, 'b39ca1', 4, 9.4],
		['fresh', 4.6, 'c69a9a', 20, 17.6]
	] as const)('%s, pH %d: #%s, hue %d, chroma %d', (water, ph, hex, hue, chroma) => {
		const found = mixedAt(ph, water);
		const channels = (colour: string) => [0, 2, 4].map((i) => parseInt(colour.slice(i, i + 2), 16));
		channels(hex).forEach((channel, i) =>
			expect(Math.abs(channel - channels(found.hex)[i]!)).toBeLessThanOrEqual(1)
		);
		expect(Math.abs(found.lab.hueDegrees - hue)).toBeLessThan(0.6);
		expect(Math.abs(found.lab.chroma - chroma)).toBeLessThan(0.06);
	});
});

function phOfHue(water: Water, hue: number): number {
	let low = 3.5;
	let high = 6;
	for (let i = 0; i < 40; i++) {
		const middle = (low + high) / 2;
		if (hueOnward(mixedAt(middle, water).lab) > hue) low = middle;
		else high = middle;
	}
	return low;
}

// Yao & Byrne 1998 (Deep-Sea Res. I 45:1383): absorbances at 616 and 444 nm, salinity 35, 25 °C;
// pH = pK + log10((R − e1) / (e2 − e3 R)), e1 0.00131, e2 2.3148, e3 0.1299.
describe('bromocresol green against the absorbance ratio of Yao & Byrne 1998', () => {
	const forms = dyeOf('bromocresolGreen').forms.map((form) => form.bands);
	const epsilonAt = (nm: number, form: number) =>
		forms[form]!.reduce(
			(sum, [epsilon, centre, fwhm]) =>
				sum + epsilon * Math.exp(-4 * Math.LN2 * ((1e7 / nm - 1e7 / centre) / fwhm) ** 2),
			0
		);

	it('e1, e2 and e3 come out of the spectra', () => {
		expect(Math.abs(epsilonAt(616, 0) / epsilonAt(444, 0) - 0.00131)).toBeLessThan(0.00005);
		expect(Math.abs(epsilonAt(616, 1) / epsilonAt(444, 0) - 2.3148)).toBeLessThan(0.005);
		expect(Math.abs(epsilonAt(444, 1) / epsilonAt(444, 0) - 0.1299)).toBeLessThan(0.0005);
	});

	it('the tabulated spectrum is that of the bands', () => {
		const spectrum = spectrumOfBands(forms[1]!);
		expect(spectrum[(615 - 380) / 5]).toBeCloseTo(epsilonAt(615, 1), 6);
	});

	it.each([3.8, 4.2, 4.5, 5.0])('pH %d comes back from the ratio', (ph) => {
		const [pK] = dyeOf('bromocresolGreen').pKSeawater(35);
		const [acid, base] = dyeShares(10 ** -ph, [10 ** -pK!]) as [number, number];
		const absorbance = (nm: number) => acid * epsilonAt(nm, 0) + base * epsilonAt(nm, 1);
		const ratio = absorbance(616) / absorbance(444);
		const found = 4.2855 + Math.log10((ratio - 0.00131) / (2.3148 - 0.1299 * ratio));
		expect(Math.abs(found - ph)).toBeLessThan(0.001);
	});
});

// Nand & Ellwood 2018 (Limnol. Oceanogr. Methods): bromophenol blue at 590 and 436 nm, e2 2.232,
// pK 3.513 at salinity 35.
describe('bromophenol blue against Nand & Ellwood 2018', () => {
	it('has their constant and their ratio of absorptivities', () => {
		const { forms, pKSeawater } = dyeOf('bromophenolBlue');
		expect(pKSeawater(35)[0]).toBeCloseTo(3.513, 6);
		const at = (form: number, nm: number) =>
			spectrumOfBands(forms[form]!.bands)[(nm - 380) / 5] ?? 0;
		// 436 nm lies between two entries of the table. The bands were fitted to measured spectra and
		// meet the ratio within 2 %.
		const acid436 = at(0, 435) + (at(0, 440) - at(0, 435)) / 5;
		expect(Math.abs(at(1, 590) / acid436 / 2.232 - 1)).toBeLessThan(0.02);
	});
});

// Band maxima of methyl red: Zhang et al. 2012 (Acta Phys.-Chim. Sin. 28:1030), 520 ± 15 nm acid
// and 435 ± 20 nm base. Phenolphthalein colours at its last step: Tamura et al. 1996.
describe('other dyes', () => {
	const maximumNm = (dyeId: string, form: number) => {
		const spectrum = spectrumOfBands(dyeOf(dyeId).forms[form]!.bands);
		return 380 + 5 * spectrum.indexOf(Math.max(...spectrum));
	};

	it('methyl red has its maxima where they were measured', () => {
		between(maximumNm('methylRed', 0), 505, 535);
		between(maximumNm('methylRed', 1), 415, 455);
	});

	it('phenolphthalein is colourless but for its last form, which is magenta', () => {
		const colour = (ph: number) =>
			mixedAt(ph, 'fresh', [{ dyeId: 'phenolphthalein', molPerL: 20e-6 }]).lab;
		expect(colour(7).chroma).toBeLessThan(1);
		expect(colour(10.5).chroma).toBeGreaterThan(30);
		between(colour(10.5).hueDegrees, 320, 360);
	});

	// Colours of the forms: any indicator table (pH 3.1 red to 4.4 orange-yellow; 3.0 yellow to 4.6
	// blue-violet; 3.8 yellow to 5.4 blue).
	it.each([
		['methylOrange', 2.5, 0, 60],
		['methylOrange', 5.5, 60, 100],
		['bromophenolBlue', 2.5, 80, 115],
		['bromophenolBlue', 5.5, 250, 310],
		['bromocresolGreen', 3.0, 80, 115],
		['bromocresolGreen', 6.5, 190, 260]
	])('%s at pH %d has a hue from %d to %d', (dyeId, ph, low, high) => {
		const { lab } = mixedAt(ph, 'fresh', [{ dyeId, molPerL: 15e-6 }]);
		between(lab.hueDegrees, low, high);
	});
});
