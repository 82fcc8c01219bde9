import { liquidOf, saturatedMolPerL } from './chelation-liquid';
import { phWith } from './chelation-ph';
import { shareOut } from './chelation-share';
import type { ChelationVessel } from './chelation-vessel';

/** Solid at equilibrium, and how far past its onset the liquid would be without any, in pH. */
export function hydroxideEquilibrium(vessel: ChelationVessel): {
	solidMol: number;
	excessPh: number;
} {
	const liquid = liquidOf(vessel);
	const clearPh = phWith(liquid, vessel, 0);
	const clear = shareOut(liquid, { ...vessel, occludedCalciumMol: 0 }, clearPh, 0);
	const excessPh = Math.log10(clear.freeMagnesium / saturatedMolPerL(liquid, vessel, clearPh)) / 2;
	// Without excess there is none, and no pH to look for.
	if (!(excessPh > 0)) return { solidMol: 0, excessPh };
	const { solid } = shareOut(liquid, vessel, phWith(liquid, vessel, null), null);
	return { solidMol: Math.min(solid * liquid.litres, vessel.magnesiumMol), excessPh };
}
