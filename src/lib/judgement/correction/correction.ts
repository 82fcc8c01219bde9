import type { Analyte, Unit } from '../../kits';
import type { Means } from '../../observation';
import type { Band, Decision } from '../decision/decision';

/** What would be added, with a product whose strength nobody knows yet. */
export type PlannedMeans = Means | { by: 'product'; risePerMlIn100L: null };

/**
 * What a correction is computed from. What is left out or null is not known; most of it must be, or
 * there is no plan.
 */
export type CorrectionInput = {
	decision: Decision;
	/** Where it is, with its standard uncertainty; its unit is that of all that follows. */
	value: { value: number; standardUncertainty: number; unit: Unit };
	/**
	 * ± of a retest by the test that is used, about 95 %, in the unit: what a retest may be off by itself. The
	 * plan then says how far a retest may lie from what it expects.
	 */
	testExpandedUncertainty?: number | null | undefined;
	/**
	 * What the tank may hold instead, where the value is not known to be one: `value` is then the one that
	 * asks for least, and no more than a first step is planned.
	 */
	otherValues?: readonly number[] | undefined;
	target?: number | null | undefined;
	/** Water really in the system (display, sump, less rock and sand), L, with its expanded uncertainty. */
	waterL?: number | null | undefined;
	/** A tenth of the water when not known. */
	waterExpandedUncertaintyL?: number | null | undefined;
	/**
	 * Fall per day by consumption and rise per day by dosers that go on running, in the unit, both at
	 * least 0. With neither known they are taken to be in balance, with a ± of its own that grows by the day.
	 */
	consumptionPerDay?: number | null | undefined;
	dosedPerDay?: number | null | undefined;
	means?: PlannedMeans | null | undefined;
	/** Practical salinity. */
	salinity?: number | null | undefined;
	/** 25 when not known: it matters little. */
	temperatureC?: number | null | undefined;
	/** Of the tank now; 8.1 when not known. */
	ph?: number | null | undefined;
	/** The person's own limit, no higher than the hard cap. */
	maxRisePerDay?: number | null | undefined;
	/** Where the person wants the tank; the default band of the analyte when left out. */
	band?: Band | undefined;
	/** Water that evaporates in a day, L: limewater takes its place and no more. */
	evaporationLPerDay?: number | null | undefined;
	/** False while nobody is sure which unit the reading is in. */
	isUnitSure?: boolean | undefined;
	who?: 'keeper' | 'sitter' | 'child' | undefined;
	/** Alkalinity when left out. */
	analyte?: Analyte | undefined;
};

export type PlanDay = {
	/** 1 is the first. */
	day: number;
	/** Of the means: g, mL or L as `amountUnit` says. */
	amount: number;
	/** Value expected at the day's end, and its expanded uncertainty. */
	expected: number;
	expectedExpandedUncertainty: number;
	/** Change of pH if all of that day's addition went in at once, computed; adding slowly makes less. */
	phChange: number;
	isRetest: boolean;
	/**
	 * How far a retest may lie from `expected`, about 95 %: the ± of what is expected and of the test together.
	 * Left out on other days, where nobody knows the ± of the test, and where the tank may hold other values.
	 */
	retestExpandedUncertainty?: number;
};

export type CorrectionPlan = {
	kind: 'plan';
	analyte: Analyte;
	unit: Unit;
	/** What is added, in words, with hydrate and purity where it has them. */
	meansName: string;
	amountUnit: 'g' | 'mL' | 'L';
	/** As far as it can be foreseen: the last may lie short of the target. */
	days: readonly PlanDay[];
	/** Days that all of the way would take at this rate; more than there are `days` where it was cut short. */
	daysInAll: number;
	/** Of the `days`. */
	totalAmount: number;
	/** Net rise per day; below 0 where the value is brought down. */
	risePerDay: number;
	/** Rise by what is added each day, before consumption and dosers. */
	additionPerDay: number;
	/** A sum to check by hand, line by line, in plain figures. */
	sum: readonly string[];
	cautions: readonly string[];
	wouldChange: readonly string[];
};

/** No plan, and why: nothing is computed on what is unverified, unclear or over a limit. */
export type PlanRefused = { kind: 'refused'; because: readonly string[] };
