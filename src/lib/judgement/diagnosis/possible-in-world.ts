import type { Analysis } from './analysis';
import { decodeNode } from './enumeration';
import { solveLower } from './cholesky';
import { seenBy, type Account } from './gaussian';
import { bothWorlds, ordinaryWorld, readingCovariance, type World } from './model';
import type { Part } from './parts';
import type { Sized } from './shifts';
import { slippedWorld } from './unforeseen';

/** The possible tests as the account of a world sees them, before any shift. */
export type PossibleSeen = {
	account: Account;
	whitened: Float64Array[];
	mean: Float64Array;
	/** Covariance with each other, one row for each test, lower triangle. */
	covariance: Float64Array;
	/** Covariance with the tank's value. */
	withTank: Float64Array;
};

function worldOf(analysis: Analysis, part: number, code: number): World {
	const piece = analysis.parts[part]?.piece;
	if (code < 0 || piece?.kind !== 'worlds') return ordinaryWorld;
	const { level, node } = decodeNode(code);
	const family = analysis.families.all[piece.family]!;
	return family.worldAt(family.levels[level][node]!, piece.mask);
}

/** The world of an account: of both its parts, and of what stands behind them. */
export function worldOfAccount(analysis: Analysis, place: number): World {
	const { components, model, directions, water, parts } = analysis;
	const behind = parts[components.behind[place]!];
	const ofParts = bothWorlds(
		worldOf(analysis, components.part1[place]!, components.node1[place]!),
		worldOf(analysis, components.part2[place]!, components.node2[place]!)
	);
	const ofBehind = behind ? slippedWorld(model, directions, water, behind) : ordinaryWorld;
	return bothWorlds(ofParts ?? ordinaryWorld, ofBehind) ?? ordinaryWorld;
}

/** What the possible tests are in a world, as far as the readings tell. */
export function possibleIn(analysis: Analysis, world: World): PossibleSeen {
	const { model, accounts } = analysis;
	const { count: n, size } = model;
	const account = accounts.of(world);
	const mean = new Float64Array(size - n);
	const whitened = Array.from({ length: size - n }, (_, g) => {
		const j = n + g;
		const column = new Float64Array(n);
		for (let i = 0; i < n; i++) column[i] = readingCovariance(model, world, i, j);
		solveLower(account.factor, n, column);
		let sum =
			model.shift[j]! +
			(world.factor?.[j] ?? 1) * model.amountMean[j]! +
			(world.other?.mean[j] ?? 0);
		for (let i = 0; i < n; i++) sum += column[i]! * account.whitened[i]!;
		mean[g] = sum;
		return column;
	});
	const tests = size - n;
	const covariance = new Float64Array(tests * tests);
	const withTank = new Float64Array(tests);
	for (let g = 0; g < tests; g++) {
		withTank[g] =
			(world.factor?.[n + g] ?? 1) * model.withTank[n + g]! - dot(account.withTank, whitened[g]!);
		for (let k = 0; k <= g; k++)
			covariance[g * tests + k] =
				readingCovariance(model, world, n + g, n + k) - dot(whitened[g]!, whitened[k]!);
	}
	return { account, whitened, mean, covariance, withTank };
}

export const dot = (a: Float64Array, b: Float64Array) => {
	let sum = 0;
	for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
	return sum;
};

/** A shift as far as the possible tests are concerned. */
export type Effect = { sized: Sized; on: Float64Array };

/** A shift of an account: how large, and what it leaves on each possible test. */
export function effectOf(
	analysis: Analysis,
	part: Part | undefined,
	possible: PossibleSeen
): Effect | null {
	if (part?.piece.kind !== 'shift') return null;
	const { model, directions } = analysis;
	const { piece } = part;
	const direction = directions.all[piece.direction]!;
	const seen = seenBy(possible.account, direction);
	const { factor } = possible.account.world;
	const on = Float64Array.from(possible.whitened, (whitened, g) => {
		const j = model.count + g;
		const stretch = direction.isInVial && factor ? factor[j]! : 1;
		return direction.shift[j]! * stretch - dot(whitened, seen.whitened);
	});
	return { sized: { seen, mean: piece.mean, variance: piece.variance }, on };
}
