import { ionicStrength, seawaterConstants, type Constants } from './constants';
import { plainWaterConstants } from './plain-water';
import { totalsOf, type Totals } from './totals';

const matrices = ['seawater', 'purified', 'sodiumChloride'] as const;

/**
 * What kind of water a sample is, from which its constants come.
 * - seawater: `salinity` is practical salinity; pH on the total scale.
 * - purified: water without salt but for the alkalinity itself; `salinity` stays 0; pH is −log10 of
 *   the concentration of free hydrogen ion.
 * - sodiumChloride: `salinity` is g of NaCl per kg; pH as for purified water.
 */
export type Matrix = (typeof matrices)[number];

/**
 * The matrix itself, when there is such a one.
 *
 * @throws RangeError naming `matrix` when there is not
 */
export function requireMatrix(matrix: Matrix): Matrix {
	if (!matrices.includes(matrix))
		throw new RangeError(`matrix must be one of ${matrices.join(', ')}; found ${String(matrix)}`);
	return matrix;
}

/** Everything about a solution that depends on salt and temperature alone. */
export type Medium = {
	matrix: Matrix;
	salinity: number;
	temperatureC: number;
	/** mol per kg; that of seawater per kg of water. */
	ionicStrength: number;
	constants: Constants;
	totals: Totals;
	/** What to add to pH to get the scale on which the constants of dyes stand in this medium. */
	dyePhShift: number;
};

const NACL_G_PER_MOL = 58.44;

const noTotals: Totals = {
	borateMolPerKg: 0,
	sulfateMolPerKg: 0,
	fluorideMolPerKg: 0,
	calciumMolPerKg: 0
};

/**
 * Constants and totals of a water.
 *
 * @param saltMolPerKg ionic strength without sea salt or NaCl: of purified water, which is its
 *   alkalinity; it adds to that of sodium chloride and is nothing beside seawater's
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
			ionicStrength: ionicStrength(salinity),
			totals,
			constants: seawaterConstants(salinity, temperatureC, totals.sulfateMolPerKg),
			dyePhShift: 0
		};
	}
	const strength = saltMolPerKg + salinity / NACL_G_PER_MOL;
	return {
		matrix,
		salinity,
		temperatureC,
		ionicStrength: strength,
		totals: noTotals,
		...plainWaterConstants(strength, temperatureC)
	};
}
