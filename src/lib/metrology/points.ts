import { mean } from './replicates';

/** A pair of values to lay a line through. */
export type Point = { x: number; y: number };

/** @throws RangeError when there are too few points or a coordinate is no number */
export function requirePoints(points: readonly Point[], least: number, what: string): void {
	if (points.length < least)
		throw new RangeError(`${what} requires at least ${least} points; found ${points.length}`);
	points.forEach(({ x, y }, i) => {
		if (!Number.isFinite(x)) throw new RangeError(`points[${i}].x must be a number; found ${x}`);
		if (!Number.isFinite(y)) throw new RangeError(`points[${i}].y must be a number; found ${y}`);
	});
}

/** Sums of squares and products about the means. */
export type Moments = {
	n: number;
	meanX: number;
	meanY: number;
	xx: number;
	xy: number;
	yy: number;
};

/**
 * @param aboutOrigin sums are taken about 0 and not about the means
 */
export function momentsOf(points: readonly Point[], aboutOrigin = false): Moments {
	const meanX = mean(points.map(({ x }) => x));
	const meanY = mean(points.map(({ y }) => y));
	const [zeroX, zeroY] = aboutOrigin ? [0, 0] : [meanX, meanY];
	let [xx, xy, yy] = [0, 0, 0];
	for (const { x, y } of points) {
		xx += (x - zeroX) ** 2;
		xy += (x - zeroX) * (y - zeroY);
		yy += (y - zeroY) ** 2;
	}
	return { n: points.length, meanX, meanY, xx, xy, yy };
}
