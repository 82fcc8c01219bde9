import { individualsChart, type IndividualsChart } from './chart-individuals';
import { ENOUGH } from './chart-limits';
import { requireConfidence } from './interval';
import { step } from './judged';
import {
	groupByLot,
	meanRecoveryOf,
	pooledWithinLots,
	recoveriesOf,
	summaryOf,
	type LotCheck,
	type LotGroup,
	type LotSummary,
	type ReferenceCheck
} from './lot-summary';
import { mean } from './replicates';

export type LotOptions = {
	/** The lot that others are held against; the one used first when left out. */
	baselineLot?: string;
	/** Scatter of one recovery, as a share, known from elsewhere; pooled from within the lots when left out. */
	sd?: number;
	/** Finest step of a value, in its unit: the pooled scatter is never below this over √12. */
	resolution?: number;
	/** That no lot stands apart by chance alone, 0 to 1; 0.95 when left out. */
	confidence?: number;
};

export type LotChart = {
	baselineLot: string;
	/** Scatter of one recovery, as a share, and its degrees of freedom; infinite where it was given. */
	sd: number;
	degreesOfFreedom: number;
	/** In the order of their first use. */
	lots: LotSummary[];
	/** All checks in the order of time, and their recoveries about the baseline's mean. */
	checks: LotCheck[];
	chart: IndividualsChart;
	/** The baseline holds fewer than about 20 checks. */
	isProvisional: boolean;
	/**
	 * All solutions held about the same (within 5 %): a lot that stands apart may do so in proportion or
	 * by a constant, and no factor to correct values by follows.
	 */
	isOneLevel: boolean;
};

const ONE_LEVEL = 1.05;

function scatterOf(
	groups: readonly LotGroup[],
	checks: readonly LotCheck[],
	{ sd, resolution }: LotOptions
): { sd: number; degreesOfFreedom: number } {
	for (const [field, value] of [
		['sd', sd],
		['resolution', resolution]
	] as const)
		if (value !== undefined && !(value > 0 && Number.isFinite(value)))
			throw new RangeError(`${field} must be above 0; found ${value}`);
	if (sd !== undefined) return { sd, degreesOfFreedom: Number.POSITIVE_INFINITY };
	const pooled = pooledWithinLots(groups);
	if (pooled.degreesOfFreedom === 0)
		throw new RangeError(
			'chartByLot requires a lot checked more than once, or an sd; found neither'
		);
	const floor = step(resolution ?? 0) / mean(checks.map(({ expected }) => expected));
	const floored = Math.max(pooled.sd, floor);
	if (floored === 0)
		throw new RangeError(
			'chartByLot requires recoveries that differ within a lot, or an sd or resolution; found none'
		);
	return { ...pooled, sd: floored };
}

/**
 * Checks of known solutions, lot by lot: does a lot of titrant stand apart from the baseline? Recovery is
 * found over expected. Several lots are compared at once, so each interval is widened (Bonferroni) to
 * keep the chance of a false alarm what it was asked to be. A difference need not be the titrant's: see
 * `sharesSolution`, and what else changed on the day.
 *
 * Source: t test with pooled scatter (textbook); chart as `individualsChart`.
 *
 * @param checks in any order, at least 3, of at least one lot
 * @throws RangeError naming the field out of range; when no lot is known by its name, or when the scatter
 * of one check cannot be told
 */
export function chartByLot(checks: readonly ReferenceCheck[], options: LotOptions = {}): LotChart {
	const { confidence = 0.95 } = options;
	requireConfidence(confidence);
	if (checks.length < 3)
		throw new RangeError(`chartByLot requires at least 3 checks; found ${checks.length}`);
	const ordered = recoveriesOf(checks).sort((a, b) => a.atEpochMs - b.atEpochMs);
	const groups = groupByLot(ordered);
	const baselineLot = options.baselineLot ?? groups[0]?.lot ?? '';
	const baseline = groups.find(({ lot }) => lot === baselineLot);
	if (!baseline)
		throw new RangeError(`baselineLot must be the lot of a check; found ${baselineLot}`);
	const scatter = scatterOf(groups, ordered, options);
	const others = Math.max(1, groups.length - 1);
	const ofEach = 1 - (1 - confidence) / others;
	const chart = individualsChart(
		ordered.map(({ recovery }) => recovery),
		{ target: meanRecoveryOf(baseline), sigma: scatter.sd }
	);
	const isProvisional = baseline.checks.length < ENOUGH;
	const levels = ordered.map(({ expected }) => expected);
	return {
		baselineLot,
		...scatter,
		lots: groups.map((group) => summaryOf(group, baseline, scatter, ofEach)),
		checks: ordered,
		chart: { ...chart, baseline: baseline.checks.length, isProvisional },
		isProvisional,
		isOneLevel: Math.max(...levels) <= ONE_LEVEL * Math.min(...levels)
	};
}
