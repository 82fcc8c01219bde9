import type { Unit } from '../../kits';

/** A value with its expanded uncertainty (about 95 %), in one of the units of its analyte. */
export type KnownValue = { value: number; expandedUncertainty: number; unit: Unit };

/** What is known of a tank at about one time; whatever is left out is not looked at. */
export type ConsistencyInput = {
	alkalinity?: KnownValue;
	calcium?: KnownValue;
	magnesium?: KnownValue;
	/** Magnesium was found as the rest when this calcium was taken off. */
	isMagnesiumByDifference?: boolean;
	/** Practical salinity, 20 to 44; 1 either way when its ± is left out. */
	salinity?: { value: number; expandedUncertainty?: number };
	/** 25 when left out. */
	temperatureC?: number;
	/** As the meter shows it; 0.15 either way when its ± is left out. */
	ph?: { value: number; expandedUncertainty?: number };
	/** Used up between two days, what was dosed added back; below 0: more than before. */
	usedUp?: { alkalinity: KnownValue; calcium: KnownValue };
};

export type FindingId =
	'salinity' | 'seaProportion' | 'oneErrorInBoth' | 'useInProportion' | 'magnesiumForHolding';

/** One thing that was looked at. */
export type Finding = {
	id: FindingId;
	/** Nothing stands out, something does, or these values cannot tell. */
	says: 'nothingOdd' | 'odd' | 'cannotTell';
	/** For the screen. */
	sentence: string;
	/** The figures behind it. */
	because: string;
};

/** Saturation of aragonite with the range that the inputs leave open. */
export type Saturation = { value: number; low: number; high: number; sentence: string };

export type Consistency = {
	findings: readonly Finding[];
	/** Null while alkalinity, calcium, salinity or pH is not known. */
	saturation: Saturation | null;
	/** What such a look cannot tell: stands beside it always. */
	limits: readonly string[];
};
