/**
 * Accounts of what happened, thousands of them, in columns: ln of each one's weight, its belief about
 * the tank's value, and which pieces it is made of (to be looked at again for the checks). What is far
 * below the heaviest is left out: each is below e⁻²⁰ of it, so that even a hundred thousand of them
 * come to less than three in ten thousand.
 */
export class Components {
	static readonly LEFT_OUT_BELOW = -20;

	length = 0;
	heaviest = Number.NEGATIVE_INFINITY;
	lnWeight = new Float64Array(4096);
	tankMean = new Float64Array(4096);
	tankVariance = new Float64Array(4096);
	/** Place of the explanation, of the two parts, and of the node in each (−1 for none). */
	explanation = new Int32Array(4096);
	part1 = new Int32Array(4096);
	part2 = new Int32Array(4096);
	node1 = new Int16Array(4096);
	node2 = new Int16Array(4096);
	/** Place of the part that stands behind it (−1 for none). */
	behind = new Int32Array(4096);

	#grow(): void {
		const longer = <T extends Float64Array | Int32Array | Int16Array>(column: T, empty: T): T => {
			empty.set(column as never);
			return empty;
		};
		const room = 2 * this.lnWeight.length;
		this.lnWeight = longer(this.lnWeight, new Float64Array(room));
		this.tankMean = longer(this.tankMean, new Float64Array(room));
		this.tankVariance = longer(this.tankVariance, new Float64Array(room));
		this.explanation = longer(this.explanation, new Int32Array(room));
		this.part1 = longer(this.part1, new Int32Array(room));
		this.part2 = longer(this.part2, new Int32Array(room));
		this.node1 = longer(this.node1, new Int16Array(room));
		this.node2 = longer(this.node2, new Int16Array(room));
		this.behind = longer(this.behind, new Int32Array(room));
	}

	/** Whether an account of this weight would be kept. */
	matters(lnWeight: number): boolean {
		return lnWeight + this.#lnBehind > this.heaviest + Components.LEFT_OUT_BELOW;
	}

	/** What an account must weigh to be kept, less a trace for rounding. */
	get least(): number {
		return this.heaviest + Components.LEFT_OUT_BELOW - this.#lnBehind - 1e-9;
	}

	#lnBehind = 0;
	#behind = -1;

	/** Everything added meanwhile has so much more weight, and stands before that part. */
	withAll(lnWeight: number, part: number, add: () => void): void {
		this.#lnBehind = lnWeight;
		this.#behind = part;
		add();
		this.#lnBehind = 0;
		this.#behind = -1;
	}

	add(
		lnWeight: number,
		tank: { tankMean: number; tankVariance: number },
		explanation: number,
		part1: number,
		node1: number,
		part2: number,
		node2: number
	): void {
		if (!this.matters(lnWeight)) return;
		const whole = lnWeight + this.#lnBehind;
		if (whole > this.heaviest) this.heaviest = whole;
		if (this.length === this.lnWeight.length) this.#grow();
		const at = this.length++;
		this.lnWeight[at] = whole;
		this.tankMean[at] = tank.tankMean;
		this.tankVariance[at] = tank.tankVariance;
		this.explanation[at] = explanation;
		this.part1[at] = part1;
		this.part2[at] = part2;
		this.node1[at] = node1;
		this.node2[at] = node2;
		this.behind[at] = this.#behind;
	}

	/** Weights that sum to 1. */
	weights(): Float64Array {
		const weights = new Float64Array(this.length);
		let sum = 0;
		for (let i = 0; i < this.length; i++) {
			weights[i] = Math.exp(this.lnWeight[i]! - this.heaviest);
			sum += weights[i]!;
		}
		for (let i = 0; i < this.length; i++) weights[i]! /= sum;
		return weights;
	}
}
