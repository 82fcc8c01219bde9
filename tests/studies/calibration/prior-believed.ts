import type { FaultSize } from '../../../src/lib/judgement';
import type { Analyte, Unit } from '../../../src/lib/kits';

/**
 * What the diagnosis believes beforehand of tanks, solutions and second methods. The figures that are no
 * data of the catalogue are written down here once more, so that a change of one side alone shows.
 */
export const believed = {
	pairFactor: 0.4,
	noneOfThese: 0.08,
	slipElsewhere: 0.05,
	unforeseenTimesScatter: 1.5,
	setInSince: 0.35,
	realChange: 0.12
};

/** The same of one analyte, in its customary unit. */
export type BelievedOf = {
	unit: Unit;
	tank: { mean: number; sd: number };
	portionSd: number;
	daySd: number;
	perRootDaySd: number;
	trendPerDaySd: number;
	unforeseenSd: number;
	/** A change of the tank out of the ordinary. */
	changes: readonly FaultSize[];
	/** A known solution in salt water, and what a sound kit reads more on it than it holds. */
	solution: { nominal: number; plusMinus: number; matrix: { mean: number; sd: number } };
	secondPlusMinus: number;
	/** Ordinary spread of a value that was taken off, as it comes into this one; 0 where none is. */
	takenOffSd: number;
	/** What can stand on a scale or in a report: a mark past the end of a scale is read as its end. */
	lowestRead: { ofNothing: number; ofWater: number };
	highestRead: number;
};

const sizes = (...ways: readonly (readonly [number, number, number])[]): FaultSize[] =>
	ways.map(([weight, mean, sd]) => ({ weight, mean, sd, of: 'customaryUnit' }));

const alkalinity: BelievedOf = {
	unit: 'dKH',
	tank: { mean: 8.2, sd: 2 },
	portionSd: 0.04,
	daySd: 0.12,
	perRootDaySd: 0.08,
	trendPerDaySd: 0.03,
	unforeseenSd: 1,
	changes: sizes([0.52, -1.2, 0.7], [0.34, 1.1, 0.7], [0.07, -3, 1.5], [0.07, 3.5, 2]),
	/** Of bicarbonate at 8 dKH in salt water. */
	solution: { nominal: 8, plusMinus: 0.2, matrix: { mean: 0.018, sd: 0.035 } },
	secondPlusMinus: 0.5,
	takenOffSd: 0,
	lowestRead: { ofNothing: -3, ofWater: -0.5 },
	highestRead: 990
};
const calcium: BelievedOf = {
	unit: 'mg/L',
	tank: { mean: 420, sd: 40 },
	portionSd: 1,
	daySd: 2,
	perRootDaySd: 2,
	trendPerDaySd: 1,
	unforeseenSd: 35,
	changes: sizes([0.5, -35, 18], [0.15, -85, 35], [0.25, 35, 18], [0.1, 90, 40]),
	solution: { nominal: 420, plusMinus: 8, matrix: { mean: 5, sd: 4 } },
	secondPlusMinus: 20,
	takenOffSd: 0,
	lowestRead: { ofNothing: -60, ofWater: -10 },
	highestRead: 20_000
};
const magnesium: BelievedOf = {
	unit: 'mg/L',
	tank: { mean: 1320, sd: 100 },
	portionSd: 2,
	daySd: 4,
	perRootDaySd: 4,
	trendPerDaySd: 1.5,
	unforeseenSd: 90,
	changes: sizes([0.5, -90, 45], [0.15, -220, 80], [0.25, 90, 45], [0.1, 220, 90]),
	solution: { nominal: 1300, plusMinus: 25, matrix: { mean: -2.2, sd: 8 } },
	secondPlusMinus: 70,
	takenOffSd: 6,
	lowestRead: { ofNothing: -90, ofWater: -90 },
	highestRead: 60_000
};

/** Of the analytes whose cases are drawn. */
export const drawnAnalytes = ['alkalinity', 'calcium', 'magnesium'] as const;
export type DrawnAnalyte = (typeof drawnAnalytes)[number];
const of: Record<DrawnAnalyte, BelievedOf> = { alkalinity, calcium, magnesium };

/** @throws RangeError naming an analyte of which no cases are drawn */
export function believedOf(analyte: Analyte): BelievedOf {
	const found = drawnAnalytes.find((each) => each === analyte);
	if (!found)
		throw new RangeError(`analyte must be one of ${drawnAnalytes.join(', ')}; found ${analyte}`);
	return of[found];
}
