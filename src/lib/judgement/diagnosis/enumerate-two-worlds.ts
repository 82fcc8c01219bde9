import type { Components } from './components';
import {
	before,
	encodeNode,
	lnOfTwo,
	type Background,
	type Enumeration,
	type WorldsPart
} from './enumeration';
import { bothWorlds, type World } from './model';

/** A node that carries less of a fault's sizes is left out of pairs. */
const LEAST_NODE = 1e-3;

/** A part where its family is at one node: its place among the worlds, and ln of what the node carries. */
type AtNode = { worlds: number; fault: number; at: number; lnNode: number };

/** A family's nodes that carry anything, on the coarse grid. */
type Node = { code: number; world: World; behind: World | null; members: AtNode[] };

const never = Number.NEGATIVE_INFINITY;

function nodesOf(
	{ families }: Enumeration,
	worlds: readonly WorldsPart[],
	background: Background
): Node[][] {
	return families.all.map((family, f) => {
		const own = worlds.flatMap(({ part, at }, w) =>
			part.piece.family === f ? [{ part, at, w }] : []
		);
		return Array.from(family.levels.coarse).flatMap((number, node): Node[] => {
			const members = own.flatMap(({ part, at, w }): AtNode[] => {
				const share = part.piece.weights.coarse[node]!;
				return share > LEAST_NODE
					? [{ worlds: w, fault: part.fault, at, lnNode: Math.log(share) }]
					: [];
			});
			if (members.length === 0) return [];
			const world = family.worldAt(number, family.mask);
			return [
				{ code: encodeNode('coarse', node), world, behind: before(world, background), members }
			];
		});
	});
}

/** ln of what two parts have before the readings speak, one row for each; each two once, the later first. */
function lnTogetherOf(input: Enumeration, worlds: readonly WorldsPart[]): Float64Array[] {
	return worlds.map((a, w) => {
		const f = a.part.piece.family;
		return Float64Array.from(worlds, (b, v) => {
			const g = b.part.piece.family;
			return g > f || (g === f && v >= w) ? never : (lnOfTwo(input, a.part, b.part) ?? never);
		});
	});
}

/** Two families of worlds at once, on the coarse grid. */
export function enumerateTwoWorlds(
	input: Enumeration,
	worlds: readonly WorldsPart[],
	background: Background,
	components: Components
): void {
	const nodes = nodesOf(input, worlds, background);
	const lnTogether = lnTogetherOf(input, worlds);
	nodes.forEach((ofFamily, f) => {
		for (const one of ofFamily)
			for (let g = 0; g <= f; g++)
				for (const two of nodes[g]!) if (!atNodes(input, one, two, lnTogether, components)) break;
	});
}

/** Two nodes, looked at once for all pairs of faults that meet there; false where no two such go together. */
function atNodes(
	{ accounts, places }: Enumeration,
	one: Node,
	two: Node,
	lnTogether: readonly Float64Array[],
	components: Components
): boolean {
	let most = never;
	for (const a of one.members) {
		const row = lnTogether[a.worlds]!;
		for (const b of two.members) {
			const ln = row[b.worlds]! + a.lnNode + b.lnNode;
			if (ln > most) most = ln;
		}
	}
	if (most === never) return true;
	const world = one.behind && bothWorlds(one.behind, two.world, accounts.scratch);
	if (!world) return false;
	const lnReadings = accounts.lnLikelihood(world, components.least - most);
	if (!components.matters(most + lnReadings)) return true;
	const tank = accounts.tankOfLast(world);
	for (const a of one.members) {
		const row = lnTogether[a.worlds]!;
		for (const b of two.members)
			components.add(
				row[b.worlds]! + a.lnNode + b.lnNode + lnReadings,
				tank,
				places.two(a.fault, b.fault),
				a.at,
				one.code,
				b.at,
				two.code
			);
	}
	return true;
}
