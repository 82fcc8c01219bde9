import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';

export type PlotPoint = {
	x: number;
	y: number;
	/** Hollow where it does not count. */ isUsed: boolean;
};
export type PlotLine = {
	points: readonly { x: number; y: number }[];
	/** 'fit' is drawn strong, 'guide' as a hairline, 'limit' broken. */
	kind: 'fit' | 'guide' | 'limit';
};

/** Points, lines and marks against two axes, in the units of the axes. */
export type PlotData = {
	points: readonly PlotPoint[];
	lines?: readonly PlotLine[];
	/** A stretch of the horizontal axis that is laid under with a wash. */
	stretch?: { from: number; to: number };
	/** Upright lines with words. */
	marks?: readonly { x: number; words: string }[];
	/** A level line at 0. */
	hasZeroLine?: boolean;
	/** The vertical axis spans at least so much, so that next to nothing does not fill it. */
	leastSpanY?: number;
	/** Ticks of the horizontal axis are whole numbers: it counts. */
	isCounted?: boolean;
};
export type PlotSize = {
	width: number;
	height: number;
	left: number;
	right: number;
	top: number;
	bottom: number;
};
export type PlotMark = { x: number; words: string; isLeft: boolean; row: number };
export type PlotPicture = {
	points: (PlotPoint & { atX: number; atY: number })[];
	paths: { d: string; kind: PlotLine['kind'] }[];
	stretch: { x: number; width: number } | null;
	marks: PlotMark[];
	zeroY: number | null;
	xTicks: { x: number; words: string }[];
	yTicks: { y: number; words: string }[];
};

/** A domain that is never empty, widened about its middle to at least `leastSpan`. */
function domainOf(values: readonly number[], leastSpan: number): [number, number] {
	const [low = 0, high = 1] = extent(values);
	const spare = Math.max(0, leastSpan - (high - low)) / 2;
	return high - low + 2 * spare > 0 ? [low - spare, high + spare] : [low - 0.5, high + 0.5];
}

/** Lays a plot out in px. Words of marks stand where there is room, each in a row of its own. */
export function plotOf(data: PlotData, size: PlotSize): PlotPicture {
	const { points, lines = [], stretch, marks = [], hasZeroLine = false } = data;
	const drawn = [...points, ...lines.flatMap((each) => each.points)];
	const xs = [...drawn.map(({ x }) => x), ...marks.map(({ x }) => x)];
	const ys = [...drawn.map(({ y }) => y), ...(hasZeroLine ? [0] : [])];
	const right = Math.max(size.left + 1, size.width - size.right);
	const [lowX, highX] = domainOf(xs, 0);
	// So that no mark stands on the very edge.
	const room = (highX - lowX) * 0.03;
	const x = scaleLinear()
		.domain([lowX - room, highX + room])
		.range([size.left, right]);
	const y = scaleLinear()
		.domain(domainOf(ys, data.leastSpanY ?? 0))
		.nice(5)
		.range([size.height - size.bottom, size.top]);
	const pathOf = line<{ x: number; y: number }>()
		.x((point) => x(point.x))
		.y((point) => y(point.y))
		.digits(1);
	const across = Math.max(2, Math.min(6, Math.floor((right - size.left) / 70)));
	const [xWords, yWords] = [x.tickFormat(across), y.tickFormat(5)];
	const xValues = x.ticks(across).filter((each) => !data.isCounted || Number.isInteger(each));
	const within = (at: number) => Math.min(right, Math.max(size.left, at));
	return {
		points: points.map((point) => ({ ...point, atX: x(point.x), atY: y(point.y) })),
		paths: lines.map((each) => ({ d: pathOf(each.points) ?? '', kind: each.kind })),
		stretch: stretch
			? {
					x: within(x(stretch.from)),
					width: Math.max(0, within(x(stretch.to)) - within(x(stretch.from)))
				}
			: null,
		marks: marks.map(({ x: at, words }, row) => {
			const atX = x(at);
			return { x: atX, words, row, isLeft: atX > (size.left + right) / 2 };
		}),
		zeroY: hasZeroLine ? y(0) : null,
		xTicks: xValues.map((value) => ({ x: x(value), words: xWords(value) })),
		yTicks: y.ticks(5).map((value) => ({ y: y(value), words: yWords(value) }))
	};
}
