import { extent, median } from 'd3-array';
import { scaleLinear, scaleTime } from 'd3-scale';
import { line } from 'd3-shape';

/** One reading for the picture, in the unit that is shown. */
export type PicturePoint = {
	id: string;
	/** ms since 1970. */
	at: number;
	value: number;
	/** About 95 %. */
	expandedUncertainty: number;
	isSuspect: boolean;
	/** It was said that something is dosed. */
	isDosed: boolean;
};

export type PictureMark = PicturePoint & { x: number; y: number; top: number; bottom: number };
/** Older readings together: from the lowest to the highest value, with the middle one. */
export type PictureBand = {
	from: number;
	to: number;
	count: number;
	lowest: number;
	middle: number;
	highest: number;
	x: number;
	width: number;
	top: number;
	middleY: number;
	bottom: number;
	isDosed: boolean;
};
export type Picture = {
	marks: PictureMark[];
	bands: PictureBand[];
	/** How much time one band takes together, in words; null where every reading has its own mark. */
	bandOf: string | null;
	/** A hairline from mark to mark, for the eye to follow; it knows nothing of what lies between. */
	guide: string;
	xTicks: { at: number; x: number; words: string }[];
	yTicks: { value: number; y: number; words: string }[];
};
export type PictureSize = {
	width: number;
	height: number;
	left: number;
	right: number;
	top: number;
	bottom: number;
};

/** Newest readings that are drawn one by one, and how many bands the older ones may take. */
export const MOST_MARKS = 150;
export const MOST_BANDS = 150;

const DAY = 86_400_000;
const spans = [
	{ days: 7, words: 'a week' },
	{ days: 28, words: 'four weeks' },
	{ days: 91, words: 'thirteen weeks' },
	{ days: 364, words: 'a year' },
	{ days: 3640, words: 'ten years' }
] as const;

/** The shortest span of which the bands do not become too many. */
function spanFor(ms: number) {
	const fits = spans.find(({ days }) => ms / (days * DAY) <= MOST_BANDS);
	return fits ?? spans[spans.length - 1]!;
}

/**
 * Lays out readings against time. The axis follows the readings and their bands alone: no range is
 * drawn as good or bad.
 *
 * @param points in the order of their times
 * @param leastSpan of the vertical axis, in the unit shown: a difference of a tenth must not fill it
 * @param domain of time, ms since 1970; the readings' own where not given
 */
export function pictureOf(
	points: readonly PicturePoint[],
	size: PictureSize,
	{
		leastSpan = 1,
		decimals = 1,
		domain
	}: { leastSpan?: number; decimals?: number; domain?: [number, number] } = {}
): Picture {
	const single = points.slice(-MOST_MARKS);
	const older = points.slice(0, -MOST_MARKS);
	const [low = 0, high = 1] = extent([
		...single.flatMap((each) => [
			each.value - each.expandedUncertainty,
			each.value + each.expandedUncertainty
		]),
		...older.map(({ value }) => value)
	]);
	const spare = Math.max(0, leastSpan - (high - low)) / 2;
	const y = scaleLinear()
		.domain([Math.max(0, low - spare), high + spare])
		.nice(5)
		// Room between the lowest bar and what stands on the axis.
		.range([size.height - size.bottom - 10, size.top]);
	const first = domain?.[0] ?? points[0]?.at ?? 0;
	const last = domain?.[1] ?? points.at(-1)?.at ?? DAY;
	// A single day in the middle of its week.
	const room = Math.max(0, 7 * DAY - (last - first)) / 2;
	const x = scaleTime()
		.domain([first - room, last + room])
		.range([size.left, Math.max(size.left + 1, size.width - size.right)]);

	const span = spanFor((older.at(-1)?.at ?? 0) - (older[0]?.at ?? 0));
	const bands = bandsOf(older, span.days * DAY).map((band): PictureBand => {
		const from = x(band.from);
		return {
			...band,
			x: from,
			width: Math.max(1, x(band.to) - from - 1),
			top: y(band.highest),
			middleY: y(band.middle),
			bottom: y(band.lowest)
		};
	});
	const marks = single.map((each): PictureMark => {
		const { value, expandedUncertainty } = each;
		return {
			...each,
			x: x(each.at),
			y: y(value),
			top: y(value + expandedUncertainty),
			bottom: y(value - expandedUncertainty)
		};
	});
	const guide = line<PictureMark>()
		.x((mark) => mark.x)
		.y((mark) => mark.y)
		.digits(1)(marks);
	const across = Math.max(2, Math.min(6, Math.floor((size.width - size.left) / 76)));
	return {
		marks,
		bands,
		bandOf: bands.length > 0 ? span.words : null,
		guide: guide ?? '',
		xTicks: timeTicks(x, across),
		yTicks: y.ticks(4).map((value) => ({ value, y: y(value), words: value.toFixed(decimals) }))
	};
}

/** Readings by equal spans of time, counted from the first. */
function bandsOf(points: readonly PicturePoint[], span: number) {
	const [first] = points;
	if (!first) return [];
	const groups = new Map<number, PicturePoint[]>();
	for (const point of points) {
		const number = Math.floor((point.at - first.at) / span);
		const group = groups.get(number);
		if (group) group.push(point);
		else groups.set(number, [point]);
	}
	return [...groups].map(([number, group]) => {
		const values = group.map(({ value }) => value);
		const [lowest = 0, highest = 0] = extent(values);
		const from = first.at + number * span;
		return {
			from,
			to: from + span,
			count: group.length,
			lowest,
			middle: median(values) ?? lowest,
			highest,
			isDosed: group.some(({ isDosed }) => isDosed)
		};
	});
}

const dayAndMonth = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });
const monthAndYear = new Intl.DateTimeFormat('en-GB', { month: 'short', year: '2-digit' });
const onlyYear = new Intl.DateTimeFormat('en-GB', { year: 'numeric' });

function timeTicks(x: ReturnType<typeof scaleTime<number, number>>, count: number) {
	const ticks = x.ticks(count);
	const [first, second] = ticks;
	const apart = first && second ? second.getTime() - first.getTime() : DAY;
	const words = apart >= 360 * DAY ? onlyYear : apart >= 27 * DAY ? monthAndYear : dayAndMonth;
	const seen = new Set<string>();
	return ticks.flatMap((tick) => {
		const said = words.format(tick);
		// Ticks within one day would say the same twice.
		if (seen.has(said)) return [];
		seen.add(said);
		return [{ at: tick.getTime(), x: x(tick), words: said }];
	});
}
