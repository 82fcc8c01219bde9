import { expectedChangeOf, type EvidenceOf } from '../../observation';
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
 * What is used up in a day where nobody said, as a standard deviation in ordinary drifts of a day: 0.15 dKH.
 * Judgement.
 */
const USED_IN_DRIFTS = 5;

/**
 * How far dosing and consumption may be out of balance where one of them alone was said, as a standard
 * deviation in the customary unit: the other is anything from nothing to twice as much, and no surer than
 * what a tank uses in so many days. Judgement.
 */
function imbalance(
	{ water }: RowContext,
	{ daysAgo, dosed, consumed }: EvidenceOf<'earlier'>,
	inUnit: (value: number) => number
): number {
	const said = inUnit(dosed ?? consumed ?? 0);
	return Math.max(said / Math.sqrt(3), USED_IN_DRIFTS * water.ordinary.perDaySd * daysAgo);
}

/**
 * Water of the tank so many days ago: what it is now less the change to be expected, less how it may
 * have wandered. Two days share the way from the later one to now.
 */
export function tankThen(
	context: RowContext,
	evidence: EvidenceOf<'earlier'>,
	inUnit: (value: number) => number
): Amount {
	const { prior, water, days } = context;
	const { daysAgo } = evidence;
	const expectedChange = expectedChangeOf(evidence);
	const { daySd, perRootDaySd, perDaySd } = water.ordinary;
	const way: Loading[] = days
		.filter((day) => day <= daysAgo)
		.map((day, i) => ({
			of: `way:${day}`,
			amount: -perRootDaySd * Math.sqrt(day - (days[i - 1] ?? 0))
		}));
	return {
		amountMean: prior.mean - inUnit(expectedChange ?? 0),
		amountLoadings: [
			{ of: TANK, amount: prior.standardDeviation },
			{ of: 'trend', amount: -perDaySd * daysAgo },
			{ of: `day:${daysAgo}`, amount: daySd },
			...(expectedChange === null
				? [{ of: 'balance', amount: imbalance(context, evidence, inUnit) }]
				: []),
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
