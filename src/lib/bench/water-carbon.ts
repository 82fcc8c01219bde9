import { densityKgPerL, dicAtAlkalinityAndPh, mediumOf, molPerKgFromDkh } from '../chemistry';
import type { Water } from './world';

/** kg of a water in a litre. */
export const densityOfWater = ({ matrix, salinity, temperatureC }: Water): number =>
	densityKgPerL(matrix === 'purified' ? 0 : salinity, temperatureC);

/** Alkalinity of a water, and the carbon that its pH gives, mol/kg. */
export function carbonOf(water: Water): { alkalinityMolPerKg: number; dicMolPerKg: number } {
	const { matrix, salinity, temperatureC } = water;
	const alkalinityMolPerKg = molPerKgFromDkh(water.alkalinityDkh, densityOfWater(water));
	const medium = mediumOf(
		matrix,
		matrix === 'purified' ? 0 : salinity,
		temperatureC,
		Math.max(Math.abs(alkalinityMolPerKg), 1e-5)
	);
	const dicMolPerKg = Math.max(
		0,
		dicAtAlkalinityAndPh(alkalinityMolPerKg, water.ph, { medium, dyes: [] })
	);
	return { alkalinityMolPerKg, dicMolPerKg };
}
