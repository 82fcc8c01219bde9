import type { MethodFigures } from './method-figures';
import { roundingCorrelation } from './rounding';

/**
 * The measurement equation of a drop titration, y = e^γ a + s b + d + m + ε, in the unit of the method.
 *
 * Everything proportional (volume of the sample, delivery, strength of the titrant) is one factor on
 * what is in the vial; a volume of titrant that comes in every test counts the less the more sample
 * there is; where the end is seen counts alike in every sample, since the excess grows with it.
 *
 * Source: textbook; constant and proportional errors as in Youden 1947 (total blank), the mean half
 * drop too much is in a leaflet's conversion and not in here.
 */
export type Effects = {
	/** γ, the natural logarithm of all proportional factors together. */
	logFactor: number;
	/** a, what is in the vial. */
	amount: number;
	/** b, mL of titrant. */
	constantMl: number;
	/** d, in the unit. */
	endPoint: number;
	/** m, offset of another method, in the unit. */
	method: number;
};

/** Value of 1 mL of titrant when the sample is so many times that of the figures. */
export function constantSensitivity(method: MethodFigures, sampleRatio = 1): number {
	if (!(sampleRatio > 0 && Number.isFinite(sampleRatio)))
		throw new RangeError(`sampleRatio must be above 0; found ${sampleRatio}`);
	return method.valuePerMl / sampleRatio;
}

/** Reading to be expected, without scatter. */
export function expectedReading(method: MethodFigures, effects: Effects, sampleRatio = 1): number {
	return (
		Math.exp(effects.logFactor) * effects.amount +
		constantSensitivity(method, sampleRatio) * effects.constantMl +
		effects.endPoint +
		effects.method
	);
}

/** How one reading scatters about what is expected. */
export type ReadingScatter = {
	/** Variance of all that falls anew, in the unit squared. */
	variance: number;
	/** The part of it that repeats on the same step share: they are cut at the same place. */
	sharedStepVariance: number;
};

/** Set to a line at the start and read at the end, a quarter of a division each; common practice, no source. */
const MARKS_IN_DIVISIONS = 0.32;

/**
 * Scatter of one test. Repeats much steadier than the last step all end on the same one and share
 * its error; how much of it is the correlation of their rounding (see `roundingCorrelation`).
 *
 * @param at the value, in the method's unit; `repeatabilitySd`, where somebody knows it from repeats or
 *   a budget, takes the place of the figures, but no scatter is smaller than the step leaves it
 */
export function readingScatter(
	method: MethodFigures,
	at: { value: number; sampleRatio?: number; repeatabilitySd?: number }
): ReadingScatter {
	const perMl = constantSensitivity(method, at.sampleRatio);
	const shrink = perMl / method.valuePerMl;
	const step = perMl * method.dropMl * method.endStepDrops;
	const stepVariance = step ** 2 / 12;
	const own =
		(shrink * method.scatterSd) ** 2 +
		(perMl * MARKS_IN_DIVISIONS * (method.graduationMl ?? 0)) ** 2 +
		(at.value * method.sampleSettingSd) ** 2;
	const restVariance =
		at.repeatabilitySd === undefined ? own : Math.max(0, at.repeatabilitySd ** 2 - stepVariance);
	return {
		variance: stepVariance + restVariance,
		sharedStepVariance: stepVariance * roundingCorrelation(Math.sqrt(restVariance) / step)
	};
}
