import { edtaLigand, saturatedMolPerL, type ChelationLiquid } from './chelation-liquid';
import type { ChelationVessel } from './chelation-vessel';
import { freeLigands } from './metal-ligands';
import { freeMetals } from './metals-shared';

/**
 * Metals with EDTA at one pH, without dye: protons on EDTA and magnesium that is solid, mol/L, each with
 * its rise for each rise of ln[H+]. `solidMolPerL` null: the amount at equilibrium, all calcium open.
 */
export function shareOut(
	liquid: ChelationLiquid,
	vessel: ChelationVessel,
	ph: number,
	solidMolPerL: number | null
) {
	const { litres } = liquid;
	const { ligand, meanProtons, meanSquares } = edtaLigand(liquid, ph);
	const occluded = solidMolPerL === null ? 0 : vessel.occludedCalciumMol;
	const ceiling = solidMolPerL === null ? saturatedMolPerL(liquid, vessel, ph) : Infinity;
	const magnesium = vessel.magnesiumMol / litres;
	const totals = [
		(vessel.calciumMol - occluded) / litres,
		magnesium - (solidMolPerL ?? 0),
		vessel.strontiumMol / litres
	];
	const system = {
		metalsMolPerL: totals,
		ceilingsMolPerL: [Infinity, ceiling, Infinity],
		ligands: [ligand]
	};
	const free = freeLigands(system);
	const edtaFree = free[0]!;
	const metals = freeMetals(system, free);
	const isSaturated = metals[1] === ceiling;
	let pushed = edtaFree * meanProtons;
	let pull = edtaFree;
	for (let i = 0; i < metals.length; i++) {
		const bound = ligand.k[i]! * metals[i]! * edtaFree;
		if (i === 1 && isSaturated) {
			pull += bound;
			pushed += 2 * bound;
		} else if (bound > 0) pull += bound * (1 - bound / totals[i]!);
	}
	// How ln of free Y4− answers to ln of hydrogen ion: from the balance of EDTA.
	const answer = pull > 0 ? -pushed / pull : 0;
	const magnesiumBound = ligand.k[1]! * metals[1]! * edtaFree;
	return {
		freeMagnesium: metals[1]!,
		protons: edtaFree * meanProtons,
		protonsRise: edtaFree * (meanProtons * answer + meanSquares),
		solid: solidMolPerL ?? Math.max(0, magnesium - metals[1]! - magnesiumBound),
		solidRise: isSaturated ? -2 * metals[1]! - (2 + answer) * magnesiumBound : 0
	};
}
