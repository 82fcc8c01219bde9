import { seawaterConstants, type Constants } from './constants';
import { plainWaterConstants } from './plain-water';
import { totalsOf, type Totals } from './totals';

/**
 * What kind of water a sample is, from which its constants come.
 * - seawater: `salinity` is practical salinity; pH on the total scale.
 * - purified: water without salt but for the alkalinity itself; `salinity` stays 0; pH is −log10 of
 *   the concentration of free hydrogen ion.
 * - sodiumChloride: `salinity` is g of NaCl per kg; pH as for purified water.
 */
export type Matrix = 'seawater' | 'purified' | 'sodiumChloride';

/** Everything about a solution that depends on salt and temperature alone. */
export type Medium = {
	matrix: Matrix;
	salinity: number;
	temperatureC: number;
	constants: Constants;
	totals: Totals;
	/** Add to pH to get the scale on which `dyePK` of this medium stands. */
	dyePhShift: number;
};

const noTotals: Totals = {
	borateMolPerKg: 0,
	sulfateMolPerKg: 0,
	fluorideMolPerKg: 0,
	calciumMolPerKg: 0
};

/**
 * Constants and totals of a water.
 *
 * @param saltMolPerKg ionic strength of purified water, which is its alkalinity; unused elsewhere
 */
export function mediumOf(
	matrix: Matrix,
	salinity: number,
	temperatureC: number,
	saltMolPerKg: number
): Medium {
	if (matrix === 'seawater') {
		const totals = totalsOf(salinity);
		return {
			matrix,
			salinity,
			temperatureC,
			totals,
			constants: seawaterConstants(salinity, temperatureC, totals.sulfateMolPerKg),
			dyePhShift: 0
		};
	}
	const ionicStrength = saltMolPerKg + salinity / 58.44;
	const { constants, dyePhShift } = plainWaterConstants(ionicStrength, temperatureC);
	return { matrix, salinity, temperatureC, totals: noTotals, constants, dyePhShift };
}
