import { plain } from '../charts/numbers';
import type { BlankFound } from './blank';
import type { Comparison } from './comparison';
import type { Estimate } from './estimate';
import { fineDecimals } from './figures';
import type { ThroughBoth } from './line';

/** A number for somebody who works it out again, with digits beyond what it is known to. */
export type FineFigure = { name: string; value: string; standardError: string };

function fine(name: string, value: number, standardError: number): FineFigure {
	const decimals = fineDecimals(standardError);
	return {
		name,
		value: plain(value, decimals),
		standardError: plain(standardError, decimals)
	};
}
const fineEstimate = (name: string, { value, standardError }: Estimate) =>
	fine(name, value, standardError);

export function figuresOfDifference({ differences, limits }: Comparison): FineFigure[] {
	if (!differences) return [];
	const { meanDifference, standardError, sd, n, t, p } = differences;
	const limitError = sd * Math.sqrt(3 / n);
	return [
		fine('Mean difference', meanDifference, standardError),
		{ name: 'Standard deviation', value: plain(sd, fineDecimals(sd)), standardError: '' },
		{ name: `t, ${n - 1} degrees of freedom`, value: plain(t, 3), standardError: '' },
		{ name: 'p', value: p < 0.0001 ? '< 0.0001' : plain(p, 4), standardError: '' },
		...(limits
			? [
					fine('Lower limit, 1.96 standard deviations', limits.lower.value, limitError),
					fine('Upper limit, 1.96 standard deviations', limits.upper.value, limitError)
				]
			: [])
	];
}
export const figuresOfLine = ({ offset, slope }: ThroughBoth): FineFigure[] => [
	fineEstimate('Offset', offset),
	fineEstimate('Slope', slope)
];
export const figuresOfBlank = ({ blank, slope }: BlankFound): FineFigure[] => [
	fineEstimate('Intercept', blank),
	fineEstimate('Slope, for each mL', slope)
];
