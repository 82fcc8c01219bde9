import type { Analyte } from '../../../src/lib/kits';
import {
	adviceLoss,
	decide,
	type Act,
	type Band,
	type Diagnosis
} from '../../../src/lib/judgement';

const acts: readonly Act[] = ['leave', 'raise', 'lower'];
const CELLS = 400;

/** Which way a number by itself would have it moved. */
export const actOnReading = (value: number, { low, high }: Band): Act =>
	value < low ? 'raise' : value > high ? 'lower' : 'leave';

/** What is poured now by the advice, with no more checks to be had: nothing unless it says adjust. */
export function actAdvised(diagnosis: Diagnosis, band: Band, analyte: Analyte = 'alkalinity'): Act {
	const { verdict, direction } = decide({
		diagnosis,
		analyte,
		band,
		livestock: 'notLooked',
		next: null,
		isEnough: true,
		isSalinityKnown: true
	});
	return verdict === 'adjust' && direction !== null ? direction : 'leave';
}

/** The act that is expected to cost least by what is believed of the value alone. */
export function actByBelief(
	{ trueValue, cumulative }: Diagnosis,
	band: Band,
	analyte: Analyte = 'alkalinity'
): Act {
	const reach = 6 * Math.max(trueValue.standardDeviation, 1e-6);
	const step = (2 * reach) / CELLS;
	const expected = (act: Act) => {
		let sum = 0;
		let below = cumulative(trueValue.mean - reach);
		for (let i = 0; i < CELLS; i++) {
			const from = trueValue.mean - reach + i * step;
			const above = cumulative(from + step);
			sum += (above - below) * adviceLoss(act, from + step / 2, band, analyte);
			below = above;
		}
		return sum;
	};
	const losses = acts.map((act) => ({ act, loss: expected(act) }));
	return losses.reduce((best, each) => (each.loss < best.loss ? each : best)).act;
}

/** Minutes an act costs more than the best one, the true value being known. */
export function regretOf(
	act: Act,
	trueValue: number,
	band: Band,
	analyte: Analyte = 'alkalinity'
): number {
	const best = Math.min(...acts.map((each) => adviceLoss(each, trueValue, band, analyte)));
	return adviceLoss(act, trueValue, band, analyte) - best;
}
