import type { ChelationVessel } from './chelation-vessel';
import { edtaProtons, protonConstants, sodiumPullOf } from './edta-constants';
import { saturatedMagnesiumMolPerL } from './precipitation';
import { compositionOf, volumeMlOf } from './vessel';

function workOut({ water, constants, edtaMol, sodiumMol }: ChelationVessel) {
	const volumeMl = volumeMlOf(water);
	const litres = volumeMl / 1000;
	const { logKCalcium, logKMagnesium, logKStrontium, saltLowering } = constants.edta;
	return {
		composition: compositionOf(water),
		volumeMl,
		litres,
		edtaMolPerL: edtaMol / litres,
		protonSteps: protonConstants(constants.edta),
		sodiumPull: sodiumPullOf(constants.edta, sodiumMol / litres),
		/** With calcium, magnesium, strontium. */
		edtaK: [logKCalcium, logKMagnesium, logKStrontium].map((logK) => 10 ** (logK - saltLowering))
	};
}

/** What of a vessel changes neither with its pH nor with what of it is solid. */
export type ChelationLiquid = ReturnType<typeof workOut>;

type Remembered = Pick<ChelationVessel, 'water' | 'constants' | 'edtaMol' | 'sodiumMol'> & {
	liquid: ChelationLiquid;
};
let last: Remembered | null = null;

/** The last one is remembered: waiting and looking ask for the same some times in a row. */
export function liquidOf(vessel: ChelationVessel): ChelationLiquid {
	const { water, constants, edtaMol, sodiumMol } = vessel;
	if (
		last?.water === water &&
		last.constants === constants &&
		last.edtaMol === edtaMol &&
		last.sodiumMol === sodiumMol
	)
		return last.liquid;
	const liquid = workOut(vessel);
	last = { water, constants, edtaMol, sodiumMol, liquid };
	return liquid;
}

/** EDTA at a pH as a ligand of calcium, magnesium and strontium, and the protons on what of it is free. */
export function edtaLigand(liquid: ChelationLiquid, ph: number) {
	const { sideReactions, meanProtons, meanSquares } = edtaProtons(
		10 ** -ph,
		liquid.protonSteps,
		liquid.sodiumPull
	);
	const k = liquid.edtaK.map((constant) => constant / sideReactions);
	return { meanProtons, meanSquares, ligand: { totalMolPerL: liquid.edtaMolPerL, k } };
}

/** Free magnesium beside its hydroxide at a pH, mol/L. */
export const saturatedMolPerL = (liquid: ChelationLiquid, vessel: ChelationVessel, ph: number) =>
	saturatedMagnesiumMolPerL(ph, liquid.composition.medium.salinity, vessel.constants.hydroxide);
