import type { Components } from './components';
import {
	before,
	encodeNode,
	lnOfOne,
	lnOfTwo,
	seenAll,
	sizedOf,
	type Background,
	type Enumeration,
	type ShiftPart,
	type WorldsPart
} from './enumeration';
import type { Family } from './families';
import { lnLikelihood, type Account } from './gaussian';
import { bothWorlds, type World } from './model';
import { blankShifted, integrate } from './shifts';

/** Accounts of a family's worlds before a background, each worked out once; null where there is none. */
function accountsOf({ accounts }: Enumeration, family: Family, background: Background) {
	const known = new Map<number, Account | null>();
	return (number: number): Account | null => {
		const found = known.get(number);
		if (found !== undefined) return found;
		const world = before(family.worldAt(number, family.mask), background);
		const account = world && accounts.of(world);
		known.set(number, account);
		return account;
	};
}

/** Worlds by themselves, on the finest grid. */
export function enumerateWorlds(
	input: Enumeration,
	worlds: readonly WorldsPart[],
	accountAt: (family: number, number: number) => Account | null,
	components: Components
): void {
	const { families, places } = input;
	families.all.forEach((family, place) => {
		const members = worlds.filter(({ part }) => part.piece.family === place);
		family.levels.fine.forEach((number, node) => {
			if (!members.some(({ part }) => part.piece.weights.fine[node]! > 1e-9)) return;
			const account = accountAt(place, number);
			if (!account) return;
			const ln = lnLikelihood(account);
			for (const { part, at } of members) {
				const lnNode = Math.log(part.piece.weights.fine[node]!);
				const code = encodeNode('fine', node);
				components.add(
					lnOfOne(input, part) + lnNode + ln,
					account,
					places.one(part.fault),
					at,
					code,
					-1,
					-1
				);
			}
		});
	});
}

/** Each world with a shift. */
export function enumerateWorldsWithShifts(
	input: Enumeration,
	worlds: readonly WorldsPart[],
	shifts: readonly ShiftPart[],
	accountAt: (family: number, number: number) => Account | null,
	components: Components
): void {
	const { families, directions, places, accounts } = input;
	const into = blankShifted();
	const scratch = new Float64Array(accounts.model.count);
	families.all.forEach((family, place) => {
		const members = worlds
			.filter(({ part }) => part.piece.family === place)
			.map((member) => ({
				...member,
				together: shifts.map(({ part: shift }) => lnOfTwo(input, member.part, shift))
			}));
		family.levels.middle.forEach((number, node) => {
			const active = members.filter(({ part }) => part.piece.weights.middle[node]! > 1e-7);
			const account = active.length > 0 ? accountAt(place, number) : null;
			if (!account) return;
			const seen = seenAll(account, directions, scratch);
			const code = encodeNode('middle', node);
			const lnNode = active.map(({ part }) => Math.log(part.piece.weights.middle[node]!));
			for (let s = 0; s < shifts.length; s++) {
				const shift = shifts[s]!;
				integrate(account, sizedOf(shift, seen), null, 0, into);
				for (let m = 0; m < active.length; m++) {
					const { part, at, together } = active[m]!;
					const ln = together[s] ?? null;
					if (ln === null) continue;
					const lnWeight = ln + lnNode[m]! + into.lnLikelihood;
					if (!components.matters(lnWeight)) continue;
					const both = places.two(part.fault, shift.part.fault);
					components.add(lnWeight, into, both, at, code, shift.at, -1);
				}
			}
		});
	});
}

/** Accounts of all families' worlds before a background. */
export function accountsBefore(
	input: Enumeration,
	background: Background
): (family: number, number: number) => Account | null {
	const byFamily = input.families.all.map((family) => accountsOf(input, family, background));
	return (family, number) => byFamily[family]!(number);
}

type Pair = { a: WorldsPart; b: WorldsPart; ln: number };

/** A node that carries less of a fault's sizes is left out of pairs. */
const LEAST_NODE = 1e-3;

/** Two families of worlds at once, on the coarse grid. */
export function enumerateTwoWorlds(
	input: Enumeration,
	worlds: readonly WorldsPart[],
	background: Background,
	components: Components
): void {
	const { families } = input;
	const members = families.all.map((_, f) => worlds.filter(({ part }) => part.piece.family === f));
	const nodes = families.all.map((family) =>
		Array.from(family.levels.coarse, (number) => family.worldAt(number, family.mask))
	);
	const behind = nodes.map((each) => each.map((world) => before(world, background)));
	for (let f = 0; f < nodes.length; f++)
		for (let g = 0; g <= f; g++) {
			const pairs = members[f]!.flatMap((a) =>
				members[g]!.flatMap((b): Pair[] => {
					const ln = f === g && b.at >= a.at ? null : lnOfTwo(input, a.part, b.part);
					return ln === null ? [] : [{ a, b, ln }];
				})
			);
			if (pairs.length > 0) ofFamilies(input, pairs, behind[f]!, nodes[g]!, components);
		}
}

/** Two families: each two of their worlds looked at once for all pairs of faults that meet there. */
function ofFamilies(
	{ accounts, places }: Enumeration,
	pairs: readonly Pair[],
	worlds1: readonly (World | null)[],
	worlds2: readonly World[],
	components: Components
): void {
	const scratch = new Float64Array(accounts.model.count);
	worlds1.forEach((world1, i) => {
		const withI = pairs.filter(({ a }) => a.part.piece.weights.coarse[i]! > LEAST_NODE);
		if (withI.length === 0 || !world1) return;
		for (let j = 0; j < worlds2.length; j++) {
			let world: World | null = null;
			let account: Account | null = null;
			let lnReadings = 0;
			for (const { a, b, ln } of withI) {
				const share = b.part.piece.weights.coarse[j]!;
				if (share <= LEAST_NODE) continue;
				if (!world) {
					world = bothWorlds(world1, worlds2[j]!, scratch);
					if (!world) return;
					lnReadings = accounts.lnLikelihood(world);
				}
				const lnWeight = ln + lnReadings + Math.log(a.part.piece.weights.coarse[i]! * share);
				if (!components.matters(lnWeight)) continue;
				account ??= accounts.of(bothWorlds(world1, worlds2[j]!) ?? world);
				components.add(
					lnWeight,
					account,
					places.two(a.part.fault, b.part.fault),
					a.at,
					encodeNode('coarse', i),
					b.at,
					encodeNode('coarse', j)
				);
			}
		}
	});
}
