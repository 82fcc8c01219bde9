import { densityKgPerL, dkhFromMolPerKg, seawater } from '../chemistry';
import type { Scenario } from '../bench';

/** Carbonate alkalinity of a water, dKH: the whole less what borate carries at its pH. */
export function carbonateDkhOf(water: Scenario['truth']['water']): number {
	if (water.matrix !== 'seawater') return water.alkalinityDkh;
	const { salinity, temperatureC } = water;
	const { totals, constants } = seawater({ salinity, temperatureC });
	const borate = (totals.borateMolPerKg * constants.kB) / (constants.kB + 10 ** -water.ph);
	return water.alkalinityDkh - dkhFromMolPerKg(borate, densityKgPerL(salinity, temperatureC));
}
