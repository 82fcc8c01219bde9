import { metalsOfSeawater } from '../chemistry';
import { convertValue } from '../kits';
import { densityOfWater } from './water-carbon';
import type { Water } from './world';

type Metals = { calcium: number; magnesium: number };

/** Calcium and magnesium of a water, mmol/L. */
export function metalsMmolPerL(water: Water): Metals {
	const ofSeawater = (molPerKg: number) =>
		water.matrix === 'seawater'
			? 1000 * molPerKg * (water.salinity / 35) * densityOfWater(water)
			: 0;
	const { calciumMgPerL, magnesiumMgPerL } = water;
	return {
		calcium:
			calciumMgPerL === undefined
				? ofSeawater(metalsOfSeawater.calciumMolPerKg)
				: convertValue(calciumMgPerL, 'mg/L', 'mmol/L', 'calcium'),
		magnesium:
			magnesiumMgPerL === undefined
				? ofSeawater(metalsOfSeawater.magnesiumMolPerKg)
				: convertValue(magnesiumMgPerL, 'mg/L', 'mmol/L', 'magnesium')
	};
}
