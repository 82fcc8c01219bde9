import { quadraticForm } from './least-squares';

/** One cause explains at most so much of the squares: with few readings to spare, chance alone makes it all. */
const LEAST_SHARE = 0.05;

/** What a cause outside the fit would have to be for the residuals, as far as they can tell. */
export type LeftOverCause = {
	/** In the unit of the cause. */
	size: number;
	standardUncertainty: number;
	/** Size over its uncertainty, the scatter taken without what this cause explains; a Student's t. */
	t: number;
	/** By what one unit of it moves the meter's offset, pH, and its slope, as the fit finds them. */
	offsetPhPerUnit: number;
	slopePerUnit: number;
};

/**
 * How large a cause that the fit does not know would be, by one step of linearised least squares beside
 * all parameters of the fit: what the parameters can take up of it is taken out first.
 *
 * @param jacobian weighed derivatives of the readings by the parameters
 * @param covariance of the parameters
 * @param residuals weighed residuals of the same readings
 * @param byCause weighed derivatives of the same readings by the cause
 * @param degreesOfFreedom of the fit
 * @returns null where no reading would show it; a size without any certainty where the parameters take
 *   up all of it, or no reading is to spare
 */
export function causeLeftOver(
	jacobian: readonly (readonly number[])[],
	covariance: readonly (readonly number[])[],
	residuals: readonly number[],
	byCause: readonly number[],
	degreesOfFreedom: number
): LeftOverCause | null {
	const inParameters = covariance.map((_, k) =>
		byCause.reduce((sum, each, i) => sum + each * (jacobian[i]![k] ?? 0), 0)
	);
	const whole = byCause.reduce((sum, each) => sum + each * each, 0);
	const own = whole - quadraticForm(inParameters, covariance);
	const moved = covariance.map((row) =>
		row.reduce((sum, each, k) => sum + each * inParameters[k]!, 0)
	);
	const moves = { offsetPhPerUnit: moved[2] ?? 0, slopePerUnit: moved[3] ?? 0 };
	if (!(whole > 0)) return null;
	// All of it is taken up: the residuals tell nothing of its size.
	if (!(own > 1e-9 * whole) || degreesOfFreedom <= 2)
		return { size: 0, standardUncertainty: Infinity, t: 0, ...moves };
	// At the end of a fit residuals are square to its parameters, but for what was known before.
	const size = byCause.reduce((sum, each, i) => sum + each * residuals[i]!, 0) / own;
	const chiSquare = residuals.reduce((sum, each) => sum + each * each, 0);
	const rest = Math.max(LEAST_SHARE * chiSquare, chiSquare - size * size * own);
	const variance = rest / (degreesOfFreedom - 1);
	const standardUncertainty = Math.sqrt(variance / own);
	return { size, standardUncertainty, t: size / standardUncertainty, ...moves };
}
