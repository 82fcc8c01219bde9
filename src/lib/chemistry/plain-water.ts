import { k0Weiss1974, kelvin, type Constants } from './constants';

/**
 * Constants of water that holds no sea salt: bicarbonate or carbonate in purified water, or in a
 * solution of sodium chloride. Concentration constants (mol per kg, free hydrogen ion).
 *
 * Thermodynamic constants: carbonic acid of Harned & Davis 1943 and Harned & Scholes 1941 in the
 * fit of Millero 1979, water of Millero 1995 at zero salinity; coefficients from memory, held by
 * the handbook values at 25 °C (pK1 6.352, pK2 10.329, pKw 13.995; CRC Handbook) in the tests.
 *
 * Activity: the equation of Davies (1962) up to an ionic strength of 0.1; above, what was measured in
 * NaCl of 0.5 and 0.7 mol/kg at 25 °C (see `salted`), reached by straight lines in the square root of
 * ionic strength and carried to other temperatures by the thermodynamic constants. The measured
 * values are per kg of water and are taken per kg of solution as they are: 0.015 in pK.
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
	const falls = fallsAt(ionicStrength);
	return {
		constants: {
			k0: k0Weiss1974(0, temperatureC),
			k1: 10 ** -(pK1 - falls.pK1),
			k2: 10 ** -(pK2 - falls.pK2),
			kW: 10 ** -(pKw - falls.pKW),
			// No boron, sulfate or fluoride: the totals are zero, the constants only have to exist.
			kB: 1e-9,
			kS: 1,
			kF: 1
		},
		// Indicator constants in dilute water are given on the activity scale: pH = p[H] + pγ(H).
		dyePhShift: falls.pGammaH
	};
}

/** By how much the pKs lie under their thermodynamic values, and −log10 of the activity coefficient of hydrogen ion. */
type Falls = { ionicStrength: number; pK1: number; pK2: number; pKW: number; pGammaH: number };

/** −log10 of the activity coefficient of a singly charged ion, after Davies 1962, 25 °C. */
export function daviesPGamma(ionicStrength: number): number {
	const root = Math.sqrt(ionicStrength);
	return 0.509 * (root / (1 + root) - 0.3 * ionicStrength);
}

/** pK1 falls by pγ of H and HCO3, pK2 by pγ of H and CO3 less HCO3, pKw by pγ of H and OH; CO3 counts fourfold. */
function daviesFalls(ionicStrength: number): Falls {
	const pGamma = daviesPGamma(ionicStrength);
	return { ionicStrength, pK1: 2 * pGamma, pK2: 4 * pGamma, pKW: 2 * pGamma, pGammaH: pGamma };
}

const DILUTE = 0.1;
/**
 * In NaCl at 25 °C. pK1 and pK2: Thurmond & Millero 1982 (J. Solution Chem. 11:447), table IV. pKw,
 * which plays no part in a titration with acid, and hydrogen ion as a glass electrode sees it,
 * ±0.03: from memory.
 */
const salted: readonly [Falls, Falls, Falls] = [
	daviesFalls(DILUTE),
	{
		ionicStrength: 0.5,
		pK1: 6.352 - 5.997,
		pK2: 10.329 - 9.58,
		pKW: 13.995 - 13.73,
		pGammaH: 0.13
	},
	{
		ionicStrength: 0.7,
		pK1: 6.352 - 5.984,
		pK2: 10.329 - 9.53,
		pKW: 13.995 - 13.72,
		pGammaH: 0.13
	}
];

function fallsAt(ionicStrength: number): Falls {
	if (ionicStrength <= DILUTE) return daviesFalls(ionicStrength);
	const [dilute, middle, salty] = salted;
	const [from, to] =
		ionicStrength < middle.ionicStrength ? [dilute, middle] : ([middle, salty] as const);
	const root = Math.sqrt(from.ionicStrength);
	const share = (Math.sqrt(ionicStrength) - root) / (Math.sqrt(to.ionicStrength) - root);
	const between = (field: keyof Falls) => from[field] + share * (to[field] - from[field]);
	return {
		ionicStrength,
		pK1: between('pK1'),
		pK2: between('pK2'),
		pKW: between('pKW'),
		pGammaH: between('pGammaH')
	};
}
