import type { CueEvidence } from './cue-likelihood';
import type { Directions } from './directions';
import type { Families, Level } from './families';
import { seenBy, type Account, type Accounts, type Seen } from './gaussian';
import { bothWorlds, ordinaryWorld, type World } from './model';
import type { ExplanationPlaces, Part } from './parts';
import type { Sized } from './shifts';

/** What is enumerated, and what is needed for it. */
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
	/** The world in which a part that is no fault of the test in question has happened besides. */
	besides: (part: Part) => World;
};

type Placed<TPart> = { part: TPart; at: number };
/** A part that shifts readings, and its place among the parts. */
export type ShiftPart = Placed<Part & { piece: { kind: 'shift' } }>;
/** A part that makes worlds of its own. */
export type WorldsPart = Placed<Part & { piece: { kind: 'worlds' } }>;

/** What stands behind all accounts of one pass: a world, and the place of the part that made it (−1: nothing). */
export type Background = { world: World; part: number };
export const nothingBehind: Background = { world: ordinaryWorld, part: -1 };

/** A world before a background; null where both put readings right. */
export const before = (world: World, background: Background): World | null =>
	background.part < 0 ? world : bothWorlds(world, background.world);

/** ln of what a part has before the readings speak. */
export const lnOfOne = ({ cues }: Enumeration, { fault, lnOdds, piece }: Part): number =>
	lnOdds + piece.lnWeight + (fault < 0 ? 0 : cues.ofOne(fault));

/** The same of two parts; null where they cannot go together. */
export function lnOfTwo(input: Enumeration, one: Part, two: Part): number | null {
	const together = input.lnTogether(one, two);
	if (together === null) return null;
	if (one.fault < 0 || two.fault < 0) return together + lnOfOne(input, one) + lnOfOne(input, two);
	return (
		together +
		input.cues.ofTwo(one.fault, two.fault) +
		one.lnOdds +
		two.lnOdds +
		one.piece.lnWeight +
		two.piece.lnWeight
	);
}

/** All directions as an account sees them; `into` as in `seenBy`. */
export const seenAll = (account: Account, { all }: Directions, into?: Float64Array): Seen[] =>
	all.map((direction) => seenBy(account, direction, into));

export const sizedOf = ({ part: { piece } }: ShiftPart, seen: readonly Seen[]): Sized => ({
	seen: seen[piece.direction]!,
	mean: piece.mean,
	variance: piece.variance
});

const levels: readonly Level[] = ['fine', 'middle', 'coarse'];
/** A node of a grid, and which grid, as one number. */
export const encodeNode = (level: Level, node: number) => node * 3 + levels.indexOf(level);
export const decodeNode = (code: number): { level: Level; node: number } => ({
	level: levels[code % 3]!,
	node: Math.floor(code / 3)
});
