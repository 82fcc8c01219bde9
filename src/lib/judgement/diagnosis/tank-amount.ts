import type { Loading, Row, RowContext } from './row';

/** The variable that is the tank's true value now, as all amounts of tank water have it. */
export const TANK = 'tank';

type Amount = Pick<Row, 'amountMean' | 'amountLoadings'>;

/** Water of the tank in a portion taken now. */
export function tankNow(context: RowContext, sampling: string | null): Amount {
	const { prior, water } = context;
	return {
		amountMean: prior.mean,
		amountLoadings: [
			{ of: TANK, amount: prior.standardDeviation },
			{ of: `portion:${sampling}`, amount: water.ordinary.portionSd }
		]
	};
}

/**
 * Water of the tank so many days ago: what it is now less the change to be expected, less how it may
 * have wandered. Two days share the way from the later one to now.
 */
export function tankThen(context: RowContext, daysAgo: number, expectedChange: number): Amount {
	const { prior, water, days } = context;
	const { daySd, perRootDaySd, perDaySd } = water.ordinary;
	const way: Loading[] = days
		.filter((day) => day <= daysAgo)
		.map((day, i) => ({
			of: `way:${day}`,
			amount: -perRootDaySd * Math.sqrt(day - (days[i - 1] ?? 0))
		}));
	return {
		amountMean: prior.mean - expectedChange,
		amountLoadings: [
			{ of: TANK, amount: prior.standardDeviation },
			{ of: 'trend', amount: -perDaySd * daysAgo },
			{ of: `day:${daysAgo}`, amount: daySd },
			...way
		]
	};
}

/** A known solution: readings of one name share what is wrong with it. */
export function solution(name: string, nominal: number, expandedUncertainty: number): Amount {
	return {
		amountMean: nominal,
		amountLoadings: [{ of: `solution:${name}`, amount: expandedUncertainty / 2 }]
	};
}
