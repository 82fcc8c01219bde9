import type { Analyte, Unit } from '../kits';
import type { Slip, SlipKind } from '../observation';
import type { Account } from './account';
import { accountOf, type Declared } from './open-account';
import {
	canMove,
	familyOf,
	hasOneWay,
	mends,
	scatter,
	worldFaults,
	type Mend,
	type WorldFault
} from './mend';
import { endOf, reportedOf, travelOf, valuePerMlOf } from './reported';
import { shapleyShares } from './shapley';
import type { BenchState } from './state';
import { trueValueOf } from './true-value';

export type LedgerLine =
	| { id: string; kind: 'slip'; slip: Slip; amount: number }
	| { id: WorldFault; kind: 'world'; amount: number }
	/** What the exact stop, fill and mark would have changed. */
	| { id: 'resolution'; kind: 'resolution'; amount: number }
	/**
	 * A stop more than a drop from where the leaflet has it, for which no slip can be named: what the eye
	 * took for the end.
	 */
	| { id: 'eye'; kind: 'eye'; stop: 'late' | 'early'; amount: number }
	/** What this kit makes of this water with clean hands, over the truth. */
	| { id: 'method'; kind: 'method'; amount: number }
	/** What the account cannot explain. */
	| { id: 'unnamed'; kind: 'unnamed'; amount: number };

/** In the kit's unit: where the difference between the reported and the true value went; the lines add up to it. */
export type Ledger = {
	reported: number;
	trueValue: number;
	unit: Unit;
	analyte: Analyte;
	lines: LedgerLine[];
};

type Player = { line: (amount: number) => LedgerLine; mend: Mend };

/**
 * The error ledger of a finished titration.
 *
 * v(S) is what would have been reported had only the causes in S been there, the policy of the hands
 * held fixed. Each cause gets its Shapley share of v(all) − v(none) (Shapley 1953): the mean, over
 * all orders of mending, of what mending it changed. Then
 * reported − true = unnamed + Σ shares + method, to the last digit.
 *
 * Of slips that move the same thing one owns all of it; one that cannot have moved it this way has a line of
 * nothing.
 *
 * @param slips those found in the log; one of a kind counts
 */
export function ledgerOf(state: BenchState, declared: Declared, slips: readonly Slip[]): Ledger {
	const made = firmSlips(slips);
	const whole = accountOf(state, declared, made);
	const able = made.filter(({ kind }) => !hasOneWay(kind) || canMove(kind, movedMl(whole, kind)));
	const held = able.filter(({ kind }) => ownerOf(kind, able) === kind);
	const { account, small } = explained(whole, held);
	const players = playersOf(account, held, small);
	const value = valueOfWorlds(account, players);
	const all = (1 << players.length) - 1;
	const trueValue = trueValueOf(state.truth.water, state.kit);
	const shares = shapleyShares(value, players.length);
	const lines = players.map((player, i) => player.line(shares[i] ?? 0));
	return {
		reported: declared.value,
		trueValue,
		unit: state.kit.unit,
		analyte: state.kit.analyte,
		lines: [
			...lines,
			...made.filter((slip) => !able.includes(slip)).map((slip) => lineOfSlip(slip, 0)),
			{ id: 'method', kind: 'method', amount: value(0) - trueValue },
			{ id: 'unnamed', kind: 'unnamed', amount: declared.value - value(all) }
		]
	};
}

/** The first slip of each kind, none that was put right again. */
function firmSlips(slips: readonly Slip[]): Slip[] {
	const firm = slips.filter((slip) => !slip.provisional);
	return firm.filter((slip, i) => firm.findIndex((other) => other.kind === slip.kind) === i);
}

/** The slip to which all of its family's deviation falls. */
const ownerOf = (of: SlipKind, slips: readonly Slip[]): SlipKind | undefined =>
	familyOf(of).find((kind) => slips.some((slip) => slip.kind === kind));

