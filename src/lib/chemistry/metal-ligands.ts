import { fallingRoot } from './bracketed-root';

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

/** Free metal i at given free ligands, mol/L. */
function freeMetal(system: MetalsAndLigands, free: readonly number[], i: number): number {
	const { ligands, metalsMolPerL, ceilingsMolPerL } = system;
	const alone = metalsMolPerL[i]! / sideOf(ligands, free, i);
	const ceiling = ceilingsMolPerL ? ceilingsMolPerL[i]! : Infinity;
	return alone < ceiling ? alone : ceiling;
}

/** Metal i in all over what of it is free, with these ligands. */
function sideOf(ligands: readonly Ligand[], free: readonly number[], i: number): number {
	let side = 1;
	for (let j = 0; j < ligands.length; j++) side += ligands[j]!.k[i]! * free[j]!;
	return side;
}

/** Free metal of each kind at given free ligands, mol/L. */
export function freeMetals(system: MetalsAndLigands, free: readonly number[]): number[] {
	return system.metalsMolPerL.map((_, i) => freeMetal(system, free, i));
}

/**
 * Free ligand j while the others keep what they have, mol/L.
 *
 * What it holds in all is concave in what of it is free, so Newton's steps from below never pass the
 * root; they begin at the better of two bounds: all metal shared with it at its strongest, or all
 * metal taken by it.
 */
function freeAlone(j: number, system: MetalsAndLigands, free: number[]): number {
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
		if (step <= 1e-14 * x) break;
	}
	return (free[j] = x);
}
/** Room for `freeAlone`, which runs some hundred times for each point of a titration. */
const sides: number[] = [];

/** How much more the first ligand holds for each rise of its ln, the others following; mol/L. */
function riseOfFirst(system: MetalsAndLigands, free: readonly number[], metals: readonly number[]) {
	const { ligands, metalsMolPerL } = system;
	const pull = (a: number, b: number) => {
		let sum = 0;
		metals.forEach((m, i) => {
			const both = ligands[a]!.k[i]! * free[a]! * ligands[b]!.k[i]! * free[b]!;
			if (both > 0) sum += (both * m * m) / metalsMolPerL[i]!;
		});
		return sum;
	};
	const total = (j: number) =>
		metals.reduce((sum, m, i) => sum + ligands[j]!.k[i]! * free[j]! * m, free[j]!);
	let rise = total(0) - pull(0, 0);
	for (let j = 1; j < ligands.length; j++)
		if (free[j]! > 0) rise -= pull(0, j) ** 2 / (total(j) - pull(j, j));
	return rise;
}

/**
 * Free ligand of each kind when metals are shared out, mol/L. Ceilings only with a single ligand.
 *
 * With free ligands given, each metal follows from its own balance, which so closes by itself; what is
 * left is one equation for each ligand. The first is solved with the others solved inside it: it is
 * monotone then, for the whole is the gradient of a convex function. Several others take turns inside
 * until none moves, which is a matter of a few rounds while they are dilute.
 */
export function freeLigands(system: MetalsAndLigands): number[] {
	const { ligands } = system;
	const free = ligands.map(() => 0);
	const first = ligands[0];
	if (!first) return free;
	const others = () => {
		for (let round = 0; round < 500; round++) {
			let moved = 0;
			for (let j = 1; j < ligands.length; j++) {
				const before = free[j]!;
				const after = freeAlone(j, system, free);
				moved = Math.max(moved, Math.abs(after - before) / (after || 1));
			}
			if (ligands.length < 3 || moved < 1e-14) return;
		}
	};
	const alone = freeAlone(0, system, free);
	if (!ligands.some(({ totalMolPerL }, j) => j > 0 && totalMolPerL > 0)) return free;
	if (alone === 0) {
		others();
		return free;
	}
	// Others take metal away from it, so more of it is free than alone, and never more than all.
	const low = Math.log(alone) - 1e-9;
	const high = Math.log(first.totalMolPerL) + 1e-9;
	const u = fallingRoot(
		(at, out) => {
			free[0] = Math.exp(at);
			others();
			const metals = freeMetals(system, free);
			let holds = free[0];
			for (let i = 0; i < metals.length; i++) holds += first.k[i]! * metals[i]! * free[0];
			out.value = (first.totalMolPerL - holds) / first.totalMolPerL;
			out.slope = -riseOfFirst(system, free, metals) / first.totalMolPerL;
		},
		low,
		high,
		low + 1e-9,
		1e-13
	);
	free[0] = Math.exp(u);
	others();
	return free;
}
