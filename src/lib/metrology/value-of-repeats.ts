import { normalCdf, normalDensity } from './distributions';

/** A normal belief about a value. */
export type NormalBelief = { mean: number; sd: number };

function requireBelief({ mean, sd }: NormalBelief, name: string): void {
	if (!Number.isFinite(mean)) throw new RangeError(`${name}.mean must be a number; found ${mean}`);
	if (!(sd > 0 && Number.isFinite(sd)))
		throw new RangeError(`${name}.sd must be above 0; found ${sd}`);
}

/**
 * Two normal beliefs about one value, independent of each other, as one: weights 1/sd².
 * Source: textbook (conjugate normal); order does not matter.
 */
export function combineNormal(a: NormalBelief, b: NormalBelief): NormalBelief {
	requireBelief(a, 'a');
	requireBelief(b, 'b');
	const [wa, wb] = [a.sd ** -2, b.sd ** -2];
	return { mean: (a.mean * wa + b.mean * wb) / (wa + wb), sd: (wa + wb) ** -0.5 };
}

export type RepeatValueInput = {
	/** What is believed of the value now. */
	belief: NormalBelief;
	/** One acts on one side of this and leaves it on the other. */
	threshold: number;
	/** Scatter of one repeat. */
	repeatabilitySd: number;
	/** What all repeats share (ware, lot, habit), as a standard deviation; 0 when left out. */
	sharedSd?: number;
	/** Loss per unit by which the value lies on the wrong side; 1 when left out. */
	lossPerUnit?: number;
};

export type RepeatValue = {
	/** Expected loss of deciding now: what knowing the value exactly would save. */
	perfect: number;
	/** What so many repeats are expected to save, before they cost anything. */
	sample: number;
	/** What one more after them would save besides: worth it while that is above what a repeat costs. */
	next: number;
};

/** Expected saving, when the belief's mean will come to lie about its present one with this sd. */
function savingOf(distance: number, sd: number): number {
	if (sd === 0) return 0;
	const z = distance / sd;
	// Many sds away the two terms are alike but for rounding.
	return Math.max(0, sd * (normalDensity(z) - z * normalCdf(-z)));
}

/**
 * Are repeats worth it? Expected value of the information in n repeats for a choice between two
 * actions, with a loss in proportion to how far the value lies on the wrong side. Hardly ever above what a
 * repeat costs once what all repeats share outweighs their scatter.
 *
 * Source: Raiffa and Schlaifer 1961, linear loss and normal prior (from memory): K s (φ(z) − z Φ(−z)), z
 * = |m − T|/s, s the prior's sd, or for n repeats s0²/√(s0² + u²).
 *
 * @param n how many repeats, from 0
 * @returns in the unit of the loss
 * @throws RangeError naming the field out of range
 */
export function evsiOfRepeats(input: RepeatValueInput, n: number): RepeatValue {
	const { belief, threshold, repeatabilitySd, sharedSd = 0, lossPerUnit = 1 } = input;
	requireBelief(belief, 'belief');
	if (!Number.isFinite(threshold))
		throw new RangeError(`threshold must be a number; found ${threshold}`);
	if (!(repeatabilitySd > 0 && Number.isFinite(repeatabilitySd)))
		throw new RangeError(`repeatabilitySd must be above 0; found ${repeatabilitySd}`);
	for (const [field, value] of [
		['sharedSd', sharedSd],
		['lossPerUnit', lossPerUnit]
	] as const)
		if (!(value >= 0 && Number.isFinite(value)))
			throw new RangeError(`${field} must be 0 or above; found ${value}`);
	if (!(Number.isInteger(n) && n >= 0))
		throw new RangeError(`n must be a whole number from 0; found ${n}`);
	const distance = Math.abs(belief.mean - threshold);
	const ofRepeats = (count: number) => {
		if (count === 0) return 0;
		const variance = sharedSd ** 2 + repeatabilitySd ** 2 / count;
		const moves = belief.sd ** 2 / Math.sqrt(belief.sd ** 2 + variance);
		return lossPerUnit * savingOf(distance, moves);
	};
	return {
		perfect: lossPerUnit * savingOf(distance, belief.sd),
		sample: ofRepeats(n),
		next: Math.max(0, ofRepeats(n + 1) - ofRepeats(n))
	};
}
