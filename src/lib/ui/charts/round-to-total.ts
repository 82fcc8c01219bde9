/**
 * Rounds parts so that, as printed, they add up to the printed total (largest-remainder method):
 * each is rounded down, then those that lost most get a unit back.
 *
 * @param parts any finite numbers
 * @param total what the rounded parts must add up to; rounded to `step` itself
 * @param step size of one unit of print, above 0
 * @returns whole multiples of `step`, in the order of `parts`
 * @throws RangeError naming the field when a number is not finite or `step` is not above 0
 */
export function roundToTotal(parts: readonly number[], total: number, step: number): number[] {
	if (!(step > 0)) throw new RangeError(`step must be above 0; found ${step}`);
	if (!Number.isFinite(total)) throw new RangeError(`total must be finite; found ${total}`);
	if (!parts.every(Number.isFinite))
		throw new RangeError(`parts must be finite; found ${parts.join(', ')}`);
	const exact = parts.map((part) => part / step);
	const units = exact.map(Math.floor);
	let missing = Math.round(total / step) - units.reduce((sum, unit) => sum + unit, 0);
	const byRemainder = exact
		.map((value, i) => ({ i, remainder: value - Math.floor(value) }))
		.sort((a, b) => b.remainder - a.remainder || a.i - b.i);
	// Where the parts miss the total by more than rounding does, the units go round more than once.
	for (let turn = 0; missing !== 0 && parts.length > 0; turn++) {
		const sign = Math.sign(missing);
		const place = turn % byRemainder.length;
		const at = byRemainder[sign > 0 ? place : byRemainder.length - 1 - place];
		if (!at) break;
		units[at.i] = (units[at.i] ?? 0) + sign;
		missing -= sign;
	}
	// Multiplying back leaves binary dust (3 × 0.1); one division does not.
	const perUnit = Math.round(1 / step);
	return units.map((unit) => (Math.abs(1 / step - perUnit) < 1e-9 ? unit / perUnit : unit * step));
}
