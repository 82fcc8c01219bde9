/** A way in which readings may be shifted; one that is in the vial is stretched by factors. */
export type Direction = { shift: Float64Array; isInVial: boolean };

/** Directions, each kept once: many faults push the same readings by different amounts. */
export class Directions {
	readonly all: Direction[] = [];
	readonly #byKey = new Map<string, number>();

	/**
	 * Place of a direction, and how many of it the shift is: shifts that differ by a factor are one
	 * direction.
	 */
	placeOf(shift: Float64Array, isInVial: boolean): { at: number; times: number } {
		const times = shift.find((each) => each !== 0) ?? 1;
		const unit = shift.map((each) => each / times);
		const key = `${isInVial} ${Float64Array.from(unit, (each) => Math.round(each * 1e9)).join(' ')}`;
		const known = this.#byKey.get(key);
		if (known !== undefined) return { at: known, times };
		this.all.push({ shift: unit, isInVial });
		this.#byKey.set(key, this.all.length - 1);
		return { at: this.all.length - 1, times };
	}
}