/** Titrant counted over what it would have been without one slip, mL; 0 where there is no end to see. */
function movedMl(account: Account, kind: SlipKind): number {
	const mended = mends[kind](account);
	const [endMl, mendedEndMl] = [endOf(account), endOf(mended)];
	if (endMl === null || mendedEndMl === null) return 0;
	return travelOf(account, endMl) - travelOf(mended, mendedEndMl);
}

const lineOfSlip = (slip: Slip, amount: number): LedgerLine => ({
	id: `slip-${slip.kind}`,
	kind: 'slip',
	slip,
	amount
});

/**
 * Parts the deviations that no slip names: what is below a graduation or a drop is scatter; anything
 * larger is taken out of the account and so comes to stand as unnamed.
 */
function explained(account: Account, held: readonly Slip[]): { account: Account; small: Mend[] } {
	const owned = new Set(held.flatMap((slip) => familyOf(slip.kind)));
	const { delivery } = account.kit;
	const fineMl = Math.max(delivery.dropMl, delivery.by === 'dropper' ? 0 : delivery.graduationMl);
	const limit = fineMl * valuePerMlOf(account);
	const small: Mend[] = [];
	let named = account;
	for (const { kind, mend } of scatter) {
		const isWorld = worldFaults.some(
			(fault) => kind !== undefined && fault.ownedBy === kind && fault.isThere(account)
		);
		if (isWorld || (kind !== undefined && owned.has(kind))) continue;
		const mended = mend(named);
		const end = endOf(named);
		const mendedEnd = mended.chemistry === named.chemistry ? end : endOf(mended);
		const effect = reportedOf(mended, mendedEnd) - reportedOf(named, end);
		if (Math.abs(effect) <= limit) small.push(mend);
		else named = mended;
	}
	return { account: named, small };
}

function playersOf(account: Account, slips: readonly Slip[], small: readonly Mend[]): Player[] {
	const kinds = new Set(slips.map((slip) => slip.kind));
	const { dropMl } = account.kit.delivery;
	const faults = worldFaults.filter(
		(fault) => fault.isThere(account) && !(fault.ownedBy && kinds.has(fault.ownedBy))
	);
	const stopIsOwned =
		familyOf('overshot').some((kind) => kinds.has(kind)) ||
		faults.some((fault) => fault.id === 'stickySeal');
	const lateMl = account.lagMl - dropMl / 2;
	const isFarOff = !stopIsOwned && Math.abs(lateMl) > dropMl;
	const players = slips.map((slip): Player => ({
		line: (amount) => lineOfSlip(slip, amount),
		mend: mends[slip.kind]
	}));
	for (const { id, mend } of faults)
		players.push({ line: (amount) => ({ id, kind: 'world', amount }), mend });
	if (isFarOff)
		players.push({
			line: (amount) => ({ id: 'eye', kind: 'eye', stop: lateMl > 0 ? 'late' : 'early', amount }),
			mend: mends.overshot
		});
	const fine = stopIsOwned || isFarOff ? small : [...small, mends.overshot];
	players.push({
		line: (amount) => ({ id: 'resolution', kind: 'resolution', amount }),
		mend: (each) => fine.reduce((world, mend) => mend(world), each)
	});
	return players;
}

/**
 * v(S) for every set of causes, S as bits. Chemistry depends on few of them, so the end volume is
 * found once for each of its own worlds and the rest is sums.
 */
function valueOfWorlds(account: Account, players: readonly Player[]): (set: number) => number {
	const values = new Map<number, number>();
	const ends = new Map<string, number | null>();
	return (set) => {
		const known = values.get(set);
		if (known !== undefined) return known;
		const world = players.reduce(
			(each, player, i) => (set & (1 << i) ? each : player.mend(each)),
			account
		);
		const key = JSON.stringify(world.chemistry);
		let end = ends.get(key);
		if (end === undefined) {
			end = endOf(world);
			ends.set(key, end);
		}
		const value = reportedOf(world, end);
		values.set(set, value);
		return value;
	};
}
