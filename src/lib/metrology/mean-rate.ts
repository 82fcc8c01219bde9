import { studentTQuantile } from './distributions';

export type RatePoint = {
	/** Time, days, from any zero. */
	day: number;
	value: number;
	/** Scatter of this value; what all points share does not bend a slope and is left out. */
	standardUncertainty: number;
};

export type MeanRate = {
	/** Change per day, in the unit of the values. */
	perDay: number;
	standardUncertainty: number;
	/** About 95 %. */
	expandedUncertainty: number;
	/** Points about the line, over what their uncertainties allow; 1 is as expected, above 2 no line. */
	scatterRatio: number | null;
	/** Value of the line at day 0. */
	atZero: number;
	n: number;
};

/**
 * Mean change per day: weighted straight line, weights 1/u². Where the points scatter more than their
 * own uncertainties allow, that scatter counts (Birge ratio), with Student's t for n − 2.
 *
 * Source: least squares with weights (any textbook); ratio after Birge 1932 (from memory).
 *
 * @param points at least two, on different days, each with an uncertainty above 0
 * @returns null for fewer than two days
 * @throws RangeError naming the field of a point that is no number
 */
export function meanRate(points: readonly RatePoint[]): MeanRate | null {
	for (const { day, value, standardUncertainty } of points) {
		if (!Number.isFinite(day)) throw new RangeError(`day must be a number; found ${day}`);
		if (!Number.isFinite(value)) throw new RangeError(`value must be a number; found ${value}`);
		if (!(standardUncertainty > 0 && Number.isFinite(standardUncertainty)))
			throw new RangeError(`standardUncertainty must be above 0; found ${standardUncertainty}`);
	}
	const n = points.length;
	if (new Set(points.map(({ day }) => day)).size < 2) return null;
	const weights = points.map(({ standardUncertainty }) => standardUncertainty ** -2);
	const sumOf = (of: (point: RatePoint) => number) =>
		points.reduce((sum, point, i) => sum + (weights[i] ?? 0) * of(point), 0);
	const total = sumOf(() => 1);
	const middleDay = sumOf(({ day }) => day) / total;
	const middleValue = sumOf(({ value }) => value) / total;
	const spread = sumOf(({ day }) => (day - middleDay) ** 2);
	const perDay = sumOf(({ day, value }) => (day - middleDay) * (value - middleValue)) / spread;
	const off = ({ day, value }: RatePoint) => value - middleValue - perDay * (day - middleDay);
	const scatterRatio = n > 2 ? Math.sqrt(sumOf((point) => off(point) ** 2) / (n - 2)) : null;
	const inflated = scatterRatio !== null && scatterRatio > 1;
	const standardUncertainty = (inflated ? scatterRatio : 1) / Math.sqrt(spread);
	const t = studentTQuantile(0.975, inflated ? n - 2 : Number.POSITIVE_INFINITY);
	return {
		perDay,
		standardUncertainty,
		expandedUncertainty: t * standardUncertainty,
		scatterRatio,
		atZero: middleValue - perDay * middleDay,
		n
	};
}
