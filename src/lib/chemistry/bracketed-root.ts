/**
 * Root of a function that falls from positive to not positive between `low` and `high`: Newton's
 * step where it stays inside the bracket and is at most half the step before it, bisection where not.
 * It cannot run away or creep, and it ends when the bracket or the step is below `tolerance`.
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
	let lastStep = high - low;
	for (let i = 0; i < 200; i++) {
		valueAndSlope(x, out);
		if (out.value === 0) return x;
		if (out.value > 0) low = x;
		else high = x;
		const newton = x - out.value / out.slope;
		// Arrived: a step too short to leave the end of the bracket must not be taken for one that leaves it.
		if (newton >= low && newton <= high && Math.abs(newton - x) < tolerance) return newton;
		const isGood = newton > low && newton < high && Math.abs(newton - x) <= lastStep / 2;
		const next = isGood ? newton : (low + high) / 2;
		lastStep = Math.abs(next - x);
		if (lastStep < tolerance || high - low < tolerance) return next;
		x = next;
	}
	return x;
}
