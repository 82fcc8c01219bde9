import cdf from '@stdlib/stats-base-dists-normal-cdf';
import quantile from '@stdlib/stats-base-dists-normal-quantile';
import {
	faultClasses,
	type Decision,
	type Diagnosis,
	type RankedCheck
} from '../../src/lib/judgement';
import { convertValue, type Unit } from '../../src/lib/kits';

export type Component = { weight: number; mean: number; sd: number };

/** A diagnosis whose true value is a mixture of normal distributions, given in dKH. */
export function madeDiagnosis({
	components,
	isIndependent = true,
	unit = 'dKH'
}: {
	components: readonly Component[];
	isIndependent?: boolean;
	unit?: Unit;
}): Diagnosis {
	const total = components.reduce((sum, { weight }) => sum + weight, 0);
	const parts = components
		.map(({ weight, mean, sd }) => ({
			weight: weight / total,
			mean: convertValue(mean, 'dKH', unit),
			sd: convertValue(sd, 'dKH', unit)
		}))
		.sort((a, b) => b.weight - a.weight);
	const cumulative = (value: number) =>
		parts.reduce((sum, { weight, mean, sd }) => sum + weight * cdf(value, mean, sd), 0);
	const quantileOf = (p: number) => {
		let low = Math.min(...parts.map(({ mean, sd }) => quantile(1e-9, mean, sd)));
		let high = Math.max(...parts.map(({ mean, sd }) => quantile(1 - 1e-9, mean, sd)));
		for (let i = 0; i < 80; i++) {
			const middle = (low + high) / 2;
			if (cumulative(middle) < p) low = middle;
			else high = middle;
		}
		return (low + high) / 2;
	};
	const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
	const variance = parts.reduce(
		(sum, part) => sum + part.weight * (part.sd ** 2 + (part.mean - mean) ** 2),
		0
	);
	return {
		unit,
		explanations: [],
		faults: {},
		classes: Object.fromEntries(faultClasses.map((name) => [name, 0.1])) as Diagnosis['classes'],
		nothingWrong: 0.7,
		waterChanged: 0.1,
		noneOfThese: 0.05,
		groups: [],
		trueValue: {
			mean,
			median: quantileOf(0.5),
			standardDeviation: Math.sqrt(variance),
			interval95: [quantileOf(0.025), quantileOf(0.975)],
			humps: parts.map((part) => ({
				weight: part.weight,
				mean: part.mean,
				standardUncertainty: part.sd,
				explanation: 'none'
			})),
			density: []
		},
		cumulative,
		isIndependent,
		unused: []
	};
}

export const normalAt = (mean: number, sd: number): Component[] => [{ weight: 1, mean, sd }];

export const madeCheck = (changesAdvice = 0.3): RankedCheck => ({
	kind: 'checks',
	checks: ['reference'],
	information: 0.4,
	cost: { minutes: 12, priceMinutes: 3, riskMinutes: 0 },
	score: 0.03,
	changesAdvice,
	because: 'A known solution parts the kit from the water.'
});

/** A verified decision to raise or to lower. */
export const toAdjust = (direction: 'raise' | 'lower' = 'raise'): Decision => ({
	verdict: 'adjust',
	direction,
	probabilities: { below: 0.9, within: 0.09, above: 0.01 },
	because: [],
	wouldChange: [],
	check: null,
	lacks: null,
	isVerified: true,
	change: null,
	retestInDays: 2
});
