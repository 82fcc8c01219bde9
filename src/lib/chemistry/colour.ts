import { FIRST_NM, STEP_NM, daylightD65, observerX, observerY, observerZ } from './cie-tables';
import { dyeOf, type Band } from './dyes';
import { lampSpectra, type LampSpectrum } from './lamps';

/** CIE tristimulus values; Y of the light behind an empty vial is 1. */
export type Xyz = { x: number; y: number; z: number };
/** Display colour, gamma-encoded sRGB, each channel 0 to 1. */
export type Rgb = { r: number; g: number; b: number };
/** CIELAB against the white of D65, as lightness, chroma and hue angle too. */
export type Lab = { l: number; a: number; b: number; chroma: number; hueDegrees: number };

const COUNT = observerY.length;

/**
 * Tristimulus values of a spectrum (power at 380 to 780 nm by 5 nm), scaled so that `white` has Y 1.
 * Source: CIE 015, summation at 5 nm, 1931 2° observer.
 */
export function xyzOfSpectrum(power: readonly number[], white: readonly number[] = power): Xyz {
	let x = 0;
	let y = 0;
	let z = 0;
	let whiteY = 0;
	for (let i = 0; i < COUNT; i++) {
		const p = power[i] ?? 0;
		x += p * (observerX[i] ?? 0);
		y += p * (observerY[i] ?? 0);
		z += p * (observerZ[i] ?? 0);
		whiteY += (white[i] ?? 0) * (observerY[i] ?? 0);
	}
	return { x: x / whiteY, y: y / whiteY, z: z / whiteY };
}

/** Decadic molar absorptivity of bands at each wavelength of the tables, L per mol and cm. */
export function spectrumOfBands(bands: readonly Band[]): Float64Array {
	return Float64Array.from({ length: COUNT }, (_, i) => {
		const perCm = 1e7 / (FIRST_NM + i * STEP_NM);
		return bands.reduce(
			(sum, [epsilon, centreNm, fwhm]) =>
				sum + epsilon * Math.exp(-4 * Math.LN2 * ((perCm - 1e7 / centreNm) / fwhm) ** 2),
			0
		);
	});
}

const formSpectra = new Map<string, Float64Array[]>();
function spectraOf(dyeId: string): Float64Array[] {
	let spectra = formSpectra.get(dyeId);
	if (!spectra) {
		spectra = dyeOf(dyeId).forms.map((form) => spectrumOfBands(form.bands));
		formSpectra.set(dyeId, spectra);
	}
	return spectra;
}

// sRGB, IEC 61966-2-1.
function linearFromXyz({ x, y, z }: Xyz): Rgb {
	return {
		r: 3.2406254773 * x - 1.5372079722 * y - 0.4986285987 * z,
		g: -0.9689307147 * x + 1.8757560609 * y + 0.0415175238 * z,
		b: 0.0557101204 * x - 0.2040210506 * y + 1.0569959423 * z
	};
}
const clip = (value: number) => Math.min(1, Math.max(0, value));
const encode = (linear: number) =>
	linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
const decode = (encoded: number) =>
	encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;

/** sRGB of tristimulus values, clipped to what a screen can show. */
export function rgbFromXyz(xyz: Xyz): Rgb {
	const { r, g, b } = linearFromXyz(xyz);
	return { r: encode(clip(r)), g: encode(clip(g)), b: encode(clip(b)) };
}

/** Tristimulus values of a display colour. */
export function xyzFromRgb(rgb: Rgb): Xyz {
	const r = decode(rgb.r);
	const g = decode(rgb.g);
	const b = decode(rgb.b);
	return {
		x: 0.4124 * r + 0.3576 * g + 0.1805 * b,
		y: 0.2126 * r + 0.7152 * g + 0.0722 * b,
		z: 0.0193 * r + 0.1192 * g + 0.9505 * b
	};
}

const D65 = xyzOfSpectrum(daylightD65);

/** CIELAB against D65. Source: CIE 015. */
export function labFromXyz({ x, y, z }: Xyz): Lab {
	const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
	const fx = f(x / D65.x);
	const fy = f(y / D65.y);
	const fz = f(z / D65.z);
	const a = 500 * (fx - fy);
	const b = 200 * (fy - fz);
	return {
		l: 116 * fy - 16,
		a,
		b,
		chroma: Math.hypot(a, b),
		hueDegrees: ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360
	};
}

/** How a lamp's light adds up on the screen: weights per wavelength, the empty vial at full brightness. */
type LampWeights = { x: Float64Array; y: Float64Array; z: Float64Array; toScreen: number };

function weightsOf(lamp: LampSpectrum): LampWeights {
	const power = lampSpectra[lamp];
	let whiteY = 0;
	for (let i = 0; i < COUNT; i++) whiteY += (power[i] ?? 0) * (observerY[i] ?? 0);
	const weigh = (observer: readonly number[]) =>
		Float64Array.from({ length: COUNT }, (_, i) => ((power[i] ?? 0) * (observer[i] ?? 0)) / whiteY);
	const blank = linearFromXyz(xyzOfSpectrum(power));
	return {
		x: weigh(observerX),
		y: weigh(observerY),
		z: weigh(observerZ),
		// A coloured lamp's own light may be brighter in one channel than the screen can be.
		toScreen: lamp === 'white' ? 1 : 1 / Math.max(blank.r, blank.g, blank.b)
	};
}
const lampWeights: Record<LampSpectrum, LampWeights> = {
	white: weightsOf('white'),
	red: weightsOf('red'),
	blue: weightsOf('blue')
};

/** Forms of one dye in the light's way, mol per litre, most protonated first. */
export type DyeInLight = { dyeId: string; formsMolPerL: readonly number[] };

/**
 * Colour of a clear solution in front of a lamp (Beer and Lambert: absorbance is path times the sum
 * of concentration times absorptivity).
 *
 * `xyz` has Y 1 for the lamp itself; `rgb` shows that lamp as bright as the screen can.
 */
export function colourOfDyes(
	dyes: readonly DyeInLight[],
	pathCm: number,
	lamp: LampSpectrum
): { xyz: Xyz; rgb: Rgb } {
	const absorbance = new Float64Array(COUNT);
	for (const { dyeId, formsMolPerL } of dyes) {
		spectraOf(dyeId).forEach((spectrum, form) => {
			const amount = (formsMolPerL[form] ?? 0) * pathCm;
			if (amount === 0) return;
			for (let i = 0; i < COUNT; i++) absorbance[i]! += amount * spectrum[i]!;
		});
	}
	return colourOfAbsorbance(absorbance, lamp);
}

/** Colour of a clear medium of this decadic absorbance at each wavelength of the tables, in front of a lamp. */
export function colourOfAbsorbance(
	absorbance: Float64Array,
	lamp: LampSpectrum
): { xyz: Xyz; rgb: Rgb } {
	const { x: wx, y: wy, z: wz, toScreen } = lampWeights[lamp];
	let x = 0;
	let y = 0;
	let z = 0;
	for (let i = 0; i < COUNT; i++) {
		const transmitted = Math.exp(-Math.LN10 * absorbance[i]!);
		x += transmitted * wx[i]!;
		y += transmitted * wy[i]!;
		z += transmitted * wz[i]!;
	}
	return {
		xyz: { x, y, z },
		rgb: rgbFromXyz({ x: x * toScreen, y: y * toScreen, z: z * toScreen })
	};
}
