import type { Slip, SlipKind } from '../observation';
import { accountOf, endOf, reportedOf, type Account, type Declared } from './account';
import { mends, worldFaults, type WorldFault } from './mend';
import type { BenchState } from './state';

export type LedgerLine =
	| { id: string; kind: 'slip'; slip: Slip; amountDkh: number }
	| { id: WorldFault; kind: 'world'; amountDkh: number }
	/** What the exact stop and an unrounded mark would have changed: scatter, not a mistake. */
	| { id: 'resolution'; kind: 'resolution'; amountDkh: number }
	/** What this kit makes of this water with clean hands, over the truth. */
	| { id: 'method'; kind: 'method'; amountDkh: number }
	/** What the account cannot explain. */
	| { id: 'unnamed'; kind: 'unnamed'; amountDkh: number };

/** Where the difference between the reported and the true value went; the lines add up to it. */
export type Ledger = { reportedDkh: number; trueDkh: number; lines: LedgerLine[] };

type Player = { line: (amountDkh: number) => LedgerLine; mend: (account: Account) => Account };

/** Slips of the stop: each moves the same line of the account, so only one of them can own it. */
const stopSlips: readonly SlipKind[] = ['stoppedAtFlash', 'overshot', 'chasedColour', 'wrongLight'];

/**
 * The error ledger of a finished titration.
 *
 * v(S) is what would have been reported had only the causes in S been there, the policy of the hands
 * held fixed. Each cause gets its Shapley share of v(all) − v(none) (Shapley 1953): the mean, over
 * all orders of mending, of what mending it changed. Then
 * reported − true = unnamed + Σ shares + method, to the last digit.
 *
 * @param slips those found in the log; one of a kind counts
 */
export function ledgerOf(state: BenchState, declared: Declared, slips: readonly Slip[]): Ledger {
	const held = heldSlips(slips);
	const account = accountOf(state, declared, held);
	const players = playersOf(account, held);
	const value = valueOfWorlds(account, players);
	const all = (1 << players.length) - 1;
	const trueDkh = state.truth.water.alkalinityDkh;
	const lines = players.map((player, i) => player.line(shapleyShare(value, players.length, i)));
	return {
		reportedDkh: declared.value,
		trueDkh,
		lines: [
			...lines,
			{ id: 'method', kind: 'method', amountDkh: value(0) - trueDkh },
			{ id: 'unnamed', kind: 'unnamed', amountDkh: declared.value - value(all) }
		]
	};
}

/** One slip of each kind, none that was put right again, and one owner of the stop. */
function heldSlips(slips: readonly Slip[]): Slip[] {
	const kinds = new Set<SlipKind>();
	return slips.filter((slip) => {
		if (slip.provisional || kinds.has(slip.kind)) return false;
		if (stopSlips.includes(slip.kind) && stopSlips.some((kind) => kinds.has(kind))) return false;
		kinds.add(slip.kind);
		return true;
	});
}

function playersOf(account: Account, slips: readonly Slip[]): Player[] {
	const stopIsOwned = slips.some((slip) => stopSlips.includes(slip.kind));
	return [
		...slips.map((slip): Player => {
			return {
				line: (amountDkh) => ({ id: `slip-${slip.kind}`, kind: 'slip', slip, amountDkh }),
				mend: mends[slip.kind]
			};
		}),
		...worldFaults
			.filter((fault) => fault.isThere(account))
			.map((fault): Player => {
				return {
					line: (amountDkh) => ({ id: fault.id, kind: 'world', amountDkh }),
					mend: fault.mend
				};
			}),
		{
			line: (amountDkh) => ({ id: 'resolution', kind: 'resolution', amountDkh }),
			mend: (each) => ({
				...each,
				// Half a drop past the end is what the leaflet's conversion reckons with.
				lagMl: stopIsOwned ? each.lagMl : each.kit.delivery.dropMl / 2,
				readOff: { ...each.readOff, rounding: 0 },
				dropFactors: { ...each.dropFactors, chance: 1 }
			})
		}
	];
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
		const { sample, doses, ...rest } = world.chemistry;
		const key = JSON.stringify([
			sample,
			doses,
			rest.indicatorFactor,
			rest.titrantMolPerL,
			rest.carbonKept,
			rest.grainsMol
		]);
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

/** Mean of what player `i` changes over all orders in which the others may have come before. */
function shapleyShare(value: (set: number) => number, players: number, i: number): number {
	const factorial = [1];
	for (let n = 1; n <= players; n++) factorial.push((factorial[n - 1] ?? 1) * n);
	let share = 0;
	for (let set = 0; set < 1 << players; set++) {
		if (set & (1 << i)) continue;
		let size = 0;
		for (let bits = set; bits; bits &= bits - 1) size++;
		const weight =
			((factorial[size] ?? 1) * (factorial[players - size - 1] ?? 1)) / (factorial[players] ?? 1);
		share += weight * (value(set | (1 << i)) - value(set));
	}
	return share;
}
