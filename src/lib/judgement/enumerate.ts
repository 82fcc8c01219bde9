import { Components } from './components';
import type { CueEvidence } from './cue-likelihood';
import type { Directions } from './directions';
import type { Families, Level } from './families';
import {
	lnLikelihood,
	productOf,
	seenBy,
	type Account,
	type Accounts,
	type Seen
} from './gaussian';
import { bothWorlds, ordinaryWorld, type World } from './model';
import { UNFORESEEN, type ExplanationPlaces, type Part } from './parts';
import { blankShifted, integrate, type Shifted, type Sized } from './shifts';

type ShiftPart = Part & { piece: { kind: 'shift' } };
type WorldsPart = Part & { piece: { kind: 'worlds' } };

export type Enumeration = {
	parts: readonly Part[];
	/** Whether two parts may be there at once, and ln of what that does to their odds. */
	lnTogether: (one: Part, two: Part) => number | null;
	accounts: Accounts;
	directions: Directions;
	families: Families;
	cues: CueEvidence;
	places: ExplanationPlaces;
	/** The world in which what is in no list happens. */
	unforeseen: World;
};

/** Every account of what happened with no part, one part or two, with its weight. */
export function enumerate(input: Enumeration): Components {
	const components = new Components();
	const { accounts } = input;
	const ordinary = accounts.of(ordinaryWorld);
	const { none } = input.places;
	components.add(
		lnLikelihood(ordinary),
		ordinary.tankMean,
		ordinary.tankVariance,
		none,
		-1,
		-1,
		-1,
		-1
	);
	const shifts: { part: ShiftPart; at: number }[] = [];
	const worlds: { part: WorldsPart; at: number }[] = [];
	input.parts.forEach((part, at) => {
		if (part.fault === UNFORESEEN) return;
		if (part.piece.kind === 'shift') shifts.push({ part: part as ShiftPart, at });
		else worlds.push({ part: part as WorldsPart, at });
	});
	ofShifts(input, shifts, ordinary, components);
	ofWorlds(input, worlds, shifts, components);
	ofTwoWorlds(input, worlds, components);
	ofUnforeseen(input, components);
	return components;
}

const lnOfOne = ({ cues }: Enumeration, { fault, lnOdds, piece }: Part) =>
	lnOdds + piece.lnWeight + (fault < 0 ? 0 : cues.ofOne(fault));

/** ln of what two parts have before the readings speak; null where they cannot go together. */
function lnOfTwo(input: Enumeration, one: Part, two: Part): number | null {
	const together = input.lnTogether(one, two);
	if (together === null) return null;
	const said =
		one.fault < 0 || two.fault < 0
			? (one.fault < 0 ? 0 : input.cues.ofOne(one.fault)) +
				(two.fault < 0 ? 0 : input.cues.ofOne(two.fault))
			: input.cues.ofTwo(one.fault, two.fault);
	return together + said + one.lnOdds + two.lnOdds + one.piece.lnWeight + two.piece.lnWeight;
}

const seenAll = (account: Account, { all }: Directions): Seen[] =>
	all.map((direction) => seenBy(account, direction));

const sizedOf = ({ piece }: ShiftPart, seen: readonly Seen[]): Sized => ({
	seen: seen[piece.direction]!,
	mean: piece.mean,
	variance: piece.variance
});

/** One shift, and two. */
function ofShifts(
	input: Enumeration,
	shifts: readonly { part: ShiftPart; at: number }[],
	ordinary: Account,
	components: Components
): void {
	const { places, directions } = input;
	const seen = seenAll(ordinary, directions);
	const width = seen.length;
	const cross = new Float64Array(width * width);
	for (let a = 0; a < width; a++)
		for (let b = 0; b <= a; b++) {
			cross[a * width + b] = productOf(seen[a]!, seen[b]!);
			cross[b * width + a] = cross[a * width + b]!;
		}
	const sized = shifts.map(({ part }) => sizedOf(part, seen));
	const into = blankShifted();
	shifts.forEach(({ part, at }, i) => {
		const single = integrate(ordinary, sized[i]!, null, 0, into);
		components.add(
			lnOfOne(input, part) + single.lnLikelihood,
			single.tankMean,
			single.tankVariance,
			places.one(part.fault),
			at,
			-1,
			-1,
			-1
		);
	});
	for (let i = 0; i < shifts.length; i++) {
		const { part: one, at: at1 } = shifts[i]!;
		for (let j = 0; j < i; j++) {
			const { part: two, at: at2 } = shifts[j]!;
			const ln = lnOfTwo(input, one, two);
			if (ln === null) continue;
			const product = cross[one.piece.direction * width + two.piece.direction]!;
			const both = integrate(ordinary, sized[i]!, sized[j]!, product, into);
			components.add(
				ln + both.lnLikelihood,
				both.tankMean,
				both.tankVariance,
				places.two(one.fault, two.fault),
				at1,
				-1,
				at2,
				-1
			);
		}
	}
}

