import { kelvin } from './constants';
import { requireWithin } from './require-within';
import { dicFromAlkalinityAndPh, seawater, type SeawaterInput } from './seawater';

/**
 * Solubility product of aragonite in seawater at one atmosphere, mol² per kg².
 *
 * Source: Mucci 1983 (Am. J. Sci. 283:780), for 5 to 40 °C and salinity 5 to 44.
 *
 * @throws RangeError naming the field outside its range
 */
export function aragoniteSolubility({ salinity, temperatureC }: SeawaterInput): number {
	requireWithin('salinity', salinity, 5, 44);
	requireWithin('temperatureC', temperatureC, 5, 40);
	const t = kelvin(temperatureC);
	const root = Math.sqrt(salinity);
	const log =
		-171.945 -
		0.077993 * t +
		2903.293 / t +
		71.595 * Math.log10(t) +
		(-0.068393 + 0.0017276 * t + 88.135 / t) * root -
		0.10018 * salinity +
		0.0059415 * salinity * root;
	return 10 ** log;
}

/**
 * Saturation state of aragonite: calcium times carbonate over the solubility product. Above 1 the
 * water could throw it down, and for days or weeks does not.
 *
 * @param input.alkalinityMolPerKg −0.5 to 0.5, total
 * @param input.calciumMolPerKg 0 to 0.1
 * @param input.ph total scale; the carbonate goes with it by a quarter for each tenth
 * @throws RangeError naming the field outside its range, or `ph` when no amount of carbon gives it
 */
export function aragoniteSaturation(
	input: SeawaterInput & { alkalinityMolPerKg: number; calciumMolPerKg: number; ph: number }
): number {
	requireWithin('calciumMolPerKg', input.calciumMolPerKg, 0, 0.1);
	const solubility = aragoniteSolubility(input);
	const { k1, k2 } = seawater(input).constants;
	const h = 10 ** -input.ph;
	const carbonate = (dicFromAlkalinityAndPh(input) * k1 * k2) / (h * h + k1 * h + k1 * k2);
	return (input.calciumMolPerKg * carbonate) / solubility;
}
