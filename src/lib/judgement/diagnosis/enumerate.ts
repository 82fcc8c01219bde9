import { Components } from './components';
import { enumerateShifts, enumerateTwoShifts, enumerateUnforeseen } from './enumerate-shifts';
import { enumerateTwoWorlds } from './enumerate-two-worlds';
import { accountsBefore, enumerateWorlds, enumerateWorldsWithShifts } from './enumerate-worlds';
import {
	nothingBehind,
	type Background,
	type Enumeration,
	type ShiftPart,
	type WorldsPart
} from './enumeration';
import { lnLikelihood } from './gaussian';
import { ordinaryWorld } from './model';
import { BESIDES, UNFORESEEN, type Part } from './parts';

/** What has happened besides with odds above this is set behind all pairs of faults, and no more than so many. */
const WORTH_A_PASS = 0.3;
const MOST_PASSES = 2;

type Pieces = { shifts: ShiftPart[]; besides: ShiftPart[]; worlds: WorldsPart[] };

function sorted(parts: readonly Part[]): Pieces {
	const found: Pieces = { shifts: [], besides: [], worlds: [] };
	parts.forEach((part, at) => {
		if (part.fault === UNFORESEEN) return;
		if (part.piece.kind === 'worlds') found.worlds.push({ part, at } as WorldsPart);
		else if (part.fault === BESIDES) found.besides.push({ part, at } as ShiftPart);
		else found.shifts.push({ part, at } as ShiftPart);
	});
	return found;
}

/**
 * Every account of what happened, with its weight: no fault, one or two, each with at most one thing
 * that happened besides and is no fault of the test in question.
 *
 * Pairs of faults are so many that what happened besides is looked at with each only where it is
 * likely; anything else that may have happened besides is as likely with a pair as with that one of its
 * faults which leaves less of it to be explained.
 */
export function enumerate(input: Enumeration): Components {
	const { accounts, places } = input;
	const components = new Components();
	const { shifts, besides, worlds } = sorted(input.parts);
	const ordinary = accounts.of(ordinaryWorld);
	components.add(lnLikelihood(ordinary), ordinary, places.none, -1, -1, -1, -1);
	enumerateShifts(input, [...shifts, ...besides], components);
	const accountAt = accountsBefore(input, nothingBehind);
	enumerateWorlds(input, worlds, accountAt, components);
	enumerateShiftsBesides(input, shifts, besides, components);
	enumerateWorldsWithShifts(input, worlds, besides, accountAt, components);
	enumerateUnforeseen(input, components);

	const { passes, restBesides } = whatIsBesides(input, components, besides);
	const lnTogether = (one: Part, two: Part) => {
		const ln = input.lnTogether(one, two);
		return ln === null ? null : ln + Math.log(1 + restBesides(one.fault, two.fault));
	};
	const withRest = { ...input, lnTogether };
	enumerateTwoShifts(withRest, shifts, nothingBehind, components);
	enumerateWorldsWithShifts(withRest, worlds, shifts, accountAt, components);
	enumerateTwoWorlds(withRest, worlds, nothingBehind, components);
	for (const { background, lnOdds } of passes)
		components.withAll(lnOdds, background.part, () => {
			enumerateTwoShifts(input, shifts, background, components);
			const behind = accountsBefore(input, background);
			enumerateWorldsWithShifts(input, worlds, shifts, behind, components);
			enumerateTwoWorlds(input, worlds, background, components);
		});
	return components;
}

/** Single shifts with what happened besides. */
function enumerateShiftsBesides(
	input: Enumeration,
	shifts: readonly ShiftPart[],
	besides: readonly ShiftPart[],
	components: Components
): void {
	const isBesides = ({ fault }: Part) => fault === BESIDES;
	// Pairs of faults have their turn later.
	const lnTogether = (one: Part, two: Part) =>
		isBesides(one) === isBesides(two) ? null : input.lnTogether(one, two);
	enumerateTwoShifts({ ...input, lnTogether }, [...shifts, ...besides], nothingBehind, components);
}

type Besides = {
	passes: { background: Background; lnOdds: number }[];
	/** Odds that something else happened besides a pair of faults. */
	restBesides: (one: number, two: number) => number;
};

/** How likely each thing is to have happened besides, by single faults and none. */
function whatIsBesides(
	{ parts, besides: worldOf, places }: Enumeration,
	components: Components,
	besides: readonly ShiftPart[]
): Besides {
	const weights = components.weights();
	const without = new Float64Array(places.count);
	const byPart = new Map(besides.map(({ at }) => [at, new Float64Array(places.count)]));
	for (let i = 0; i < components.length; i++) {
		const ofPart = byPart.get(components.part2[i]!) ?? byPart.get(components.part1[i]!);
		(ofPart ?? without)[components.explanation[i]!]! += weights[i]!;
	}
	const sum = (each: Float64Array) => each.reduce((total, weight) => total + weight, 0);
	const passed = besides
		.map((each) => ({ ...each, odds: sum(byPart.get(each.at)!) / Math.max(sum(without), 1e-12) }))
		.sort((a, b) => b.odds - a.odds || a.at - b.at)
		.filter(({ odds }) => odds > WORTH_A_PASS)
		.slice(0, MOST_PASSES);
	const rest = besides.filter(({ at }) => !passed.some((each) => each.at === at));
	// Odds of each thing by fault: one row for each of the things that get no pass of their own.
	const oddsOf = rest.map(({ at }) =>
		Float64Array.from({ length: places.faults }, (_, fault) => {
			const place = places.one(fault);
			return Math.min(1, byPart.get(at)![place]! / Math.max(without[place]!, 1e-12));
		})
	);
	return {
		passes: passed.map(({ at }) => ({
			background: { world: worldOf(parts[at]!), part: at },
			lnOdds: parts[at]!.lnOdds
		})),
		restBesides: (one, two) =>
			oddsOf.reduce((total, odds) => total + Math.min(odds[one]!, odds[two]!), 0)
	};
}
