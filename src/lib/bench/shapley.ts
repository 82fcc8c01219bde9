/**
 * Shares of what a set of causes does together (Shapley 1953): for each, the mean over all orders of
 * what its coming changes. They add up to value(all) − value(none).
 *
 * @param value of a set of causes, the set as bits
 * @param players how many causes there are, 0 to 20
 * @throws RangeError naming `players` when there are more sets than can be gone through
 */
export function shapleyShares(value: (set: number) => number, players: number): number[] {
	if (!Number.isInteger(players) || players < 0 || players > 20)
		throw new RangeError(`players must be a count between 0 and 20; found ${players}`);
	const factorial = [1];
	for (let n = 1; n <= players; n++) factorial.push((factorial[n - 1] ?? 1) * n);
	const whole = factorial[players] ?? 1;
	/** Orders in which exactly this set comes before the player, as a share of all. */
	const weights = Array.from(
		{ length: players },
		(_, size) => ((factorial[size] ?? 1) * (factorial[players - size - 1] ?? 1)) / whole
	);
	const shares = new Array<number>(players).fill(0);
	for (let set = 0; set < 1 << players; set++) {
		const weight = weights[bitsIn(set)];
		if (weight === undefined) continue;
		for (let i = 0; i < players; i++)
			if (!(set & (1 << i)))
				shares[i] = (shares[i] ?? 0) + weight * (value(set | (1 << i)) - value(set));
	}
	return shares;
}

function bitsIn(set: number): number {
	let count = 0;
	for (let bits = set; bits; bits &= bits - 1) count++;
	return count;
}
