import { titrantOf, type Analyte } from '../../kits';
import type { Fault, FaultSize } from './fault';

/** Building rows of the catalogue, so that a row says what it is and nothing else. */

/** Titrations with acid. */
export const alkalinity = ['alkalinity'] as const;
/** Whatever can be titrated. */
export const everyAnalyte = Object.keys(titrantOf) as Analyte[];
/** Titrations with EDTA. */
export const chelation = everyAnalyte.filter((analyte) => titrantOf[analyte].kind === 'edta');

/** One way of coming out: so much, give or take. */
export const about = (mean: number, sd: number, of: FaultSize['of']): FaultSize[] => [
	{ weight: 1, mean, sd, of }
];

/** Either way by so much; `highShare` of the cases read high. */
export const eitherWay = (
	size: number,
	sd: number,
	of: FaultSize['of'],
	highShare = 0.5
): FaultSize[] => [
	{ weight: highShare, mean: size, sd, of },
	{ weight: 1 - highShare, mean: -size, sd, of }
];

/** Several ways of coming out, each with its share of the cases. */
export const mixed = (
	of: FaultSize['of'],
	...ways: readonly (readonly [weight: number, mean: number, sd: number])[]
): FaultSize[] => ways.map(([weight, mean, sd]) => ({ weight, mean, sd, of }));

/**
 * A slip that some people make every time and others once: two faults, since a repeat shows the one
 * and hides the other. The single one has the id of the habit with 'Once' behind it.
 */
export function habitAndOnce(
	habit: Omit<Fault, 'scope' | 'prior'>,
	prior: { habit: number; once: number }
): Fault[] {
	return [
		{ ...habit, scope: 'hands', prior: prior.habit, name: `${habit.name}, as a habit` },
		{
			...habit,
			id: onceOf(habit.id),
			scope: 'oneTest',
			prior: prior.once,
			name: `${habit.name}, this once`,
			shownBy: ['repeatFull', 'repeatQuick']
		}
	];
}
export const onceOf = (habitId: string): string => `${habitId}Once`;
