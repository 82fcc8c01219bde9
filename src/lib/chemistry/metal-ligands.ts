import { fallingRoot } from './bracketed-root';
import { freeAlone, freeMetals, type MetalsAndLigands } from './metals-shared';

/**
 * How much more ligand j holds for each rise of ln of what of it is free, and how much less for each
 * rise of the first's, which takes metal from it; mol/L.
 */
function answerOf(
	system: MetalsAndLigands,
	free: readonly number[],
	metals: readonly number[],
	j: number
) {
	const { ligands, metalsMolPerL } = system;
	const { k } = ligands[j]!;
	const first = ligands[0]!.k;
	let total = free[j]!;
	let square = 0;
	let withFirst = 0;
	for (let i = 0; i < metals.length; i++) {
		const bound = k[i]! * free[j]! * metals[i]!;
		// A metal of which there is none pulls nothing: 0 / 0 is not that.
		if (bound === 0) continue;
		total += bound;
		square += (bound * bound) / metalsMolPerL[i]!;
		withFirst += (bound * first[i]! * free[0]! * metals[i]!) / metalsMolPerL[i]!;
	}
	return { rise: total - square, withFirst };
}

/** How much more the first ligand holds for each rise of its ln, the others following; mol/L. */
function riseOfFirst(system: MetalsAndLigands, free: readonly number[], metals: readonly number[]) {
	let rise = answerOf(system, free, metals, 0).rise;
	for (let j = 1; j < free.length; j++) {
		if (free[j] === 0) continue;
		const other = answerOf(system, free, metals, j);
		rise -= other.withFirst ** 2 / other.rise;
	}
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
		1e-10
	);
	free[0] = Math.exp(u);
	others();
	return free;
}
