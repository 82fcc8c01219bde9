import type { SolutionMatrix } from '../catalogue/matrix-effect';
import type { MethodFigures } from '../../metrology';
import type { CheckId } from '../../observation';
import type { Things } from './things';
import type { WaterFigures } from './water-figures';

/** So much times a standard normal variable of that name; rows that name the same share it. */
export type Loading = { of: string; amount: number };

/**
 * One reading as the measurement equation has it, all in the analyte's customary unit. A weighing is
 * a reading of 1 whose unit is the ratio itself.
 */
export type Row = {
	/** Where it stood in the evidence. */
	at: number;
	value: number;
	isInQuestion: boolean;
	isEarlier: boolean;
	/** The check it came from; left out for the test in question and for what is no check. */
	from?: CheckId;
	things: Things;
	/** Which piece was weighed. */
	weighed: 'sample' | 'titrant' | null;
	/** Value of 1 mL of titrant at this sample; 0 where there is no titrant. */
	perMl: number;
	/** What was in the vial: its mean and what it shares with other rows. */
	amountMean: number;
	amountLoadings: Loading[];
	/** Ordinary spreads in proportion to the value, as shares of it. */
	shares: Loading[];
	/** Ordinary spreads that are not. */
	loadings: Loading[];
	/** Known shift of the reading against what was in the vial. */
	shift: number;
	scatterVariance: number;
	/** Of the scatter: what repeats that end on the same step share; and that step. */
	sharedStepVariance: number;
	step: number;
	/** Water and way of working: only readings alike in this can share a step. */
	alike: string;
};

export type RowContext = {
	method: MethodFigures;
	/** No leaflet is known: what a reading claims takes the place of the usual figures. */
	isUsualMethod: boolean;
	water: WaterFigures;
	prior: { mean: number; standardDeviation: number };
	/** Days ago of all earlier readings, in order, each once. */
	days: readonly number[];
	firstAt: number;
	/** Waters in which known solutions of the evidence were made. */
	madeIn: ReadonlySet<SolutionMatrix>;
};
