/** Something that binds metals one to one, in amounts that count. */
export type Ligand = {
	/** In all, bound or not, mol/L. */
	totalMolPerL: number;
	/** Conditional constant with each metal, L/mol, in the order of the metals. */
	k: readonly number[];
};

export type MetalsAndLigands = {
	/** In solution in all, mol/L. */
	metalsMolPerL: readonly number[];
	/** Free metal cannot rise above this: where its solid is there, mol/L. */
	ceilingsMolPerL?: readonly number[];
	ligands: readonly Ligand[];
};

/** Metal i in all over what of it is free, with these ligands. */
function sideOf(ligands: readonly Ligand[], free: readonly number[], i: number): number {
	let side = 1;
	for (let j = 0; j < ligands.length; j++) side += ligands[j]!.k[i]! * free[j]!;
	return side;
}

/** Free metal of each kind at given free ligands, mol/L. */
export function freeMetals(system: MetalsAndLigands, free: readonly number[]): number[] {
	const { ligands, metalsMolPerL, ceilingsMolPerL } = system;
	const metals = [...metalsMolPerL];
	for (let i = 0; i < metals.length; i++) {
		const alone = metals[i]! / sideOf(ligands, free, i);
		const ceiling = ceilingsMolPerL ? ceilingsMolPerL[i]! : Infinity;
		metals[i] = alone < ceiling ? alone : ceiling;
	}
	return metals;
}

/**
 * Free ligand j while the others keep what they have, mol/L.
 *
 * What it holds in all is concave in what of it is free, so Newton's steps from below never pass the
 * root; they begin at the better of two bounds: all metal shared with it at its strongest, or all
 * metal taken by it.
 */
export function freeAlone(j: number, system: MetalsAndLigands, free: number[]): number {
	const { ligands, metalsMolPerL, ceilingsMolPerL } = system;
	const { totalMolPerL, k } = ligands[j]!;
	if (totalMolPerL === 0) return (free[j] = 0);
	const count = metalsMolPerL.length;
	free[j] = 0;
	let strongest = 1;
	let metal = 0;
	for (let i = 0; i < count; i++) {
		// 1 and what the others take: the same in every round.
		const others = (sides[i] = sideOf(ligands, free, i));
		const ceiling = ceilingsMolPerL ? ceilingsMolPerL[i]! : Infinity;
		strongest += k[i]! * Math.min(metalsMolPerL[i]! / others, ceiling);
		if (k[i]! > 0) metal += metalsMolPerL[i]!;
	}
	let x = Math.max(totalMolPerL / strongest, totalMolPerL - metal);
	// Each step squares the error, at most, but where it passes the bend at a ceiling.
	const enough = ceilingsMolPerL ? 1e-14 : 1e-8;
	for (let round = 0; round < 200; round++) {
		let holds = 1;
		let rise = 1;
		for (let i = 0; i < count; i++) {
			const constant = k[i]!;
			const side = sides[i]! + constant * x;
			const alone = metalsMolPerL[i]! / side;
			const isHeld = ceilingsMolPerL !== undefined && alone >= ceilingsMolPerL[i]!;
			const bound = constant * (isHeld ? ceilingsMolPerL[i]! : alone);
			holds += bound;
			// A metal at its ceiling gives way to no ligand.
			rise += isHeld ? bound : (bound * sides[i]!) / side;
		}
		const step = (totalMolPerL - x * holds) / rise;
		x += step;
		if (step <= enough * x) break;
	}
	return (free[j] = x);
}
/** Room for `freeAlone`, which runs some hundred times for each point of a titration. */
const sides: number[] = [];
