import { matrixEffectOf, type MadeWith, type SolutionMatrix } from '../catalogue/matrix-effect';
import type { Analyte, Unit } from '../../kits';
import type { FaultSize } from '../catalogue/fault';

/**
 * What the diagnosis takes for granted about tanks, known solutions and second methods, as data: a
 * further analyte is a further record. Values are in the analyte's customary unit.
 */
export type WaterFigures = {
	unit: Unit;
	/** What tanks hold, before anything is known of this one. Broad on purpose. */
	usual: { mean: number; standardDeviation: number; origin: string };
	/** How a tank's value moves while nothing out of the ordinary happens. */
	ordinary: {
		/** Within a day, between doses and between day and night. */
		daySd: number;
		/** From day to day; grows with the square root of the days. */
		perRootDaySd: number;
		/** Dosing and consumption not quite in balance; grows with the days. */
		perDaySd: number;
		/** Between two portions of water taken with care. */
		portionSd: number;
		origin: string;
	};
	/** A change out of the ordinary since the last reading. */
	realChange: { prior: number; sizes: readonly FaultSize[]; origin: string };
	/** What a sound kit reads more on a known solution than it holds, by what it is made in and from. */
	matrixEffect: (
		matrix: SolutionMatrix,
		nominal: number,
		madeWith: MadeWith | undefined
	) => { mean: number; standardDeviation: number };
	/** The same for a second method, which may see it otherwise. */
	matrixSdOfInstrument: number;
	/** What a report of carbonate alone leaves out. */
	leftOut: { mean: number; standardDeviation: number; origin: string };
	/** What a blank may hold after all, and how otherwise the end is seen where nothing holds the pH. */
	blankSd: number;
	blankEndSd: number;
	/** Size of what nobody thought of, and of a slip in a test that is not in question. */
	unforeseenSd: number;
};

/**
 * Calcium and magnesium: taken up slowly, added slowly, the same by day and night. All of it judgement.
 *
 * @param size.day from day to day, doubled for a week out of balance
 * @param size.low middling fall, and `high` middling rise, of a change out of the ordinary
 */
function ofMetal(
	unit: Unit,
	size: { mean: number; spread: number; day: number; low: number; high: number }
): WaterFigures {
	const { mean, spread, day, low, high } = size;
	return {
		unit,
		usual: { mean, standardDeviation: spread, origin: 'judgement: nearly all tanks' },
		ordinary: {
			daySd: day / 2,
			perRootDaySd: day / 2,
			perDaySd: day / 4,
			portionSd: day / 4,
			origin: 'judgement'
		},
		realChange: {
			prior: 0.12,
			sizes: [
				{ weight: 0.6, mean: low, sd: Math.abs(low) / 2, of: 'customaryUnit' },
				{ weight: 0.4, mean: high, sd: high / 2, of: 'customaryUnit' }
			],
			origin: 'judgement'
		},
		// Judgement: without its magnesium a known solution of calcium has another end.
		matrixEffect: (matrix) => ({
			mean: 0,
			standardDeviation: { seawater: day / 4, purified: day, sodiumChloride: day / 2 }[matrix]
		}),
		matrixSdOfInstrument: day,
		leftOut: { mean: 0, standardDeviation: day / 4, origin: 'nothing is left out by a report' },
		blankSd: day / 4,
		blankEndSd: day,
		unforeseenSd: spread / 2
	};
}

const waterFigures: Record<Analyte, WaterFigures> = {
	alkalinity: {
		unit: 'dKH',
		usual: {
			mean: 8.2,
			standardDeviation: 2,
			origin: 'judgement: nearly all tanks lie within 4 to 12 dKH'
		},
		ordinary: {
			daySd: 0.12,
			perRootDaySd: 0.08,
			perDaySd: 0.03,
			portionSd: 0.04,
			origin: 'daily swing of 0.1 to 0.5 dKH: common practice, no source; the rest is judgement'
		},
		realChange: {
			prior: 0.12,
			sizes: [
				{ weight: 0.52, mean: -1.2, sd: 0.7, of: 'customaryUnit' },
				{ weight: 0.34, mean: 1.1, sd: 0.7, of: 'customaryUnit' },
				{ weight: 0.07, mean: -3, sd: 1.5, of: 'customaryUnit' },
				{ weight: 0.07, mean: 3.5, sd: 2, of: 'customaryUnit' }
			],
			origin:
				'judgement: falls are commoner than rises, and mostly one or two dKH; a doser that stops or sticks for days moves it by 0.3 to 3 a day (common practice, no source)'
		},
		matrixEffect: (matrix, nominal, madeWith) => {
			const { value, standardUncertainty } = matrixEffectOf(matrix, nominal, madeWith);
			// One seawater is not altogether like another; judgement.
			return { mean: value, standardDeviation: Math.max(0.03, standardUncertainty) };
		},
		matrixSdOfInstrument: 0.06,
		leftOut: {
			mean: 0.38,
			standardDeviation: 0.1,
			origin: 'borate, 0.2 to 0.6 dKH: computed at salinity 35, pH 7.9 to 8.3'
		},
		blankSd: 0.05,
		blankEndSd: 0.15,
		unforeseenSd: 1
	},
	calcium: ofMetal('mg/L', { mean: 420, spread: 40, day: 4, low: -50, high: 40 }),
	magnesium: ofMetal('mg/L', { mean: 1320, spread: 100, day: 8, low: -120, high: 100 }),
	hardness: ofMetal('mmol/L', { mean: 64.5, spread: 5, day: 0.4, low: -6, high: 5 })
};

/** What is taken for granted about water of an analyte. */
export const waterFiguresOf = (analyte: Analyte): WaterFigures => waterFigures[analyte];
