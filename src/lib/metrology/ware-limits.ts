/**
 * Limits that ware must keep by its standard, mL. They are errors of the piece at hand: the same at
 * every test, so repeats do not shrink them; weighing does.
 */

function requireVolumes(capacityMl: number, expelledMl: number): void {
	if (!(capacityMl > 0 && Number.isFinite(capacityMl)))
		throw new RangeError(`capacityMl must be above 0; found ${capacityMl}`);
	if (!(expelledMl >= 0 && Number.isFinite(expelledMl)))
		throw new RangeError(`expelledMl must be 0 or above; found ${expelledMl}`);
}

/**
 * By how much the volume expelled from a syringe may differ from what its scale says, mL.
 *
 * From half the capacity up: 5 % of what is expelled, 4 % for 5 mL and larger. Below half: 1.5 % of
 * the capacity and 2 % of what is expelled, 1 % for 5 mL and larger. More than one filling: each has
 * its own limit, and they add, since it is the same barrel.
 *
 * Source: ISO 7886-1:2017, table 1 (some cells from memory). The standard empties a syringe from a
 * line to its end; nothing is promised between two lines of the barrel, so the same is taken for it.
 */
export function syringeLimitMl(capacityMl: number, expelledMl: number): number {
	requireVolumes(capacityMl, expelledMl);
	if (expelledMl > capacityMl)
		return (
			syringeLimitMl(capacityMl, capacityMl) + syringeLimitMl(capacityMl, expelledMl - capacityMl)
		);
	const isLarge = capacityMl >= 5;
	return expelledMl >= capacityMl / 2
		? expelledMl * (isLarge ? 0.04 : 0.05)
		: capacityMl * 0.015 + expelledMl * (isLarge ? 0.01 : 0.02);
}

/**
 * By how much the volume between any two lines of a burette may differ from what its scale says, mL.
 *
 * Source: ISO 385:2005, class B taken as twice class A: 10, 25 and 50 mL (from memory).
 */
export function buretteLimitMl(capacityMl: number): number {
	requireVolumes(capacityMl, 0);
	if (capacityMl <= 10) return 0.04;
	return capacityMl <= 25 ? 0.06 : 0.1;
}
