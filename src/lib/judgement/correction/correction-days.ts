import { convertValue } from '../../kits';
import { additionFor, amountFor, phChangeOf, type KnownCorrection } from './correction-amount';
import type { PlanDay } from './correction';
import { meansFigures } from './correction-means';
import { refusalWords, type Limit } from './correction-limits';
import { limitsOf } from '../decision/limits';
import { FIRST_STEP_DAYS } from '../decision/split-need';

/** No longer: what is known today says little of a month hence. Judgement. */
export const LONGEST_PLAN_DAYS = 30;
/** What consumption and dosers may differ from what was said, expanded, as a share; judgement. */
const CONSUMPTION_EXPANDED_SHARE = 0.3;
/** A retest every so many days, and at the end; judgement. */
const RETEST_EVERY_DAYS = 2;

/** A plan may widen the ± of the value by so much even where the band is narrower than that; judgement. */
const MOST_WIDENING = 1.5;

/** Days of a plan, or what stood in the way of every length of it. */
export type Planned =
	| {
			/** Those whose outcome can be foreseen well enough; the last may lie short of the target. */
			days: PlanDay[];
			/** Days that all of the way would take. */
			daysInAll: number;
			netPerDay: number;
			additionPerDay: number;
			/** What larger steps would pass, other than the rate that was asked for; null where nothing. */
			slowedBy: Limit | null;
	  }
	| { because: string };

/**
 * The days up to which the ± of what is to be expected, both ways, is no wider than the band: beyond,
 * a retest could not tell a plan that works from one that does not. No more than a first step where it
 * is not known which of several values the tank holds.
 */
function foreseeable(plan: KnownCorrection, days: readonly PlanDay[]): PlanDay[] {
	const own = 2 * plan.value.standardUncertainty;
	const widest = Math.max(plan.bandWidth / 2, MOST_WIDENING * own);
	const most = plan.otherValues.length > 0 ? FIRST_STEP_DAYS : days.length;
	const told = days
		.slice(0, most)
		.filter(
			({ expectedExpandedUncertainty }) => expectedExpandedUncertainty <= widest * (1 + 1e-9)
		);
	return told.map((day, i) =>
		withRetestBand(plan, i === told.length - 1 ? { ...day, isRetest: true } : day)
	);
}

/** The test of a retest is off by something itself: what it finds may lie further off than what is expected. */
function withRetestBand(plan: KnownCorrection, day: PlanDay): PlanDay {
	const { testExpandedUncertainty: ofTest, otherValues } = plan;
	if (!day.isRetest || ofTest === null || otherValues.length > 0) return day;
	return {
		...day,
		retestExpandedUncertainty: Math.hypot(day.expectedExpandedUncertainty, ofTest)
	};
}

/** Expanded uncertainty of the value after some days of additions. */
function expandedAfter(plan: KnownCorrection, addition: number, day: number): number {
	const { value, waterL, waterExpandedUncertaintyL, means } = plan;
	const added = Math.abs(addition) * day;
	return Math.hypot(
		2 * value.standardUncertainty,
		(added * waterExpandedUncertaintyL) / waterL,
		added * meansFigures(means).strengthExpandedShare,
		CONSUMPTION_EXPANDED_SHARE * plan.consumptionPerDay * day,
		CONSUMPTION_EXPANDED_SHARE * plan.dosedPerDay * day,
		plan.unknownPerDay * day
	);
}

function daysOf(plan: KnownCorrection, n: number): PlanDay[] {
	const netPerDay = (plan.target - plan.value.value) / n;
	const addition = additionFor(plan, netPerDay);
	return Array.from({ length: n }, (_, i) => {
		const from = plan.value.value + i * netPerDay;
		return {
			day: i + 1,
			amount: amountFor(plan, addition, from),
			expected: from + netPerDay,
			expectedExpandedUncertainty: expandedAfter(plan, addition, i + 1),
			phChange: phChangeOf(plan, addition, from),
			isRetest: (i + 1) % RETEST_EVERY_DAYS === 0 || i + 1 === n
		};
	});
}

/** The first limit that a length of plan would pass; null when it keeps them all. */
function passedLimit(plan: KnownCorrection, n: number, days: readonly PlanDay[]): Limit | null {
	const { analyte, value, waterL, waterExpandedUncertaintyL, ph } = plan;
	const limits = limitsOf(analyte);
	const netPerDay = (plan.target - value.value) / n;
	const addition = additionFor(plan, netPerDay);
	// With as little water as the ± allows, an addition does most.
	const most = waterL / (waterL - waterExpandedUncertaintyL);
	const net = addition * most - plan.consumptionPerDay + plan.dosedPerDay;
	const cap = convertValue(limits.rise.hardCapPerDay, limits.unit, value.unit, analyte);
	if (Math.abs(netPerDay) > plan.maxRisePerDay * (1 + 1e-9) || Math.abs(net) > cap * (1 + 1e-9))
		return 'rate';
	const highest = Math.max(...days.map((day) => day.phChange * most));
	if (highest > limits.ph.maxRisePerDay) return 'phRise';
	if (highest > 0 && ph + highest > limits.ph.highest) return 'phHighest';
	const largest = Math.max(...days.map((day) => day.amount));
	// New water that the tank has come up with, or passed, would take all of it or less than none.
	const isOutOfReach = days.some(({ amount }) => !(amount > 0 && Number.isFinite(amount)));
	if (
		plan.means.by === 'waterChange' &&
		(isOutOfReach || largest > plan.means.share * waterL * (1 + 1e-9))
	)
		return 'share';
	if (
		plan.means.by === 'limewater' &&
		plan.evaporationLPerDay !== null &&
		largest > plan.evaporationLPerDay
	)
		return 'evaporation';
	return null;
}

/**
 * Equal daily steps, as few as the limits allow: the net change a day, also if there is as little
 * water as its ± allows; pH; evaporation; the size of a water change.
 */
export function planDays(plan: KnownCorrection): Planned {
	const way = plan.target - plan.value.value;
	const drift = plan.dosedPerDay - plan.consumptionPerDay;
	if (way * drift > 0 && Math.abs(drift) >= plan.maxRisePerDay)
		return {
			because: 'What is used up and what is dosed already move it that way as fast as is allowed.'
		};
	let slowedBy: Limit | null = null;
	const refusal = () => slowedBy && refusalWords(slowedBy, plan.analyte);
	const fewest = Math.max(1, Math.ceil(Math.abs(way) / plan.maxRisePerDay - 1e-9));
	for (let n = fewest; n <= LONGEST_PLAN_DAYS; n++) {
		const netPerDay = way / n;
		const additionPerDay = additionFor(plan, netPerDay);
		if (way * additionPerDay <= 0)
			return {
				because:
					refusal() ?? 'What is used up and what is dosed already bring it there by themselves.'
			};
		const days = daysOf(plan, n);
		const passed = passedLimit(plan, n, days);
		if (passed === null) {
			const told = foreseeable(plan, days);
			if (told.length > 0) return { days: told, daysInAll: n, netPerDay, additionPerDay, slowedBy };
			return {
				because:
					'After a single day it could not be foreseen where the value is: volume, consumption or dosing are known too poorly for a plan.'
			};
		}
		slowedBy = passed;
	}
	return {
		because:
			refusal() ?? `It would take more than ${LONGEST_PLAN_DAYS} days: measure again before then.`
	};
}
