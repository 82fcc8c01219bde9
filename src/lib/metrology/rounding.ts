/**
 * Correlation of the rounding errors of two repeats that are cut to the same step.
 *
 * Repeats much steadier than the step (a whole drop, a count) all fall on the same one: their
 * errors are the same and the mean of many is no better than one. Repeats that scatter over half a
 * step or more round each on its own.
 *
 * Source: the error of an even quantiser is a sawtooth; its Fourier series with normal scatter gives
 * ρ = (6/π²) Σ k⁻² exp(−4π²k²σ²/q²) (Widrow and Kollár, Quantization Noise, 2008; from memory).
 *
 * @param sdOverStep standard deviation of what is rounded, in steps, 0 or above
 * @returns 1 for no scatter at all, falling to 0
 */
export function roundingCorrelation(sdOverStep: number): number {
	if (!(sdOverStep >= 0))
		throw new RangeError(`sdOverStep must be 0 or above; found ${sdOverStep}`);
	if (sdOverStep === 0) return 1;
	let sum = 0;
	// Terms beyond this are below a millionth for any scatter that has not been caught above.
	for (let k = 1; k <= 2000; k++) {
		const term = Math.exp(-4 * Math.PI ** 2 * k * k * sdOverStep ** 2) / (k * k);
		sum += term;
		if (term < 1e-9) break;
	}
	return Math.min(1, (6 / Math.PI ** 2) * sum);
}
