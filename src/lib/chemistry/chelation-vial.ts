import {
	addAmmoniaBuffer,
	addBase,
	addEdta,
	addMetalDye,
	addPlainWater
} from './chelation-additions';
import { chelationColourOf } from './chelation-colour';
import { settlePrecipitate } from './chelation-settle';
import { chelationVolumeMl, type ChelationVessel } from './chelation-vessel';
import type { VialChemistry } from './vial-contents';

/** Calcium and magnesium by EDTA. Carbon dioxide is not followed: next to strong base or buffer it is nothing in minutes. */
export const chelationVial: VialChemistry<ChelationVessel> = {
	addWater: addPlainWater,
	addReagent: (vessel, reagent) =>
		reagent.kind === 'base' ? addBase(vessel, reagent) : addAmmoniaBuffer(vessel, reagent),
	addIndicator: (vessel, { volumeMl, dyes }) =>
		dyes.reduce(
			(dyed, { dyeId, molPerL }) => addMetalDye(dyed, { dyeId, mol: (molPerL * volumeMl) / 1000 }),
			addPlainWater(vessel, { volumeMl })
		),
	addTitrant: addEdta,
	settle: (vessel, { seconds }) => settlePrecipitate(vessel, seconds),
	colourOf: (vessel, pathCm, lamp, unmixedMolPerKg = 0) =>
		chelationColourOf(vessel, pathCm, lamp, { extraEdtaMolPerKg: unmixedMolPerKg }),
	volumeMlOf: chelationVolumeMl,
	hazeMolPerL: (vessel) => (1000 * vessel.solidMagnesiumMol) / chelationVolumeMl(vessel),
	hasDye: (vessel) => vessel.dyes.some(({ mol }) => mol > 0),
	mostTitrantMol: ({ calciumMol, magnesiumMol, strontiumMol }) =>
		calciumMol + magnesiumMol + strontiumMol
};
