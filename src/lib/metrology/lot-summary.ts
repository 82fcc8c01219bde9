import { holds, intervalAbout, type Interval } from './interval';
import { mean } from './replicates';

/** One check of a solution of known content. */
export type ReferenceCheck = {
	/** What was found, and what the solution is said to hold (above 0), in one unit. */
	value: number;
	expected: number;
	/** Name of the bottle of titrant. */
	lot: string;
	/** ms since 1970. */
	atEpochMs: number;
	/** Name of the solution, where there was more than one. */
	solution?: string;
};

/** A check as a recovery: found over expected. */
export type LotCheck = ReferenceCheck & { recovery: number };

export type LotSummary = {
	lot: string;
	isBaseline: boolean;
	n: number;
	fromEpochMs: number;
	toEpochMs: number;
	meanRecovery: number;
	standardError: number;
	/** Mean recovery less that of the baseline, as a share, and where it truly lies; null for the baseline. */
	difference: number | null;
	interval: Interval | null;
	/** The interval leaves out 0. */
	standsApart: boolean;
	/**
	 * Was a solution of the baseline checked with this lot too? Else the solutions may differ and not the
	 * lots. Null where solutions have no names, and for the baseline.
	 */
	sharesSolution: boolean | null;
};

export type LotGroup = { lot: string; checks: LotCheck[] };

/** @throws RangeError naming the check and field that is out of range */
export function recoveriesOf(checks: readonly ReferenceCheck[]): LotCheck[] {
	return checks.map((check, i) => {
		for (const field of ['value', 'atEpochMs'] as const)
			if (!Number.isFinite(check[field]))
				throw new RangeError(`checks[${i}].${field} must be a number; found ${check[field]}`);
		if (!(check.expected > 0 && Number.isFinite(check.expected)))
			throw new RangeError(`checks[${i}].expected must be above 0; found ${check.expected}`);
		return { ...check, recovery: check.value / check.expected };
	});
}

/** By lot, in the order in which lots were first used. Checks must be in the order of time. */
export function groupByLot(checks: readonly LotCheck[]): LotGroup[] {
	const groups = new Map<string, LotCheck[]>();
	for (const check of checks) groups.set(check.lot, [...(groups.get(check.lot) ?? []), check]);
	return [...groups].map(([lot, ofLot]) => ({ lot, checks: ofLot }));
}

export const meanRecoveryOf = ({ checks }: LotGroup): number =>
	mean(checks.map(({ recovery }) => recovery));

/** Scatter within lots, pooled; whatever differs between lots is not in it. */
export function pooledWithinLots(groups: readonly LotGroup[]): {
	sd: number;
	degreesOfFreedom: number;
} {
	const squares = groups.flatMap((group) => {
		const middle = meanRecoveryOf(group);
		return group.checks.map(({ recovery }) => (recovery - middle) ** 2);
	});
	const degreesOfFreedom = squares.length - groups.length;
	if (degreesOfFreedom === 0) return { sd: 0, degreesOfFreedom };
	return {
		sd: Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / degreesOfFreedom),
		degreesOfFreedom
	};
}

function sharesSolution(group: LotGroup, baseline: LotGroup): boolean | null {
	const named = (of: LotGroup) => of.checks.flatMap(({ solution }) => solution ?? []);
	const [own, other] = [named(group), named(baseline)];
	return own.length === 0 || other.length === 0 ? null : own.some((name) => other.includes(name));
}

/** @param confidence of each interval by itself */
export function summaryOf(
	group: LotGroup,
	baseline: LotGroup,
	{ sd, degreesOfFreedom }: { sd: number; degreesOfFreedom: number },
	confidence: number
): LotSummary {
	const n = group.checks.length;
	const times = group.checks.map(({ atEpochMs }) => atEpochMs);
	const isBaseline = group.lot === baseline.lot;
	const meanRecovery = meanRecoveryOf(group);
	const difference = isBaseline ? null : meanRecovery - meanRecoveryOf(baseline);
	const joint = sd * Math.sqrt(1 / n + 1 / baseline.checks.length);
	const interval =
		difference === null ? null : intervalAbout(difference, joint, degreesOfFreedom, confidence);
	return {
		lot: group.lot,
		isBaseline,
		n,
		fromEpochMs: Math.min(...times),
		toEpochMs: Math.max(...times),
		meanRecovery,
		standardError: sd / Math.sqrt(n),
		difference,
		interval,
		standsApart: interval !== null && !holds(interval, 0),
		sharesSolution: isBaseline ? null : sharesSolution(group, baseline)
	};
}
