import { convertValue, type Analyte, type Unit } from '../../kits';
import type { Band } from './decision';

/**
 * Within what a tank is kept and how fast it may be moved, as data: a further analyte is a further
 * record. Values are in the analyte's customary unit; each names its origin.
 */
export type AnalyteLimits = {
	/** Customary unit, in which all that follows is given. */
	unit: Unit;
	/** Raising it means adding alkali, which moves pH. */
	isAlkali: boolean;
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

const salinity: AnalyteLimits['salinity'] = {
	low: 33,
	high: 37,
	maxChangePerDay: 1,
	origin: 'change a day: common practice, no source; the range: judgement'
};
/** Calcium chloride and magnesium salts hardly move the pH: the same bounds hold for the tank itself. */
const noPhOfSalts: AnalyteLimits['ph'] = {
	maxRisePerDay: 0.2,
	highest: 8.5,
	lowest: 7.5,
	origin: 'rise and highest: common practice, no source; lowest: judgement'
};
const oceanMetals =
	'Reference seawater of salinity 35, 10.28 and 52.8 mmol/kg (Millero and others 2008, Deep-Sea Res. I 55:50; from memory), about 2 % either way';

export const analyteLimits: Record<Analyte, AnalyteLimits> = {
	alkalinity: {
		unit: 'dKH',
		isAlkali: true,
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
		salinity,
		weeklyTooRare: { abovePerDay: 0.5, origin: PRACTICE }
	},
	calcium: {
		unit: 'mg/L',
		isAlkali: false,
		band: { low: 380, high: 450, origin: PRACTICE },
		openOcean: { low: 410, high: 430, salinity: 35, origin: oceanMetals },
		rise: { usualPerDay: 20, hardCapPerDay: 20, origin: PRACTICE },
		ph: noPhOfSalts,
		lowAlarm: { below: 320, origin: 'judgement' },
		sensible: { low: 350, high: 480, origin: 'judgement' },
		salinity,
		weeklyTooRare: { abovePerDay: 10, origin: 'judgement' }
	},
	magnesium: {
		unit: 'mg/L',
		isAlkali: false,
		band: { low: 1250, high: 1400, origin: PRACTICE },
		openOcean: { low: 1290, high: 1330, salinity: 35, origin: oceanMetals },
		rise: { usualPerDay: 50, hardCapPerDay: 50, origin: PRACTICE },
		ph: noPhOfSalts,
		lowAlarm: { below: 1000, origin: 'judgement' },
		sensible: { low: 1150, high: 1500, origin: 'judgement' },
		salinity,
		weeklyTooRare: { abovePerDay: 15, origin: 'judgement' }
	},
	// Nobody keeps a band of the sum: these follow from calcium and magnesium, and nothing is added by it.
	hardness: {
		unit: 'mmol/L',
		isAlkali: false,
		band: { low: 60.9, high: 68.8, origin: 'from the bands of calcium and magnesium' },
		openOcean: { low: 63.3, high: 65.4, salinity: 35, origin: oceanMetals },
		rise: { usualPerDay: 2, hardCapPerDay: 2, origin: 'from the rates of calcium and magnesium' },
		ph: noPhOfSalts,
		lowAlarm: { below: 49, origin: 'judgement' },
		sensible: { low: 56, high: 73.7, origin: 'judgement' },
		salinity,
		weeklyTooRare: { abovePerDay: 0.8, origin: 'judgement' }
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
