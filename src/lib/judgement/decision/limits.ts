import { convertValue, type Analyte, type Unit } from '../../kits';
import type { Band } from './decision';

/**
 * Within what a tank is kept and how fast it may be moved, as data: a further analyte is a further
 * record. Values are in the analyte's customary unit; each names its origin.
 */
export type AnalyteLimits = {
	/** Customary unit, in which all that follows is given. */
	unit: Unit;
	/** The band taken where the person has none of their own. */
	band: { low: number; high: number; origin: string };
	/** What the sea holds, to stand beside the band. */
	openOcean: { low: number; high: number; salinity: number; origin: string };
	/** Net rise a day, after consumption and dosers: the default, and what nobody's own limit may pass. */
	rise: { usualPerDay: number; hardCapPerDay: number; origin: string };
	/**
	 * pH: how far the addition of a day may lift it, above what it may never come, and outside which
	 * nothing is planned before its cause is found.
	 */
	ph: { maxRisePerDay: number; highest: number; lowest: number; origin: string };
	/** Below this, waiting harms as well. */
	lowAlarm: { below: number; origin: string };
	/** A target above or below this is not sensible in any tank. */
	sensible: { low: number; high: number; origin: string };
	/** Salinity outside this is put right first, slowly, before anything is added. */
	salinity: { low: number; high: number; maxChangePerDay: number; origin: string };
	/** Consumption above which a test a week is too rare. */
	weeklyTooRare: { abovePerDay: number; origin: string };
};

const PRACTICE = 'common practice, no source';

export const analyteLimits: Record<Analyte, AnalyteLimits> = {
	alkalinity: {
		unit: 'dKH',
		band: { low: 7, high: 9, origin: PRACTICE },
		openOcean: {
			low: 6.4,
			high: 6.8,
			salinity: 35,
			origin:
				'Surface of the open ocean brought to salinity 35, 2.3 to 2.4 meq/L (Lee and others 2006, Geophys. Res. Lett. 33:L19605; Millero and others 1998, Mar. Chem. 60:111; from memory)'
		},
		rise: { usualPerDay: 0.5, hardCapPerDay: 1, origin: PRACTICE },
		ph: {
			maxRisePerDay: 0.2,
			highest: 8.5,
			lowest: 7.5,
			origin: 'rise and highest: common practice, no source; lowest: judgement'
		},
		lowAlarm: { below: 5, origin: PRACTICE },
		sensible: { low: 6, high: 12, origin: 'judgement' },
		salinity: {
			low: 33,
			high: 37,
			maxChangePerDay: 1,
			origin: 'change a day: common practice, no source; the range: judgement'
		},
		weeklyTooRare: { abovePerDay: 0.5, origin: PRACTICE }
	}
};

/** Limits of an analyte, each with its origin. */
export function limitsOf(analyte: Analyte = 'alkalinity'): AnalyteLimits {
	return analyteLimits[analyte];
}

/** The band taken where the person has none of their own, in any unit of the analyte. */
export function defaultBand(unit: Unit, analyte: Analyte = 'alkalinity'): Band {
	const { band, unit: own } = limitsOf(analyte);
	return {
		low: convertValue(band.low, own, unit, analyte),
		high: convertValue(band.high, own, unit, analyte),
		unit
	};
}
