import { plain, signed } from '../charts/numbers';
import type { PlotData } from '../charts/plot';
import type { BlankFound } from './blank';
import { titrantUnits, type TitrantUnit } from './blank-words';
import type { Comparison } from './comparison';
import { decimalsOfStep } from './figures';
import type { ThroughBoth } from './line';
import type { PortionsTyped } from './portions';

/** What a drawing shows, what it says, and the same as a table. */
export type Drawing = {
	data: PlotData;
	xName: string;
	yName: string;
	sentence: string;
	caption: string;
	columns: readonly string[];
	rows: readonly (readonly string[])[];
};

/** Differences against the mean of both, with their mean and limits; null for fewer than 3 samples. */
export function differenceDrawing(
	{ limits, pairs, step }: Comparison,
	unit: string
): Drawing | null {
	if (!limits) return null;
	const { points, bias, lower, upper } = limits;
	const means = points.map(({ mean }) => mean);
	const [from, to] = [Math.min(...means), Math.max(...means)];
	const level = (y: number) => [
		{ x: from, y },
		{ x: to, y }
	];
	const decimals = decimalsOfStep(step);
	return {
		data: {
			points: points.map(({ mean: x, difference: y }) => ({ x, y, isUsed: true })),
			lines: [
				{ kind: 'fit', points: level(bias) },
				{ kind: 'limit', points: level(lower.value) },
				{ kind: 'limit', points: level(upper.value) }
			],
			hasZeroLine: true
		},
		xName: `mean of both, ${unit}`,
		yName: `your kit less the other, ${unit}`,
		sentence:
			'Each point is one sample. The strong line is the mean difference; about 19 of 20 samples should lie between the broken ones; the thin line at 0 is no difference.',
		caption: 'Each sample: both values, their mean and their difference',
		columns: ['No.', 'Your kit', 'Other', 'Mean', 'Difference'],
		rows: pairs.map(({ own, other }, i) => [
			`${i + 1}`,
			plain(own, decimals),
			plain(other, decimals),
			plain((own + other) / 2, decimals),
			signed(own - other, decimals)
		])
	};
}

/** Own kit against the other, with the line through both and that of two alike. */
export function lineDrawing(line: ThroughBoth, { pairs, step }: Comparison, unit: string): Drawing {
	const { from, to, offset, slope } = line;
	const at = (x: number) => offset.value + slope.value * x;
	const decimals = decimalsOfStep(step);
	return {
		data: {
			points: pairs.map(({ own: y, other: x }) => ({ x, y, isUsed: true })),
			lines: [
				{
					kind: 'limit',
					points: [
						{ x: from, y: from },
						{ x: to, y: to }
					]
				},
				{
					kind: 'fit',
					points: [
						{ x: from, y: at(from) },
						{ x: to, y: at(to) }
					]
				}
			]
		},
		xName: `the other, ${unit}`,
		yName: `your kit, ${unit}`,
		sentence:
			'Each point is one sample. The strong line goes through them; on the broken one both would read the same.',
		caption: 'Each sample: both values, and the line at the other’s value',
		columns: ['No.', 'Other', 'Your kit', 'Line'],
		rows: pairs.map(({ own, other }, i) => [
			`${i + 1}`,
			plain(other, decimals),
			plain(own, decimals),
			plain(at(other), decimals)
		])
	};
}

/** Titrant against the size of the portion, with the line carried back to no water. */
export function blankDrawing(
	{ blank, slope }: BlankFound,
	{ portions, titrantStep }: PortionsTyped,
	unit: TitrantUnit
): Drawing {
	const largest = Math.max(...portions.map(({ sampleVolume }) => sampleVolume));
	const at = (x: number) => blank.value + slope.value * x;
	const decimals = decimalsOfStep(titrantStep);
	return {
		data: {
			points: portions.map(({ sampleVolume: x, titrantVolume: y }) => ({ x, y, isUsed: true })),
			lines: [
				{
					kind: 'fit',
					points: [
						{ x: 0, y: at(0) },
						{ x: largest, y: at(largest) }
					]
				}
			],
			hasZeroLine: true
		},
		xName: 'portion, mL',
		yName: `titrant, ${titrantUnits[unit]}`,
		sentence:
			'Each point is one portion. Where the line meets the left edge, no water would use that much.',
		caption: 'Each portion, what it used, and the line there',
		columns: ['Portion, mL', `Used, ${titrantUnits[unit]}`, 'Line'],
		rows: portions.map(({ sampleVolume, titrantVolume }) => [
			String(sampleVolume),
			plain(titrantVolume, decimals),
			plain(at(sampleVolume), decimals)
		])
	};
}
