import { fallingRoot } from './bracketed-root';
import type { ChelationVessel } from './chelation-vessel';
import { edtaProtons, protonConstants, sodiumPullOf } from './edta-constants';
import { dyeSideReactions, metalDyeOf } from './metal-dyes';
import { freeLigands, freeMetals, type Ligand } from './metal-ligands';
import { saturatedMagnesiumMolPerL } from './precipitation';
import { alkalinityAt } from './speciation';
import { compositionOf, volumeMlOf } from './vessel';

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

/** What does not change with pH, worked out once for a vessel. */
function prepared(vessel: ChelationVessel) {
	const { water, constants } = vessel;
	const composition = compositionOf(water);
	const volumeMl = volumeMlOf(water);
	const litres = volumeMl / 1000;
	const { logKCalcium, logKMagnesium, logKStrontium, saltLowering } = constants.edta;
	return {
		composition,
		volumeMl,
		litres,
		edtaMolPerL: vessel.edtaMol / litres,
		protonSteps: protonConstants(constants.edta),
		sodiumPull: sodiumPullOf(constants.edta, vessel.sodiumMol / litres),
		logK: [logKCalcium, logKMagnesium, logKStrontium].map((logK) => 10 ** (logK - saltLowering))
	};
}
type Prepared = ReturnType<typeof prepared>;

function edtaLigand(ready: Prepared, ph: number) {
	const protons = edtaProtons(10 ** -ph, ready.protonSteps, ready.sodiumPull);
	const k = ready.logK.map((constant) => constant / protons.sideReactions);
	return { ligand: { totalMolPerL: ready.edtaMolPerL, k }, meanProtons: protons.meanProtons };
}

const saturatedMolPerL = (ready: Prepared, vessel: ChelationVessel, ph: number) =>
	saturatedMagnesiumMolPerL(ph, ready.composition.medium.salinity, vessel.constants.hydroxide);

/**
 * Metals with EDTA at one pH, without dye: what EDTA stays free, how many protons it holds, and the
 * magnesium that is solid, mol/L; `solidMolPerL` null for the amount at equilibrium, all calcium open.
 */
function shareOut(
	ready: Prepared,
	vessel: ChelationVessel,
	ph: number,
	solidMolPerL: number | null
) {
	const { litres } = ready;
	const { ligand, meanProtons } = edtaLigand(ready, ph);
	const magnesium = vessel.magnesiumMol / litres;
	const occluded = solidMolPerL === null ? 0 : vessel.occludedCalciumMol;
	const system = {
		metalsMolPerL: [
			(vessel.calciumMol - occluded) / litres,
			magnesium - (solidMolPerL ?? 0),
			vessel.strontiumMol / litres
		],
		...(solidMolPerL === null && {
			ceilingsMolPerL: [Infinity, saturatedMolPerL(ready, vessel, ph), Infinity]
		}),
		ligands: [ligand]
	};
	const free = freeLigands(system);
	const edtaFree = free[0] ?? 0;
	const freeMagnesium = freeMetals(system, free)[1] ?? 0;
	const solid =
		solidMolPerL ?? Math.max(0, magnesium - freeMagnesium * (1 + ligand.k[1]! * edtaFree));
	return { edtaFree, meanProtons, freeMagnesium, solid };
}

/** pH with so much solid, or with its equilibrium amount (null): where all that takes up acid adds to what was put in. */
function phWith(
	ready: Prepared,
	vessel: ChelationVessel,
	solidMolPerL: number | null,
	startPh = 9
): number {
	if (vessel.heldPh !== null) return vessel.heldPh;
	const { water, ammoniaMol, constants, edtaMol } = vessel;
	const out = { value: 0, slope: 0 };
	let lastPh = NaN;
	let lastValue = NaN;
	return fallingRoot(
		(ph, result) => {
			const h = 10 ** -ph;
			alkalinityAt(h, ready.composition, out);
			const { edtaFree, meanProtons, solid } = shareOut(ready, vessel, ph, solidMolPerL);
			const ammonia = ammoniaMol / (1 + h * 10 ** constants.ammoniumPKa);
			const value =
				water.alkalinityMol -
				out.value * water.massKg -
				ammonia -
				(2 * edtaMol - edtaFree * meanProtons * ready.litres) -
				2 * solid * ready.litres;
			result.value = value;
			// Secant: the true slope would need that of the metals too.
			const secant = (value - lastValue) / (ph - lastPh);
			result.slope = secant < 0 ? secant : -out.slope * water.massKg;
			lastPh = ph;
			lastValue = value;
		},
		-2,
		16,
		startPh,
		1e-11
	);
}

/** Solid at equilibrium, and how far past its onset the liquid would be without any, in pH. */
export function hydroxideEquilibrium(vessel: ChelationVessel): {
	solidMol: number;
	excessPh: number;
} {
	const ready = prepared(vessel);
	const clearPh = phWith(ready, vessel, 0);
	const clear = shareOut(ready, { ...vessel, occludedCalciumMol: 0 }, clearPh, 0);
	const excessPh = Math.log10(clear.freeMagnesium / saturatedMolPerL(ready, vessel, clearPh)) / 2;
	// Without excess there is none, and no pH to look for.
	if (!(excessPh > 0)) return { solidMol: 0, excessPh };
	const { solid } = shareOut(ready, vessel, phWith(ready, vessel, null, clearPh), null);
	return { solidMol: Math.min(solid * ready.litres, vessel.magnesiumMol), excessPh };
}

/** Everything in the vessel at this moment, with as much solid as there is. */
export function chelationStateOf(vessel: ChelationVessel): ChelationState {
	const ready = prepared(vessel);
	const { litres } = ready;
	const solidMolPerL = vessel.solidMagnesiumMol / litres;
	const ph = phWith(ready, vessel, solidMolPerL);
	const h = 10 ** -ph;
	const edta = edtaLigand(ready, ph).ligand;
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
		volumeMl: ready.volumeMl,
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
