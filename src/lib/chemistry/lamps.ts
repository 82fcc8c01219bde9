import { daylightD65, FIRST_NM, STEP_NM } from './cie-tables';

/**
 * Light behind the vial. 'white' is daylight D65. 'red' is a light-emitting diode of 625 nm, 20 nm
 * wide at half height (a common part, no source). 'blue' is an aquarium lamp made up for this
 * project: two bands at 420 and 455 nm over a little white.
 */
export type LampSpectrum = 'white' | 'red' | 'blue';

const wavelengths = daylightD65.map((_, i) => FIRST_NM + i * STEP_NM);
const bell = (nm: number, centre: number, fwhm: number) =>
	Math.exp(-4 * Math.LN2 * ((nm - centre) / fwhm) ** 2);

export const lampSpectra: Record<LampSpectrum, readonly number[]> = {
	white: daylightD65,
	red: wavelengths.map((nm) => 100 * bell(nm, 625, 20)),
	blue: wavelengths.map(
		(nm, i) => 100 * bell(nm, 455, 24) + 60 * bell(nm, 420, 20) + 0.04 * (daylightD65[i] ?? 0)
	)
};
