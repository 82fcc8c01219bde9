import type { Diagnosis } from '$lib/judgement';
import { area, curveMonotoneX, line } from 'd3-shape';
import { scaleLinear } from 'd3-scale';

/** The density of the true value, drawn: paths and places in pixels of a box of one width. */
export type DensityShape = {
	area: string;
	line: string;
	/** Numerals of the axis. */
	ticks: readonly { x: number; value: number }[];
	xOf: (value: number) => number;
	/** The tops, where a hump is to be named. */
	tops: readonly { x: number; y: number; mean: number }[];
};

/** The tails that hold less than this are not drawn: share of the highest density. */
const WORTH_DRAWING = 0.004;

/**
 * @param diagnosis in whose unit the axis stands
 * @param also values that the axis must reach, such as the reading in question
 */
export function densityShape(
	{ trueValue }: Pick<Diagnosis, 'trueValue'>,
	also: readonly number[],
	box: { width: number; height: number }
): DensityShape {
	const highest = Math.max(...trueValue.density.map(({ density }) => density), 1e-12);
	const drawn = trueValue.density.filter(({ density }) => density >= WORTH_DRAWING * highest);
	const values = [...drawn.map(({ value }) => value), ...also];
	const [low, high] = [Math.min(...values), Math.max(...values)];
	const room = (high - low || 1) * 0.04;
	const x = scaleLinear([low - room, high + room], [1, box.width - 1]);
	const y = scaleLinear([0, highest], [box.height, 1]);
	type Point = (typeof drawn)[number];
	const at = (each: Point) => x(each.value);
	const top = (each: Point) => y(each.density);
	const ground = box.height;
	return {
		area: area<Point>().x(at).y0(ground).y1(top).curve(curveMonotoneX)(drawn) ?? '',
		line: line<Point>().x(at).y(top).curve(curveMonotoneX)(drawn) ?? '',
		ticks: x
			.ticks(Math.max(2, Math.floor(box.width / 64)))
			.map((value) => ({ x: x(value), value })),
		xOf: (value) => x(value),
		tops: trueValue.humps.map(({ mean }) => {
			const nearest = drawn.reduce(
				(best, each) => (Math.abs(each.value - mean) < Math.abs(best.value - mean) ? each : best),
				drawn[0] ?? { value: mean, density: 0 }
			);
			return { x: x(mean), y: y(nearest.density), mean };
		})
	};
}
