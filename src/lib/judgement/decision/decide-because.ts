import { convertValue, type Analyte } from '../../kits';
import type { LivestockLook } from '../../observation';
import type { Belief } from './decide-belief';
import { bandInWords, chanceInWords, measured, setValue } from './decide-words';
import type { Band, Decision } from './decision';
import type { Diagnosis } from '../diagnosis/diagnosis';
import { limitsOf } from './limits';

/** Most of what the advice rests on: what is believed, and of which band. */
export type Grounds = {
	belief: Belief;
	diagnosis: Diagnosis;
	band: Band;
	livestock: LivestockLook;
	change: Decision['change'];
	analyte: Analyte;
};

/** Half of the 95 % interval of the true value, in the band's unit. */
export function expandedUncertaintyOf({ diagnosis, band, analyte }: Grounds): number {
	const [low, high] = diagnosis.trueValue.interval95;
	return convertValue((high - low) / 2, diagnosis.unit, band.unit, analyte);
}

export function meanOf({ diagnosis, band, analyte }: Grounds): number {
	return convertValue(diagnosis.trueValue.mean, diagnosis.unit, band.unit, analyte);
}

/** Where the true value lies, most likely first. */
export function whereItLies(grounds: Grounds): string {
	const { belief, band, analyte } = grounds;
	const { below, within, above } = belief.probabilities;
	const most = Math.max(below, within, above);
	const odds = `the chances are ${chanceInWords(most)}`;
	if (most === within) return `Within your band of ${bandInWords(band, analyte)}: ${odds}.`;
	return most === below
		? `Below ${setValue(band.low, band.unit, analyte)}: ${odds}.`
		: `Above ${setValue(band.high, band.unit, analyte)}: ${odds}.`;
}

/** What the water holds, with its ±; split where the values lie apart. */
export function whatItHolds(grounds: Grounds): string {
	const { diagnosis, band, analyte } = grounds;
	const [first, second] = diagnosis.trueValue.humps;
	const own = (hump: { mean: number; standardUncertainty: number }) =>
		measured(
			convertValue(hump.mean, diagnosis.unit, band.unit, analyte),
			2 * convertValue(hump.standardUncertainty, diagnosis.unit, band.unit, analyte),
			band.unit,
			analyte
		);
	if (first && second && second.weight >= 0.05)
		return `The water holds ${own(first)}, or, if something else is wrong, ${own(second)}.`;
	return `The water holds about ${measured(meanOf(grounds), expandedUncertaintyOf(grounds), band.unit, analyte)}.`;
}

const looks: Record<LivestockLook, string | null> = {
	well: 'The animals look well. That counts a little: they lag behind the water by a week or two.',
	someTroubled: 'Some animals are troubled. That counts a little: many things trouble them.',
	manyTroubled: 'Many animals are troubled. That counts a little: many things trouble them.',
	notLooked: null
};

/** What else speaks for or against it, the weightiest first. */
export function otherGrounds(grounds: Grounds, isVerified: boolean): string[] {
	const { belief, livestock, change, analyte } = grounds;
	const { unit, lowAlarm } = limitsOf(analyte);
	const alarm = convertValue(lowAlarm.below, unit, grounds.band.unit, analyte);
	const chanceOfAlarm = Math.min(1, belief.below(alarm));
	const said = [
		chanceOfAlarm >= 0.2 &&
			`Below ${setValue(alarm, grounds.band.unit, analyte)} waiting harms too: the chances are ${chanceInWords(chanceOfAlarm)}.`,
		isVerified
			? 'Something independent of the kit was asked as well: a known solution or a second method.'
			: 'Nothing independent of the kit was asked yet. A repeat shares every lasting error of the first.',
		change === 'tooSmallToTell' &&
			'The change since the last reading is too small for these tests to tell.',
		change === 'notSettled' &&
			`Whether the water has really changed since the last reading is not settled: the chances are ${chanceInWords(grounds.diagnosis.waterChanged)}.`,
		change === 'likelyReal' && 'The change since the last reading is likely real.',
		looks[livestock]
	];
	return said.filter((line): line is string => typeof line === 'string');
}
