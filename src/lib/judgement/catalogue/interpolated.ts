/**
 * Value of a curve that is known at some places: on a straight line between the two on either side, flat
 * beyond the first and the last.
 *
 * @param at places, growing, at least two; `values` has one for each
 */
export function interpolated(at: readonly number[], values: readonly number[], x: number): number {
	const next = at.findIndex((place) => place > x);
	const to = next < 0 ? at.length - 1 : Math.max(1, next);
	const [x0 = 0, x1 = 1] = at.slice(to - 1);
	const [y0 = 0, y1 = 0] = values.slice(to - 1);
	const share = Math.min(1, Math.max(0, (x - x0) / (x1 - x0)));
	return y0 + share * (y1 - y0);
}
