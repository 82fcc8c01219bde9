import { GRAN_WINDOW_PH, type GranEndPoint, type TitrationFit } from '$lib/chemistry';
import { plain, signed } from '../charts/numbers';
import type { PlotData } from '../charts/plot';

/** One of the three drawings of a titration: what is drawn, what it says, and the same as a table. */
export type Drawing = {
	data: PlotData;
	xName: string;
	yName: string;
	sentence: string;
	caption: string;
	columns: readonly string[];
	rows: readonly (readonly string[])[];
};

const ACID = 'acid added, mL';
/** Digits of readings, as many as the longest of them has, and no more than four. */
export function decimalsOf(readings: readonly number[]): number {
	const isWhole = (decimals: number) =>
		readings.every(
			(each) => Math.abs(each * 10 ** decimals - Math.round(each * 10 ** decimals)) < 1e-6
		);
	return [0, 1, 2, 3].find(isWhole) ?? 4;
}
const decimalsOfMl = (points: readonly { addedMl: number }[]) =>
	decimalsOf(points.map(({ addedMl }) => addedMl));
const decimalsOfPh = (points: readonly { ph: number }[]) =>
	Math.max(2, decimalsOf(points.map(({ ph }) => ph)));
const largest = (points: readonly { addedMl: number }[]) =>
	Math.max(...points.map(({ addedMl }) => addedMl));

/** pH against acid, with the fitted curve where the fit looked. */
export function curveDrawing(fit: TitrationFit): Drawing {
	const { points, curve, endVolumeMl, vessel } = fit;
	const decimals = decimalsOfMl(points);
	const phDecimals = decimalsOfPh(points);
	const used = points.filter(({ isUsed }) => isUsed);
	const from = Math.min(...used.map(({ addedMl }) => addedMl));
	const drawn = curve.filter(({ addedMl }) => vessel === 'closed' || addedMl >= from);
	const end = plain(endVolumeMl, decimals);
	return {
		data: {
			points: points.map(({ addedMl, ph, isUsed }) => ({ x: addedMl, y: ph, isUsed })),
			lines: [{ kind: 'fit', points: drawn.map(({ addedMl, ph }) => ({ x: addedMl, y: ph })) }],
			marks: [{ x: endVolumeMl, words: `end, ${end} mL` }]
		},
		xName: ACID,
		yName: 'pH as the meter showed it',
		sentence: `The end is at ${end} mL of acid. ${
			vessel === 'open'
				? `In an open vessel CO₂ leaves, so the curve goes by the ${used.length} readings at the low end; hollow ones are not used.`
				: `The curve goes by all ${used.length} readings.`
		}`,
		caption: 'Readings, and the pH of the fitted curve',
		columns: ['mL', 'pH', 'curve', 'used'],
		rows: points.map(({ addedMl, ph, fittedPh, isUsed }) => [
			plain(addedMl, decimals),
			plain(ph, phDecimals),
			isUsed ? plain(fittedPh, phDecimals) : '',
			isUsed ? 'yes' : 'no'
		])
	};
}

/** Readings before the end by more than this share of it say nothing in a Gran line. */
const LINE_FROM = 0.75;

/** The Gran function against acid: straight past the end, and carried back to nothing. */
export function granDrawing(gran: GranEndPoint): Drawing {
	const { points, line, endVolumeMl, windowPh, pointsUsed } = gran;
	const decimals = decimalsOfMl(points);
	const near = points.filter(({ addedMl, isUsed }) => isUsed || addedMl >= LINE_FROM * endVolumeMl);
	const used = near.filter(({ isUsed }) => isUsed);
	const usedMl = used.map(({ addedMl }) => addedMl);
	const lastMl = largest(near);
	const end = plain(endVolumeMl, decimals);
	return {
		data: {
			points: near.map(({ addedMl, value, isUsed }) => ({ x: addedMl, y: value, isUsed })),
			lines: [
				{
					kind: 'fit',
					points: [endVolumeMl, lastMl].map((x) => ({ x, y: line.intercept + line.slope * x }))
				}
			],
			stretch: { from: Math.min(...usedMl), to: Math.max(...usedMl) },
			marks: [{ x: endVolumeMl, words: `end, ${end} mL` }],
			hasZeroLine: true
		},
		xName: ACID,
		yName: 'acid left over, mmol',
		sentence: `Past the end every drop of acid stays as acid, so these points lie on a straight line. Carried back to nothing it meets ${end} mL. It is laid through the ${pointsUsed} readings from pH ${plain(windowPh.low)} to ${plain(windowPh.high)}, on the shaded stretch.`,
		caption: 'Acid left over at each reading near the end, and the straight line',
		columns: ['mL', 'mmol', 'line', 'used'],
		rows: near.map(({ addedMl, value, lineValue, isUsed }) => [
			plain(addedMl, decimals),
			plain(value, 4),
			plain(lineValue, 4),
			isUsed ? 'yes' : 'no'
		])
	};
}

/** Next to nothing must not fill the drawing: so much pH it spans at least. */
const LEAST_SPAN_PH = 0.04;

/** What each reading is off the curve. */
export function residualDrawing(fit: TitrationFit): Drawing {
	const used = fit.points.filter(({ isUsed }) => isUsed);
	const decimals = decimalsOfMl(fit.points);
	const sizes = used.map(({ residualPh }) => Math.abs(residualPh));
	const most = Math.max(...sizes);
	return {
		data: {
			points: used.map(({ addedMl, residualPh }) => ({ x: addedMl, y: residualPh, isUsed: true })),
			hasZeroLine: true,
			leastSpanY: LEAST_SPAN_PH
		},
		xName: ACID,
		yName: 'reading less curve, pH',
		sentence: `${most < 0.0005 ? 'No reading lies off the curve' : `The readings lie up to ${plain(most, most < 0.01 ? 3 : 2)} pH off the curve`}. They should scatter about the line at 0 without a pattern.`,
		caption: 'What each reading is off the curve',
		columns: ['mL', 'pH off the curve'],
		rows: used.map(({ addedMl, residualPh }) => [plain(addedMl, decimals), signed(residualPh, 3)])
	};
}

export const windowWords = `pH ${plain(GRAN_WINDOW_PH.low)} to ${plain(GRAN_WINDOW_PH.high)}`;
