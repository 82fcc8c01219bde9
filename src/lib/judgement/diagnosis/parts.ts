import type { Piece } from './pieces';

/** A part that is no fault of the test in question: a slip in another test. */
export const BESIDES = -1;
/** A part that stands for what no list has. */
export const UNFORESEEN = -2;

/** A piece as a part of an account of what happened. */
export type Part = {
	/** Place of the fault, or one of the two above. */
	fault: number;
	lnOdds: number;
	piece: Piece;
};

/** Places of explanations: nothing wrong, one fault, two, and none of these. */
export class ExplanationPlaces {
	constructor(readonly faults: number) {}
	get none(): number {
		return this.#at(this.faults, this.faults);
	}
	get noneOfThese(): number {
		return (this.faults + 1) ** 2;
	}
	get count(): number {
		return (this.faults + 1) ** 2 + 1;
	}
	one(fault: number): number {
		return fault < 0 ? this.none : this.#at(fault, this.faults);
	}
	two(one: number, two: number): number {
		if (one < 0) return this.one(two);
		if (two < 0) return this.one(one);
		return this.#at(Math.min(one, two), Math.max(one, two));
	}
	/** Faults of an explanation that is not `noneOfThese`. */
	faultsAt(place: number): number[] {
		const width = this.faults + 1;
		return [Math.floor(place / width), place % width].filter((fault) => fault < this.faults);
	}
	#at(row: number, column: number): number {
		return row * (this.faults + 1) + column;
	}
}
