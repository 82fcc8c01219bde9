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
		constants: [logKCalcium, logKMagnesium, logKStrontium].map(
			(logK) => 10 ** (logK - saltLowering)
		)
	};
}
type Prepared = ReturnType<typeof prepared>;

function edtaLigand(ready: Prepared, ph: number) {
	const { sideReactions, meanProtons, meanSquares } = edtaProtons(
		10 ** -ph,
		ready.protonSteps,
		ready.sodiumPull
	);
	const [calcium = 0, magnesium = 0, strontium = 0] = ready.constants;
	const k = [calcium / sideReactions, magnesium / sideReactions, strontium / sideReactions];
	return { meanProtons, meanSquares, ligand: { totalMolPerL: ready.edtaMolPerL, k } };
}

const saturatedMolPerL = (ready: Prepared, vessel: ChelationVessel, ph: number) =>
	saturatedMagnesiumMolPerL(ph, ready.composition.medium.salinity, vessel.constants.hydroxide);

/**
 * Metals with EDTA at one pH, without dye: protons on EDTA and magnesium that is solid, mol/L, each with
 * its rise for each rise of ln[H+]. `solidMolPerL` null: the amount at equilibrium, all calcium open.
 */
function shareOut(
	ready: Prepared,
	vessel: ChelationVessel,
	ph: number,
	solidMolPerL: number | null
) {
	const { litres } = ready;
	const { ligand, meanProtons, meanSquares } = edtaLigand(ready, ph);
	const occluded = solidMolPerL === null ? 0 : vessel.occludedCalciumMol;
	const ceiling = solidMolPerL === null ? saturatedMolPerL(ready, vessel, ph) : Infinity;
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

/** Where the pH will be about, from what base is left when EDTA and solid have had theirs: saves time, changes nothing else. */
function nearPh(ready: Prepared, vessel: ChelationVessel, solidMolPerL: number | null): number {
	const { water, ammoniaMol, calciumMol, magnesiumMol, strontiumMol, edtaMol } = vessel;
	const metalsMol = calciumMol + magnesiumMol + strontiumMol;
	let left = water.alkalinityMol - 2 * Math.min(edtaMol, metalsMol);
	left -= ready.composition.medium.totals.borateMolPerKg * water.massKg + water.dicMol;
	if (solidMolPerL === null) {
		const open = magnesiumMol - Math.max(0, edtaMol - calciumMol - strontiumMol);
		left -= 2 * Math.max(0, Math.min(open, left / 2));
	} else left -= 2 * solidMolPerL * ready.litres;
	const hydroxide = (left - ammoniaMol) / water.massKg;
	if (hydroxide > 1e-4) return -Math.log10(ready.composition.medium.constants.kW / hydroxide);
	if (ammoniaMol === 0) return 9;
	const share = Math.min(0.99, Math.max(0.01, left / ammoniaMol));
	return vessel.constants.ammoniumPKa + Math.log10(share / (1 - share));
}

/** pH with so much solid, or with its equilibrium amount (null): where all that takes up acid adds to what was put in. */
function phWith(ready: Prepared, vessel: ChelationVessel, solidMolPerL: number | null): number {
	if (vessel.heldPh !== null) return vessel.heldPh;
	const { water, ammoniaMol, constants, edtaMol } = vessel;
	const { litres } = ready;
	const kAmmonium = 10 ** constants.ammoniumPKa;
	const out = { value: 0, slope: 0 };
	return fallingRoot(
		(ph, result) => {
			const h = 10 ** -ph;
			alkalinityAt(h, ready.composition, out);
			const shares = shareOut(ready, vessel, ph, solidMolPerL);
			const bareShare = 1 / (1 + h * kAmmonium);
			result.value =
				water.alkalinityMol -
				out.value * water.massKg -
				ammoniaMol * bareShare -
				2 * edtaMol +
				(shares.protons - 2 * shares.solid) * litres;
			const rise =
				ammoniaMol * bareShare * (1 - bareShare) +
				(shares.protonsRise - 2 * shares.solidRise) * litres;
			result.slope = -out.slope * water.massKg - Math.LN10 * rise;
		},
		-2,
		16,
		nearPh(ready, vessel, solidMolPerL),
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
	const { solid } = shareOut(ready, vessel, phWith(ready, vessel, null), null);
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
