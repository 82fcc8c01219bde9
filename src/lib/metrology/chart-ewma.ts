import { basisOf, ON_LIMIT, type ChartBasis, type ChartOptions } from './chart-limits';

export type EwmaOptions = ChartOptions & {
	/** Weight of the newest value, above 0 up to 1; 0.2 when left out. */
	lambda?: number;
	/** Half-width of the limits, in standard deviations of the average; 2.962 when left out. */
	width?: number;
	/** 'exact': narrower at the start, where the average has not yet had time to wander. 'steady': the same all along. */
	limits?: 'exact' | 'steady';
};

export type EwmaPoint = {
	/** From 0, in the order of the values. */
	index: number;
	value: number;
	/** Exponentially weighted moving average up to here, in the unit of the values. */
	average: number;
	lower: number;
	upper: number;
	isBeyond: boolean;
};

export type EwmaChart = ChartBasis & {
	lambda: number;
	width: number;
	points: EwmaPoint[];
	firstSignal: { index: number; direction: 'up' | 'down' } | null;
};

/**
 * Chart of the exponentially weighted moving average: sees a small lasting shift sooner than single
 * values do. It starts at the target. With λ = 0.2 and 2.962 it gives a signal once in about 500 values
 * when nothing is wrong, and after about 10 for a shift of one sigma.
 *
 * Source: Roberts 1959; Lucas and Saccucci 1990 for λ and width (from memory); limits L σ
 * √(λ/(2 − λ) (1 − (1 − λ)^2i)).
 *
 * @param values in the order of time, at least 3 (1 where target and sigma are given)
 * @throws RangeError as `individualsChart`, and for λ or a width out of range
 */
export function ewmaChart(
	values: readonly number[],
	{ lambda = 0.2, width = 2.962, limits = 'exact', ...options }: EwmaOptions = {}
): EwmaChart {
	if (!(lambda > 0 && lambda <= 1))
		throw new RangeError(`lambda must be above 0 and at most 1; found ${lambda}`);
	if (!(width > 0 && Number.isFinite(width)))
		throw new RangeError(`width must be above 0; found ${width}`);
	const basis = basisOf(values, options, 'ewmaChart');
	const { target, sigma } = basis;
	let average = target;
	const points = values.map((value, index): EwmaPoint => {
		average = lambda * value + (1 - lambda) * average;
		const reached = limits === 'steady' ? 1 : 1 - (1 - lambda) ** (2 * (index + 1));
		const half = width * sigma * Math.sqrt((lambda / (2 - lambda)) * reached);
		const [lower, upper] = [target - half, target + half];
		const isBeyond = Math.abs(average - target) > half + ON_LIMIT * sigma;
		return { index, value, average, lower, upper, isBeyond };
	});
	const first = points.find(({ isBeyond }) => isBeyond);
	return {
		...basis,
		lambda,
		width,
		points,
		firstSignal: first
			? { index: first.index, direction: first.average > target ? 'up' : 'down' }
			: null
	};
}
