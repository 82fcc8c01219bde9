import type { Interval } from './interval';
import { holds } from './interval';
import { jointLineTest, type JointTest } from './joint-test';
import { linearRegression, type LinearFit } from './least-squares';

export type YoudenPoint = {
	/** Volume of sample taken, in any one unit (mL). */
	sampleVolume: number;
	/** Titrant it took, in any one unit (mL, or drops). */
	titrantVolume: number;
};

export type YoudenOptions = {
	/** Confidence of the intervals and of the joint test, 0 to 1; 0.95 when left out. */
	confidence?: number;
	/** A line to test the found one against, both numbers at once; no constant error and this slope. */
	given?: { intercept?: number; slope: number };
};

export type YoudenLine = LinearFit & {
	/**
	 * Total Youden blank: titrant that goes in whatever the sample's size, in the unit of
	 * `titrantVolume`: overshoot, indicator, dead volume. Below 0: titrant not counted.
	 */
	totalBlank: number;
	totalBlankStandardError: number;
	totalBlankInterval: Interval;
	/** The interval of the blank leaves out 0: there is a constant error. */
	isConstantErrorClear: boolean;
	/** The blank as a share of the titrant that the smallest sample takes by the line, and the largest. */
	shareOfSmallest: number;
	shareOfLargest: number;
	/** Against `given`; null when none was. */
	joint: JointTest | null;
};

/**
 * Youden's one-sample line: titrant used against sample volume, of one water. The intercept is what a
 * sample of no volume would take, the constant error; the slope, times the titrant's strength, is the
 * value without it. A proportional error (strength, scale, drop size) and a colour chosen too late or
 * early, which takes acid in proportion to the volume, do not show in it.
 *
 * Source: Youden 1947 (Anal. Chem. 19:946, from memory); total Youden blank after Cardone 1986 (Anal.
 * Chem. 58:433, from memory). Ordinary least squares: sample volumes count as exact.
 *
 * @param points at least 3, with sample volumes above 0 that differ
 * @throws RangeError naming the field out of range, or what there is too little of
 */
export function youdenLine(
	points: readonly YoudenPoint[],
	{ confidence = 0.95, given }: YoudenOptions = {}
): YoudenLine {
	if (points.length < 3)
		throw new RangeError(`youdenLine requires at least 3 points; found ${points.length}`);
	points.forEach(({ sampleVolume, titrantVolume }, i) => {
		if (!(sampleVolume > 0 && Number.isFinite(sampleVolume)))
			throw new RangeError(`points[${i}].sampleVolume must be above 0; found ${sampleVolume}`);
		if (!Number.isFinite(titrantVolume))
			throw new RangeError(`points[${i}].titrantVolume must be a number; found ${titrantVolume}`);
	});
	const volumes = points.map(({ sampleVolume }) => sampleVolume);
	const [smallest, largest] = [Math.min(...volumes), Math.max(...volumes)];
	if (smallest === largest)
		throw new RangeError(`youdenLine requires sample volumes that differ; found ${smallest} only`);
	const fit = linearRegression(
		points.map(({ sampleVolume: x, titrantVolume: y }) => ({ x, y })),
		{ confidence }
	);
	const shareOf = (volume: number) => fit.intercept / (fit.intercept + fit.slope * volume);
	return {
		...fit,
		totalBlank: fit.intercept,
		totalBlankStandardError: fit.interceptStandardError,
		totalBlankInterval: fit.interceptInterval,
		isConstantErrorClear: !holds(fit.interceptInterval, 0),
		shareOfSmallest: shareOf(smallest),
		shareOfLargest: shareOf(largest),
		joint: given
			? jointLineTest(fit, { intercept: given.intercept ?? 0, slope: given.slope }, confidence)
			: null
	};
}
