import {
	addAcid,
	addIndicator,
	addWater,
	loseCarbonDioxide,
	volumeMlOf,
	type Vessel
} from './vessel';
import { colourOf } from './vessel-colour';
import type { VialChemistry } from './vial-contents';

/** Alkalinity by acid. Hardness of added water has no part in it. */
export const acidVial: VialChemistry<Vessel> = {
	addWater,
	addReagent(vessel, reagent) {
		if (reagent.kind !== 'base')
			throw new RangeError(`kind must be base in a titration with acid; found ${reagent.kind}`);
		const { volumeMl, hydroxideMolPerL, carbonateMolPerL } = reagent;
		return addWater(vessel, {
			volumeMl,
			alkalinityMolPerL: hydroxideMolPerL + 2 * carbonateMolPerL,
			dicMolPerL: carbonateMolPerL
		});
	},
	addIndicator,
	addTitrant: addAcid,
	settle: (vessel, { carbonDioxideShare }) => loseCarbonDioxide(vessel, carbonDioxideShare),
	colourOf: (vessel, pathCm, lamp, unmixedMolPerKg = 0) =>
		colourOf(vessel, pathCm, lamp, { extraAcidMolPerKg: unmixedMolPerKg }),
	volumeMlOf,
	hazeMolPerL: () => 0,
	hasDye: (vessel) => vessel.dyes.some(({ mol }) => mol > 0),
	mostTitrantMol: (vessel) => Math.max(0, vessel.alkalinityMol)
};
