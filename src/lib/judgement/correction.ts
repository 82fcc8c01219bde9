import type { Unit } from '../kits';
import type { Means } from '../observation';
import type { Decision } from './decision';

export type CorrectionInput = {
	decision: Decision;
	/** Where it is and where it shall be, in one unit; the first with its standard uncertainty. */
	value: { value: number; standardUncertainty: number; unit: Unit };
	target: number;
	/** Water really in the system (display, sump, less rock and sand), L, with its expanded uncertainty. */
	waterL: number;
	waterExpandedUncertaintyL: number;
	/** Fall per day by consumption and rise per day by dosers that go on running, in the unit, both at least 0. */
	consumptionPerDay: number;
	dosedPerDay: number;
	means: Means;
	salinity: number;
	temperatureC: number;
	/** Of the tank now; 8.1 when left out. */
	ph?: number;
	/** The person's own limit, no higher than the hard cap. */
	maxRisePerDay?: number;
};

export type PlanDay = {
	day: number;
	/** Of the means: g, mL or L as `amountUnit` says. */
	amount: number;
	/** Value expected at the day's end, and its expanded uncertainty. */
	expected: number;
	expectedExpandedUncertainty: number;
	/** Change of pH at once from that day's addition, computed. */
	phChange: number;
	isRetest: boolean;
};

export type CorrectionPlan = {
	kind: 'plan';
	unit: Unit;
	amountUnit: 'g' | 'mL' | 'L';
	days: readonly PlanDay[];
	totalAmount: number;
	/** Net rise per day. */
	risePerDay: number;
	/** A sum to check by hand, line by line, in plain figures. */
	sum: readonly string[];
	cautions: readonly string[];
	wouldChange: readonly string[];
};

/** No plan, and why: nothing is computed on what is unverified, unclear or over a limit. */
export type PlanRefused = { kind: 'refused'; because: readonly string[] };
