import {
	cusumChart,
	ewmaChart,
	type CusumChart,
	type EwmaChart,
	type LotChart
} from '$lib/metrology';

/** Whether what runs along goes through all lots, or begins anew with each. */
export const countings = { through: 'right through', eachLot: 'anew with each bottle' } as const;
export type Counting = keyof typeof countings;

/** Checks that were counted together, by index: the first, and the one after the last. */
export type Stretch = { from: number; to: number };
export type RunningAverage = Pick<EwmaChart, 'points' | 'target' | 'firstSignal'> & {
	stretches: readonly Stretch[];
};
export type RunningSum = Pick<CusumChart, 'points' | 'target' | 'firstSignal' | 'limit'>;

function stretchesOf({ checks }: LotChart, counting: Counting): Stretch[] {
	if (counting === 'through') return [{ from: 0, to: checks.length }];
	const starts = checks.flatMap(({ lot }, i) => (checks[i - 1]?.lot === lot ? [] : [i]));
	return starts.map((from, i) => ({ from, to: starts[i + 1] ?? checks.length }));
}

/**
 * Running average and running sum of the recoveries, about the mean and scatter of the first lot. Right
 * through they see what goes on across bottles, as a solution or hands that change; anew with each
 * bottle, what goes on within one, whatever the bottle before did.
 */
export function runningOf(
	byLot: LotChart,
	counting: Counting
): { average: RunningAverage; sum: RunningSum } {
	const recoveries = byLot.checks.map(({ recovery }) => recovery);
	const basis = { target: byLot.chart.target, sigma: byLot.sd };
	const stretches = stretchesOf(byLot, counting);
	const runs = stretches.map(({ from, to }) => ({
		from,
		average: ewmaChart(recoveries.slice(from, to), basis),
		sum: cusumChart(recoveries.slice(from, to), basis)
	}));
	const average = runs.find((run) => run.average.firstSignal);
	const sum = runs.find((run) => run.sum.firstSignal);
	const ofAverage = average?.average.firstSignal;
	const ofSum = sum?.sum.firstSignal;
	return {
		average: {
			target: basis.target,
			stretches,
			points: runs.flatMap((run) => shifted(run.average.points, run.from)),
			firstSignal:
				average && ofAverage ? { ...ofAverage, index: ofAverage.index + average.from } : null
		},
		sum: {
			target: basis.target,
			// The same for all: it follows from the scatter.
			limit: runs[0]?.sum.limit ?? Number.NaN,
			points: runs.flatMap((run) => shifted(run.sum.points, run.from)),
			firstSignal:
				sum && ofSum
					? {
							...ofSum,
							index: ofSum.index + sum.from,
							onsetIndex: ofSum.onsetIndex + sum.from
						}
					: null
		}
	};
}

const shifted = <Point extends { index: number }>(points: readonly Point[], by: number): Point[] =>
	points.map((point) => ({ ...point, index: point.index + by }));
