import { matrixEffectOf, type MadeWith, type SolutionMatrix } from '../catalogue/matrix-effect';
import type { Analyte, Unit } from '../../kits';
import type { FaultSize } from '../catalogue/fault';
import { waterFiguresOfMetal } from './water-figures-metals';

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
	/** In what a known solution is best made, where none is at hand. */
	referenceMatrix: SolutionMatrix;
	/** What a report of carbonate alone leaves out. */
	leftOut: { mean: number; standardDeviation: number; origin: string };
	/** What a blank may hold after all, and how otherwise the end is seen where nothing holds the pH. */
	blankSd: number;
	blankEndSd: number;
	/** Size of what nobody thought of, and of a slip in a test that is not in question. */
	unforeseenSd: number;
};

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
		referenceMatrix: 'sodiumChloride',
		leftOut: {
			mean: 0.38,
			standardDeviation: 0.1,
			origin: 'borate, 0.2 to 0.6 dKH: computed at salinity 35, pH 7.9 to 8.3'
		},
		blankSd: 0.05,
		blankEndSd: 0.15,
		unforeseenSd: 1
	},
	calcium: waterFiguresOfMetal('calcium'),
	magnesium: waterFiguresOfMetal('magnesium'),
	hardness: waterFiguresOfMetal('hardness')
};

/** What is taken for granted about water of an analyte. */
export const waterFiguresOf = (analyte: Analyte): WaterFigures => waterFigures[analyte];
