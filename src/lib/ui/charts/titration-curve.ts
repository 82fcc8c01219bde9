import { bisector } from 'd3-array';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { Curve, CurvePoint } from '$lib/bench';

export type CurveSize = { width: number; height: number; left: number; right: number };

export type CurvePicture = {
	path: string;
	/** Stretches of the ribbon, each in the colour of the liquid there. */
	ribbon: { x: number; width: number; rgb: CurvePoint['rgb'] }[];
	xTicks: { value: number; x: number }[];
	yTicks: { value: number; y: number }[];
	xOf: (addedMl: number) => number;
	yOf: (readout: number) => number;
	lastMl: number;
};

/** Lays out the readout against titrant, mL, with a ribbon of colours below. */
export function curvePicture(curve: Curve, size: CurveSize): CurvePicture {
	const { points } = curve;
	const lastMl = points[points.length - 1]?.addedMl ?? 1;
	const readouts = points.map((point) => point.readout);
	const x = scaleLinear()
		.domain([0, lastMl])
		.range([size.left, Math.max(size.left + 1, size.width - size.right)]);
	const y = scaleLinear()
		.domain([Math.floor(Math.min(3, ...readouts)), Math.ceil(Math.max(8, ...readouts))])
		.range([size.height, 0]);
	const path =
		line<CurvePoint>()
			.x((point) => x(point.addedMl))
			.y((point) => y(point.readout))
			.digits(1)(points) ?? '';
	return {
		path,
		ribbon: points.slice(0, -1).map((point, i) => {
			const from = x(point.addedMl);
			return { x: from, width: x(points[i + 1]?.addedMl ?? lastMl) - from, rgb: point.rgb };
		}),
		xTicks: x
			.ticks(Math.max(2, Math.min(6, Math.floor(size.width / 80))))
			.map((value) => ({ value, x: x(value) })),
		yTicks: y.ticks(5).map((value) => ({ value, y: y(value) })),
		xOf: x,
		yOf: y,
		lastMl
	};
}

const byVolume = bisector<CurvePoint, number>((point) => point.addedMl);

/** The titration at one volume of titrant; between points the readout is drawn straight, colour is the nearer one's. */
export function curveAt(points: readonly CurvePoint[], addedMl: number): CurvePoint | null {
	const [first] = points;
	const last = points[points.length - 1];
	if (!first || !last) return null;
	if (addedMl <= first.addedMl) return first;
	if (addedMl >= last.addedMl) return last;
	const at = byVolume.left(points, addedMl);
	const before = points[at - 1] ?? first;
	const after = points[at] ?? last;
	const share = (addedMl - before.addedMl) / (after.addedMl - before.addedMl);
	return {
		addedMl,
		readout: before.readout + share * (after.readout - before.readout),
		rgb: share < 0.5 ? before.rgb : after.rgb
	};
}

/** A named place on the curve and where its words stand: a row, and left or right of its line. */
export type CurveMark<Mark> = Mark & { row: number; isLeft: boolean };

/**
 * Places the words of marks so that no line runs through them: all on the side where there is more
 * room, the farthest from that side in the top row, above where the other lines begin. Words that have no
 * room there stand on the other side of their line, in the top rows as well.
 *
 * @param marks `wordsWidth`: room that its words take, px; without it they are taken to fit
 */
export function curveMarks<Mark extends { x: number; wordsWidth?: number }>(
	marks: readonly Mark[],
	width: number
): CurveMark<Mark>[] {
	const middle = marks.reduce((sum, mark) => sum + mark.x, 0) / (marks.length || 1);
	const isLeft = middle > width / 2;
	const room = (mark: Mark, onLeft: boolean) => (onLeft ? mark.x : width - mark.x);
	const turns = (mark: Mark) =>
		room(mark, isLeft) < (mark.wordsWidth ?? 0) && room(mark, !isLeft) > room(mark, isLeft);
	return [...marks]
		.sort((a, b) => Number(turns(b)) - Number(turns(a)) || (isLeft ? b.x - a.x : a.x - b.x))
		.map((mark, row) => ({ ...mark, row, isLeft: turns(mark) ? !isLeft : isLeft }));
}

/**
 * Decimals with which places, mL, are told: one more than usual where they lie closer together than the last
 * digit, so that a step of rounding is not taken for the distance between them.
 */
export function decimalsApart(placesMl: readonly number[], decimals: number): number {
	const apart = Math.max(...placesMl) - Math.min(...placesMl);
	return placesMl.length > 1 && apart < 10 ** -decimals ? decimals + 1 : decimals;
}
