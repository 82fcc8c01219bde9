import { basisOf, ON_LIMIT, type ChartBasis, type ChartOptions } from './chart-limits';

export type CusumOptions = ChartOptions & {
	/** Slack, in sigmas: half of the shift to be found; 0.5 when left out. */
	k?: number;
	/** Decision limit, in sigmas; 5 when left out. */
	h?: number;
};

export type CusumPoint = {
	/** From 0, in the order of the values. */
	index: number;
	value: number;
	/** Sums of what lies above target + k and below target − k, never below 0, in the unit of the values. */
	high: number;
	low: number;
	/** For how many values up to here each has been above 0. */
	highCount: number;
	lowCount: number;
	isBeyond: boolean;
};

export type CusumSignal = {
	index: number;
	direction: 'up' | 'down';
	/** Estimate of the first value after the shift: from there on the sum has been above 0. */
	onsetIndex: number;
	/** Estimate of where the values lie since, in their unit. */
	newMean: number;
};

export type CusumChart = ChartBasis & {
	/** Slack and decision limit in the unit of the values. */
	slack: number;
	limit: number;
	points: CusumPoint[];
	firstSignal: CusumSignal | null;
};

/**
 * Tabular cumulative sum, both ways: sees a small lasting shift soonest, and says since when and how
 * much. It starts at 0 and goes on after a signal without being set back. With k = 0.5, h = 5 a signal
 * comes once in about 465 values when nothing is wrong, and after about 10 for a shift of one sigma;
 * with h = 4 once in 168 and after about 8.
 *
 * Source: Page 1954; Montgomery, Introduction to Statistical Quality Control, chapter 9: C+ = max(0, x −
 * (μ0 + K) + C+), onset N values back, new mean μ0 + K + C+/N.
 *
 * @param values in the order of time, at least 3 (1 where target and sigma are given)
 * @throws RangeError as `individualsChart`, and for k or h out of range
 */
export function cusumChart(
	values: readonly number[],
	{ k = 0.5, h = 5, ...options }: CusumOptions = {}
): CusumChart {
	if (!(k >= 0 && Number.isFinite(k))) throw new RangeError(`k must be 0 or above; found ${k}`);
	if (!(h > 0 && Number.isFinite(h))) throw new RangeError(`h must be above 0; found ${h}`);
	const basis = basisOf(values, options, 'cusumChart');
	const { target, sigma } = basis;
	const [slack, limit] = [k * sigma, h * sigma];
	// A sum left above 0 by rounding alone would count values that belong to no shift.
	const nothing = ON_LIMIT * sigma;
	const above0 = (sum: number) => (sum > nothing ? sum : 0);
	let [high, low, highCount, lowCount] = [0, 0, 0, 0];
	const points = values.map((value, index): CusumPoint => {
		high = above0(value - target - slack + high);
		low = above0(target - value - slack + low);
		highCount = high > 0 ? highCount + 1 : 0;
		lowCount = low > 0 ? lowCount + 1 : 0;
		const isBeyond = Math.max(high, low) > limit + nothing;
		return { index, value, high, low, highCount, lowCount, isBeyond };
	});
	const first = points.find(({ isBeyond }) => isBeyond);
	return {
		...basis,
		slack,
		limit,
		points,
		firstSignal: first ? signalAt(first, target, slack) : null
	};
}

function signalAt(point: CusumPoint, target: number, slack: number): CusumSignal {
	const isUp = point.high >= point.low;
	const [sum, count] = isUp ? [point.high, point.highCount] : [point.low, point.lowCount];
	const shift = slack + sum / count;
	return {
		index: point.index,
		direction: isUp ? 'up' : 'down',
		onsetIndex: point.index - count + 1,
		newMean: target + (isUp ? shift : -shift)
	};
}
