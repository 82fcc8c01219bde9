import { studentTQuantile, type Interval } from '$lib/metrology';

/** A number that was worked out, how well it is known, and what it must leave out to be clear. */
export type Estimate = {
	value: number;
	standardError: number;
	/** Half of the interval: what stands behind '±', about 19 times in 20. */
	plusMinus: number;
	interval: Interval;
	/** The interval leaves out what it would be if nothing were the matter. */
	isClear: boolean;
};

const CONFIDENCE = 0.95;

/**
 * @param degreesOfFreedom infinite where the standard error is not from scatter
 * @param ordinary what it would be if nothing were the matter
 */
export function estimateOf(
	value: number,
	standardError: number,
	degreesOfFreedom: number,
	ordinary: number
): Estimate {
	const plusMinus = studentTQuantile((1 + CONFIDENCE) / 2, degreesOfFreedom) * standardError;
	const interval = { low: value - plusMinus, high: value + plusMinus };
	return {
		value,
		standardError,
		plusMinus,
		interval,
		isClear: interval.low > ordinary || interval.high < ordinary
	};
}

/** Standard deviation of a number that was rounded to a step (JCGM 100:2008, F.2.2.1). */
export const roundingSd = (step: number): number => step / Math.sqrt(12);
