import { convertValue, type Analyte } from '../../kits';
import type { LivestockLook } from '../../observation';
import { adviceLoss, type Act } from './advice-loss';
import type { Band } from './decision';
import type { Diagnosis } from '../diagnosis/diagnosis';

/**
 * How much more often animals look like this in a tank outside its band than in one within it. They
 * lag by a week or two, so never more than 2 either way; this project's judgement.
 */
export const livestockRatios: Record<LivestockLook, number> = {
	well: 1 / 2,
	someTroubled: 1.5,
	manyTroubled: 2,
	notLooked: 1
};

/** What is believed of the tank's true value once the animals were looked at. */
export type Belief = {
	probabilities: { below: number; within: number; above: number };
	/** Minutes that each act is expected to cost. */
	losses: Readonly<Record<Act, number>>;
	/** That the true value lies below a value, in the band's unit. */
	below(value: number): number;
};

/** No probability is nothing or certain: something outside all models is always possible. */
const LEAST = 1e-4;
const CELLS = 400;
const WIDTH_IN_SD = 6;

/** What is needed of a diagnosis: a distribution of the true value. */
export type Believed = Pick<Diagnosis, 'unit' | 'cumulative'> & {
	trueValue: Pick<Diagnosis['trueValue'], 'mean' | 'standardDeviation'>;
};

function inDiagnosisUnit(band: Band, diagnosis: Pick<Diagnosis, 'unit'>, analyte: Analyte): Band {
	const { unit } = diagnosis;
	return {
		low: convertValue(band.low, band.unit, unit, analyte),
		high: convertValue(band.high, band.unit, unit, analyte),
		unit
	};
}

/**
 * Probabilities and expected losses from the diagnosis, weighed by how the animals look.
 *
 * @param band low end at most high end
 * @throws RangeError naming the field
 */
export function believe(
	diagnosis: Believed,
	band: Band,
	look: LivestockLook,
	analyte: Analyte = 'alkalinity'
): Belief {
	const own = inDiagnosisUnit(band, diagnosis, analyte);
	if (!(own.low <= own.high))
		throw new RangeError(`band.low must be at most band.high; found ${band.low} and ${band.high}`);
	const at = (value: number) => Math.min(1, Math.max(0, diagnosis.cumulative(value)));
	const ratio = livestockRatios[look];
	const toLow = at(own.low);
	const toHigh = Math.max(toLow, at(own.high));
	const raw = [toLow * ratio, toHigh - toLow, (1 - toHigh) * ratio].map((p) => Math.max(LEAST, p));
	const sum = raw.reduce((a, b) => a + b, 0);
	const [below, within, above] = raw.map((p) => p / sum) as [number, number, number];
	const scale = toLow * ratio + (toHigh - toLow) + (1 - toHigh) * ratio;
	/** Weight of the values between two, after the animals. */
	const weightOf = (from: number, to: number) => {
		const middle = (from + to) / 2;
		const isOut = middle < own.low || middle > own.high;
		return ((at(to) - at(from)) * (isOut ? ratio : 1)) / scale;
	};
	const { mean } = diagnosis.trueValue;
	const standardDeviation = Math.max(diagnosis.trueValue.standardDeviation, 1e-6);
	const first = mean - WIDTH_IN_SD * standardDeviation;
	const step = (2 * WIDTH_IN_SD * standardDeviation) / CELLS;
	const cells = Array.from({ length: CELLS }, (_, i) => ({
		middle: first + (i + 0.5) * step,
		weight: weightOf(first + i * step, first + (i + 1) * step)
	}));
	const expected = (act: Act) =>
		cells.reduce(
			(total, { middle, weight }) => total + weight * adviceLoss(act, middle, own, analyte),
			0
		);
	return {
		probabilities: { below, within, above },
		losses: { leave: expected('leave'), raise: expected('raise'), lower: expected('lower') },
		below(value) {
			const inOwn = convertValue(value, band.unit, own.unit, analyte);
			const low = at(Math.min(inOwn, own.low)) * ratio;
			const middle = Math.max(0, at(Math.min(inOwn, own.high)) - toLow);
			const high = Math.max(0, at(inOwn) - toHigh) * ratio;
			return (low + middle + high) / scale;
		}
	};
}
