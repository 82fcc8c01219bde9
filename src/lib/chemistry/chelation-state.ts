import { edtaLigand, liquidOf } from './chelation-liquid';
import { phWith } from './chelation-ph';
import type { ChelationVessel } from './chelation-vessel';
import { dyeSideReactions, metalDyeOf } from './metal-dyes';
import { freeLigands } from './metal-ligands';
import { freeMetals, type Ligand } from './metals-shared';

/** Calcium, magnesium, strontium: the order of metals in what follows. */
export type PerMetal = { calcium: number; magnesium: number; strontium: number };

export type DyeState = {
	dyeId: string;
	/** H2In−, HIn2−, In3− without a metal, mol/L in solution. */
	freeMolPerL: readonly [number, number, number];
	/** With calcium or magnesium, which EDTA can take, mol/L. */
	calciumMolPerL: number;
	magnesiumMolPerL: number;
	/** With copper or iron, for good, mol/L. */
	blockedMolPerL: number;
	/** On the solid, mol per litre of liquid. */
	adsorbedMolPerL: number;
};

export type ChelationState = {
	ph: number;
	volumeMl: number;
	/** Free ions, mol/L. */
	free: PerMetal;
	/** With EDTA, mol/L. */
	withEdta: PerMetal;
	/** EDTA that holds none of the three, mol/L. */
	edtaFreeMolPerL: number;
	/** Solid magnesium hydroxide and the calcium in it, mol per litre of liquid. */
	solidMagnesiumMolPerL: number;
	occludedCalciumMolPerL: number;
	dyes: readonly DyeState[];
};

/** Everything in the vessel at this moment, with as much solid as there is. */
export function chelationStateOf(vessel: ChelationVessel): ChelationState {
	const liquid = liquidOf(vessel);
	const { litres } = liquid;
	const solidMolPerL = vessel.solidMagnesiumMol / litres;
	const ph = phWith(liquid, vessel, solidMolPerL);
	const h = 10 ** -ph;
	const edta = edtaLigand(liquid, ph).ligand;
	const held = vessel.constants.hydroxide.dyeAdsorptionLPerMol * solidMolPerL;
	const dyeMol = vessel.dyes.reduce((sum, { mol }) => sum + mol, 0);
	const blockedShare = dyeMol > 0 ? Math.min(1, vessel.blockingMol / dyeMol) : 0;
	const dyes = vessel.dyes.map(({ dyeId, mol }) => {
		const dye = metalDyeOf(dyeId);
		const given = vessel.constants.dyeLogK[dyeId];
		const sideReactions = dyeSideReactions(h, dye);
		const totalMolPerL = mol / litres;
		const blocked = totalMolPerL * blockedShare;
		const adsorbed = ((totalMolPerL - blocked) * held) / (1 + held);
		const k = [given?.calcium ?? dye.logKCalcium, given?.magnesium ?? dye.logKMagnesium];
		const ligand: Ligand = {
			totalMolPerL: totalMolPerL - blocked - adsorbed,
			k: [...k.map((logK) => 10 ** logK / sideReactions), 0]
		};
		return { dyeId, dye, sideReactions, blocked, adsorbed, ligand };
	});
	const system = {
		metalsMolPerL: [
			(vessel.calciumMol - vessel.occludedCalciumMol) / litres,
			(vessel.magnesiumMol - vessel.solidMagnesiumMol) / litres,
			vessel.strontiumMol / litres
		],
		ligands: [edta, ...dyes.map(({ ligand }) => ligand)]
	};
	const ligandsFree = freeLigands(system);
	const [calcium = 0, magnesium = 0, strontium = 0] = freeMetals(system, ligandsFree);
	const edtaFreeMolPerL = ligandsFree[0] ?? 0;
	return {
		ph,
		volumeMl: liquid.volumeMl,
		free: { calcium, magnesium, strontium },
		withEdta: {
			calcium: edta.k[0]! * calcium * edtaFreeMolPerL,
			magnesium: edta.k[1]! * magnesium * edtaFreeMolPerL,
			strontium: edta.k[2]! * strontium * edtaFreeMolPerL
		},
		edtaFreeMolPerL,
		solidMagnesiumMolPerL: solidMolPerL,
		occludedCalciumMolPerL: vessel.occludedCalciumMol / litres,
		dyes: dyes.map(({ dyeId, dye, sideReactions, blocked, adsorbed, ligand }, i) => {
			const free = ligandsFree[i + 1] ?? 0;
			const bare = free / sideReactions;
			const once = bare * h * 10 ** dye.pKa[1];
			return {
				dyeId,
				freeMolPerL: [once * h * 10 ** dye.pKa[0], once, bare],
				calciumMolPerL: ligand.k[0]! * calcium * free,
				magnesiumMolPerL: ligand.k[1]! * magnesium * free,
				blockedMolPerL: blocked,
				adsorbedMolPerL: adsorbed
			};
		})
	};
}
