import { intervalAbout, type Interval } from './interval';
import { linearRegression, type LinearFit } from './least-squares';

export type AdditionPoint = {
	/** Amount added to the sample, in the unit of what is sought. */
	added: number;
	/** What the method answered, in any one unit. */
	signal: number;
};

export type StandardAdditionLine = LinearFit & {
	/** What was there before anything was added, in the unit of `added`. */
	content: number;
	contentStandardError: number;
	contentInterval: Interval;
};

/**
 * Method of standard additions: the line of signal against what was added is carried back to no
 * signal. Proportional errors take themselves out; a constant one stays in the result whole.
 *
 * Source: Miller and Miller, Statistics and Chemometrics for Analytical Chemistry, standard error of
 * an extrapolated content: (s/b) √(1/n + ȳ²/(b² Σ(x−x̄)²)).
 *
 * @param points at least 3, with additions from 0 up that differ
 * @throws RangeError naming the field out of range, or when the signal does not change with what is added
 */
export function standardAdditionLine(
	points: readonly AdditionPoint[],
	confidence = 0.95
): StandardAdditionLine {
	if (points.length < 3)
		throw new RangeError(`standardAdditionLine requires at least 3 points; found ${points.length}`);
	points.forEach(({ added, signal }, i) => {
		if (!(added >= 0 && Number.isFinite(added)))
			throw new RangeError(`points[${i}].added must be 0 or above; found ${added}`);
		if (!Number.isFinite(signal))
			throw new RangeError(`points[${i}].signal must be a number; found ${signal}`);
	});
	const fit = linearRegression(
		points.map(({ added: x, signal: y }) => ({ x, y })),
		{ confidence }
	);
	const { slope, intercept, n, meanY, sumOfSquaresX, residualSd, degreesOfFreedom } = fit;
	if (slope === 0)
		throw new RangeError('signal must change with what is added; found a slope of 0');
	const content = intercept / slope;
	const contentStandardError =
		(residualSd / Math.abs(slope)) * Math.sqrt(1 / n + meanY ** 2 / (slope ** 2 * sumOfSquaresX));
	return {
		...fit,
		content,
		contentStandardError,
		contentInterval: intervalAbout(content, contentStandardError, degreesOfFreedom, confidence)
	};
}
