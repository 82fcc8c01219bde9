/**
 * Root of a function that falls from positive to not positive between `low` and `high`: Newton's
 * step where it stays inside the bracket and halves it fast enough, bisection where not. It cannot
 * run away, and it ends when the bracket or the step is below `tolerance`.
 *
 * `slopeAt` is the derivative of `valueAt`; a poor one costs time, never the answer.
 */
export function fallingRoot(
	valueAndSlope: (x: number, out: { value: number; slope: number }) => void,
	low: number,
	high: number,
	start: number,
	tolerance: number
): number {
	const out = { value: 0, slope: 0 };
	let x = start > low && start < high ? start : (low + high) / 2;
	for (let i = 0; i < 200; i++) {
		valueAndSlope(x, out);
		if (out.value === 0) return x;
		if (out.value > 0) low = x;
		else high = x;
		let next = x - out.value / out.slope;
		if (!(next > low && next < high)) next = (low + high) / 2;
		if (Math.abs(next - x) < tolerance || high - low < tolerance) return next;
		x = next;
	}
	return x;
}
