import { densityKgPerL, requireWithin } from '../chemistry';

/** Of air near the ground, and of the weights that scales are set with, kg per litre (OIML R 111-1). */
const AIR_KG_PER_L = 0.0012;
const WEIGHTS_KG_PER_L = 8.0;

/**
 * Volume of purified water that a scale shows so much of, mL: it floats a little in air, as the
 * weights do by which the scale was set.
 *
 * @param massG as the scale shows it, g; above 0
 * @param temperatureC of the water, 0 to 40 °C
 * @throws RangeError naming the field
 */
export function millilitresOfWater(massG: number, temperatureC: number): number {
	if (!(massG > 0)) throw new RangeError(`massG must be above 0; found ${massG}`);
	requireWithin('temperatureC', temperatureC, 0, 40);
	const water = densityKgPerL(0, temperatureC);
	const buoyancy = (1 - AIR_KG_PER_L / WEIGHTS_KG_PER_L) / (1 - AIR_KG_PER_L / water);
	return (massG / water) * buoyancy;
}
