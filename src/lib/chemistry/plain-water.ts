import { k0Weiss1974, kelvin, type Constants } from './constants';

/**
 * Constants of water that holds no sea salt: bicarbonate or carbonate in purified water, or in a
 * solution of sodium chloride. Concentration constants (mol per kg, free hydrogen ion).
 *
 * Thermodynamic constants: carbonic acid of Harned & Davis 1943 and Harned & Scholes 1941 in the
 * fit of Millero 1979, water of Millero 1995 at zero salinity; coefficients from memory, held by
 * the handbook values at 25 °C (pK1 6.352, pK2 10.329, pKw 13.995; CRC Handbook) in the tests.
 *
 * Activity: the equation of Davies (1962) up to an ionic strength of 0.1; above, values in NaCl of
 * 0.7 mol/kg at 25 °C (pK1 5.98, pK2 9.52, pKw 13.72; from memory, after Millero and co-workers),
 * reached by a straight line in the square root of ionic strength and carried to other
 * temperatures by the thermodynamic constants.
 */
export function plainWaterConstants(
	ionicStrength: number,
	temperatureC: number
): { constants: Constants; dyePhShift: number } {
	const t = kelvin(temperatureC);
	const lnT = Math.log(t);
	const pK1 = -(290.9097 - 14554.21 / t - 45.0575 * lnT) / Math.LN10;
	const pK2 = -(207.6548 - 11843.79 / t - 33.6485 * lnT) / Math.LN10;
	const pKw = -(148.9802 - 13847.26 / t - 23.6521 * lnT) / Math.LN10;
	const [shift1, shift2, shiftW] = shiftsAt(ionicStrength);
	return {
		constants: {
			k0: k0Weiss1974(0, temperatureC),
			k1: 10 ** -(pK1 - shift1),
			k2: 10 ** -(pK2 - shift2),
			kW: 10 ** -(pKw - shiftW),
			// No boron, sulfate or fluoride: the totals are zero, the constants only have to exist.
			kB: 1e-9,
			kS: 1,
			kF: 1
		},
		// Indicator constants in dilute water are given on the activity scale: pH = p[H] + pγ(H).
		dyePhShift: ionicStrength <= DILUTE ? daviesPGamma(ionicStrength) : HIGH_SALT_PGAMMA_H
	};
}

const DILUTE = 0.1;
/** −log10 of the activity coefficient of hydrogen ion as a glass electrode sees it near 0.6 mol/kg of NaCl; from memory, ±0.03. */
const HIGH_SALT_PGAMMA_H = 0.13;

/** −log10 of the activity coefficient of a singly charged ion, after Davies 1962, 25 °C. */
export function daviesPGamma(ionicStrength: number): number {
	const root = Math.sqrt(ionicStrength);
	return 0.509 * (root / (1 + root) - 0.3 * ionicStrength);
}

/** By how much pK1, pK2 and pKw fall from their thermodynamic values at this ionic strength. */
function shiftsAt(ionicStrength: number): [number, number, number] {
	// pK1 falls by pγ(H) + pγ(HCO3), pK2 by pγ(H) + pγ(CO3) − pγ(HCO3) = 4 pγ, pKw by 2 pγ.
	const davies = (i: number): [number, number, number] => {
		const p = daviesPGamma(i);
		return [2 * p, 4 * p, 2 * p];
	};
	if (ionicStrength <= DILUTE) return davies(ionicStrength);
	const atLow = davies(DILUTE);
	const atHigh: [number, number, number] = [6.352 - 5.98, 10.329 - 9.52, 13.995 - 13.72];
	const share =
		(Math.sqrt(ionicStrength) - Math.sqrt(DILUTE)) / (Math.sqrt(0.7) - Math.sqrt(DILUTE));
	return [
		atLow[0] + share * (atHigh[0] - atLow[0]),
		atLow[1] + share * (atHigh[1] - atLow[1]),
		atLow[2] + share * (atHigh[2] - atLow[2])
	];
}