/** Worlds by themselves, on the finest grid, and each with a shift. */
function ofWorlds(
	input: Enumeration,
	worlds: readonly { part: WorldsPart; at: number }[],
	shifts: readonly { part: ShiftPart; at: number }[],
	components: Components
): void {
	const { families, accounts, directions, places } = input;
	families.all.forEach((family, place) => {
		const members = worlds.filter(({ part }) => part.piece.family === place);
		if (members.length === 0) return;
		const known = new Map<number, Account>();
		const accountAt = (number: number): Account => {
			const account = known.get(number) ?? accounts.of(family.worldAt(number, family.mask));
			known.set(number, account);
			return account;
		};
		family.levels.fine.forEach((number, node) => {
			if (!members.some(({ part }) => part.piece.weights.fine[node]! > 1e-9)) return;
			const account = accountAt(number);
			const ln = lnLikelihood(account);
			for (const { part, at } of members)
				components.add(
					lnOfOne(input, part) + Math.log(part.piece.weights.fine[node]!) + ln,
					account.tankMean,
					account.tankVariance,
					places.one(part.fault),
					at,
					encodeNode('fine', node),
					-1,
					-1
				);
		});
		const together = members.map(({ part }) =>
			shifts.map(({ part: shift }) => lnOfTwo(input, part, shift))
		);
		const into = blankShifted();
		family.levels.middle.forEach((number, node) => {
			const active = members
				.map((member, m) => ({ ...member, m }))
				.filter(({ part }) => part.piece.weights.middle[node]! > 1e-7);
			if (active.length === 0) return;
			const account = accountAt(number);
			const seen = seenAll(account, directions);
			shifts.forEach(({ part: shift, at: at2 }, s) => {
				const found: Shifted = integrate(account, sizedOf(shift, seen), null, 0, into);
				for (const { part, at, m } of active) {
					const ln = together[m]![s] ?? null;
					if (ln === null) continue;
					components.add(
						ln + Math.log(part.piece.weights.middle[node]!) + found.lnLikelihood,
						found.tankMean,
						found.tankVariance,
						places.two(part.fault, shift.fault),
						at,
						encodeNode('middle', node),
						at2,
						-1
					);
				}
			});
		});
	});
}

type Pair = {
	a: { part: WorldsPart; at: number };
	b: { part: WorldsPart; at: number };
	ln: number;
};

/** A node that carries less of a fault's sizes is left out of pairs. */
const LEAST_NODE = 1e-4;

/** Two families of worlds at once, on the coarse grid. */
function ofTwoWorlds(
	input: Enumeration,
	worlds: readonly { part: WorldsPart; at: number }[],
	components: Components
): void {
	const { families } = input;
	const members = families.all.map((_, f) => worlds.filter(({ part }) => part.piece.family === f));
	const nodes = families.all.map((family) =>
		Array.from(family.levels.coarse, (number) => family.worldAt(number, family.mask))
	);
	for (let f = 0; f < nodes.length; f++)
		for (let g = 0; g <= f; g++) {
			const pairs = members[f]!.flatMap((a) =>
				members[g]!.flatMap((b): Pair[] => {
					const ln = f === g && b.at >= a.at ? null : lnOfTwo(input, a.part, b.part);
					return ln === null ? [] : [{ a, b, ln }];
				})
			);
			if (pairs.length > 0) ofFamilies(input, pairs, nodes[f]!, nodes[g]!, components);
		}
}

/** Two families: each two of their worlds looked at once for all pairs of faults that meet there. */
function ofFamilies(
	{ accounts, places }: Enumeration,
	pairs: readonly Pair[],
	worlds1: readonly World[],
	worlds2: readonly World[],
	components: Components
): void {
	worlds1.forEach((world1, i) => {
		const withI = pairs.filter(({ a }) => a.part.piece.weights.coarse[i]! > LEAST_NODE);
		if (withI.length === 0) return;
		for (let j = 0; j < worlds2.length; j++) {
			let world: World | null = null;
			let account: Account | null = null;
			let lnReadings = 0;
			for (const { a, b, ln } of withI) {
				const share = b.part.piece.weights.coarse[j]!;
				if (share <= LEAST_NODE) continue;
				if (!world) {
					world = bothWorlds(world1, worlds2[j]!);
					if (!world) return;
					lnReadings = accounts.lnLikelihood(world);
				}
				const weight = ln + lnReadings + Math.log(a.part.piece.weights.coarse[i]! * share);
				if (!components.matters(weight)) continue;
				account ??= accounts.of(world);
				components.add(
					weight,
					account.tankMean,
					account.tankVariance,
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

/** What is in no list: shifts of any size, each in a world where everything scatters more. */
function ofUnforeseen(input: Enumeration, components: Components): void {
	const { parts, accounts, directions, places, unforeseen } = input;
	const account = accounts.of(unforeseen);
	const into = blankShifted();
	parts.forEach((part, at) => {
		if (part.fault !== UNFORESEEN || part.piece.kind !== 'shift') return;
		const { piece } = part;
		const seen = seenBy(account, directions.all[piece.direction]!);
		const { mean, variance } = piece;
		const found = integrate(account, { seen, mean, variance }, null, 0, into);
		components.add(
			part.lnOdds + piece.lnWeight + found.lnLikelihood,
			found.tankMean,
			found.tankVariance,
			places.noneOfThese,
			at,
			-1,
			-1,
			-1
		);
	});
}

const levels: readonly Level[] = ['fine', 'middle', 'coarse'];
/** A node of a grid, and which grid, as one number. */
const encodeNode = (level: Level, node: number) => node * 3 + levels.indexOf(level);
export const decodeNode = (code: number): { level: Level; node: number } => ({
	level: levels[code % 3]!,
	node: Math.floor(code / 3)
});
