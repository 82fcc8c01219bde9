import type { Constants } from './constants';
import { densityKgPerL } from './density';
import { mediumOf } from './matrix';
import { requireWithin } from './require-within';
import { dicAtAlkalinityAndPh, phAtAlkalinity } from './speciation';
import type { Totals } from './totals';

/** Seawater by salinity and temperature at one atmosphere. */
export type SeawaterInput = {
	/** Practical salinity, 0 to 45. */
	salinity: number;
	/** 0 to 40 °C. */
	temperatureC: number;
};

export type Seawater = SeawaterInput & {
	densityKgPerL: number;
	totals: Totals;
	/** mol per kg of seawater; k1, k2, kB, kW on the total scale, kS and kF on the free scale. */
	constants: Constants;
};

function mediumFor({ salinity, temperatureC }: SeawaterInput) {
	requireWithin('salinity', salinity, 0, 45);
	requireWithin('temperatureC', temperatureC, 0, 40);
	return mediumOf('seawater', salinity, temperatureC, 0);
}

/**
 * Density, totals and constants of seawater.
 *
 * @throws RangeError naming the field that lies outside its range
 */
export function seawater(input: SeawaterInput): Seawater {
	const { totals, constants } = mediumFor(input);
	const { salinity, temperatureC } = input;
	return {
		salinity,
		temperatureC,
		densityKgPerL: densityKgPerL(salinity, temperatureC),
		totals,
		constants
	};
}

/**
 * pH (total scale) of seawater from its alkalinity and inorganic carbon.
 *
 * @param input alkalinity −0.5 to 0.5 and carbon 0 to 0.5, mol per kg
 * @throws RangeError naming the field that lies outside its range
 */
export function phFromAlkalinityAndDic(
	input: SeawaterInput & { alkalinityMolPerKg: number; dicMolPerKg: number }
): number {
	requireWithin('alkalinityMolPerKg', input.alkalinityMolPerKg, -0.5, 0.5);
	requireWithin('dicMolPerKg', input.dicMolPerKg, 0, 0.5);
	return phAtAlkalinity(input.alkalinityMolPerKg, {
		medium: mediumFor(input),
		dicMolPerKg: input.dicMolPerKg,
		dyes: []
	});
}

/**
 * Inorganic carbon of seawater, mol per kg, from its alkalinity and pH (total scale).
 *
 * @throws RangeError naming the field outside its range, or `ph` when no amount of carbon gives
 * that pH at that alkalinity
 */
export function dicFromAlkalinityAndPh(
	input: SeawaterInput & { alkalinityMolPerKg: number; ph: number }
): number {
	requireWithin('alkalinityMolPerKg', input.alkalinityMolPerKg, -0.5, 0.5);
	requireWithin('ph', input.ph, 0, 14);
	const dic = dicAtAlkalinityAndPh(input.alkalinityMolPerKg, input.ph, {
		medium: mediumFor(input),
		dyes: []
	});
	// A rounding error of nothing is nothing.
	if (dic < 0 && dic > -1e-12) return 0;
	if (dic < 0)
		throw new RangeError(
			`ph must be one that carbon can give at alkalinity ${input.alkalinityMolPerKg} mol/kg; ${input.ph} would need less than none`
		);
	return dic;
}
