import { youdenLine, type YoudenLine } from '$lib/metrology';
import { estimateOf, roundingSd, type Estimate } from './estimate';
import type { PortionsTyped } from './portions';

export type BlankFound = {
	/** Titrant that goes in whatever the size of the portion, in its unit. */
	blank: Estimate;
	/** Titrant for each mL of water. */
	slope: Estimate;
	line: YoudenLine;
};

/** Youden's line through portions of one water; null for fewer than 3, or where all are of one size. */
export function blankOf({ portions, titrantStep }: PortionsTyped): BlankFound | null {
	if (portions.length < 3) return null;
	if (portions.every(({ sampleVolume }) => sampleVolume === portions[0]?.sampleVolume)) return null;
	const line = youdenLine(portions);
	const { n, meanX, sumOfSquaresX, degreesOfFreedom } = line;
	// Marks that happen to lie on a line are known no better than their last digit.
	const sd = Math.max(line.residualSd, roundingSd(titrantStep));
	return {
		line,
		blank: estimateOf(
			line.totalBlank,
			sd * Math.sqrt(1 / n + meanX ** 2 / sumOfSquaresX),
			degreesOfFreedom,
			0
		),
		slope: estimateOf(line.slope, sd / Math.sqrt(sumOfSquaresX), degreesOfFreedom, 0)
	};
}
