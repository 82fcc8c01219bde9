import { studentTQuantile } from './distributions';

/** A range that holds the true value with the confidence asked for. */
export type Interval = { low: number; high: number };

/** @throws RangeError unless the confidence lies between 0 and 1, both left out */
export function requireConfidence(confidence: number): void {
	if (!(confidence > 0 && confidence < 1))
		throw new RangeError(`confidence must lie between 0 and 1; found ${confidence}`);
}

/** Two-sided Student interval. With infinite degrees of freedom, the normal one. */
export function intervalAbout(
	middle: number,
	standardError: number,
	degreesOfFreedom: number,
	confidence: number
): Interval {
	requireConfidence(confidence);
	const half = studentTQuantile((1 + confidence) / 2, degreesOfFreedom) * standardError;
	return { low: middle - half, high: middle + half };
}

export const holds = ({ low, high }: Interval, value: number): boolean =>
	low <= value && value <= high;
