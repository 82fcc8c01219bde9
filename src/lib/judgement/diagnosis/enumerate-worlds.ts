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
import { lnLikelihood, lnMostWith, type Account } from './gaussian';
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

const never = Number.NEGATIVE_INFINITY;

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
				together: Float64Array.from(
					shifts,
					({ part: shift }) => lnOfTwo(input, member.part, shift) ?? never
				)
			}));
		const mostTogether = shifts.map((_, s) =>
			Math.max(...members.map((each) => each.together[s]!))
		);
		family.levels.middle.forEach((number, node) => {
			const active = members.filter(({ part }) => part.piece.weights.middle[node]! > 1e-7);
			const account = active.length > 0 ? accountAt(place, number) : null;
			if (!account) return;
			const seen = seenAll(account, directions, scratch);
			const code = encodeNode('middle', node);
			const lnNode = active.map(({ part }) => Math.log(part.piece.weights.middle[node]!));
			const lnNodeMost = Math.max(...lnNode);
			const lnMost = Float64Array.from(seen, (each) => lnMostWith(account, each) + lnNodeMost);
			for (let s = 0; s < shifts.length; s++) {
				const shift = shifts[s]!;
				if (mostTogether[s]! + lnMost[shift.part.piece.direction]! < components.least) continue;
				integrate(account, sizedOf(shift, seen), null, 0, into);
				for (let m = 0; m < active.length; m++) {
					const { part, at, together } = active[m]!;
					const lnWeight = together[s]! + lnNode[m]! + into.lnLikelihood;
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
