import { convertValue, type Analyte } from '../../kits';
import type { LivestockLook } from '../../observation';
import { livestockRatios, type Belief } from './decide-belief';
import { bandInWords, chanceInWords, inDaysInWords, measured, setValue } from './decide-words';
import type { Band, Decision } from './decision';
import type { Diagnosis, Hump, SilentWitness } from '../diagnosis/diagnosis';
import { normalCdf } from '../diagnosis/normal-cdf';
import { limitsOf } from './limits';
import { isOfNoTank } from './of-no-tank';
import { FIRST_STEP_DAYS, splitNeedOf } from './split-need';

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

/** A hump that weighs less is not named. */
const NAMED_FROM = 0.05;
/** From this share of the heavier one on, two humps weigh about alike; judgement. */
const ABOUT_ALIKE = 0.8;

/**
 * The humps of the true value in the band's unit, the heaviest first, weighed by how the animals look as
 * `believe` weighs the band: each taken for normal. Else the values would be told by other odds than the
 * band beside them.
 */
function weighedHumps({ diagnosis, band, livestock, analyte }: Grounds): Hump[] {
	const ratio = livestockRatios[livestock];
	const humps = diagnosis.trueValue.humps.map((hump) => {
		const mean = convertValue(hump.mean, diagnosis.unit, band.unit, analyte);
		const sd = convertValue(hump.standardUncertainty, diagnosis.unit, band.unit, analyte);
		const upTo = (value: number) => normalCdf((value - mean) / Math.max(sd, 1e-9));
		const within = upTo(band.high) - upTo(band.low);
		const weight = hump.weight * (within + ratio * (1 - within));
		return { ...hump, mean, standardUncertainty: sd, weight };
	});
	const whole = humps.reduce((sum, { weight }) => sum + weight, 0);
	return humps
		.map((hump) => ({ ...hump, weight: hump.weight / whole }))
		.sort((a, b) => b.weight - a.weight);
}

/** What the water holds, with its ±; split where the values lie apart. */
export function whatItHolds(grounds: Grounds): string {
	const { band, analyte } = grounds;
	const [first, second, ...others] = weighedHumps(grounds);
	const own = ({ mean, standardUncertainty }: Hump) =>
		measured(mean, 2 * standardUncertainty, band.unit, analyte);
	if (first && second && second.weight >= NAMED_FROM) {
		const isOneOfTwo = others.every(({ weight }) => weight < NAMED_FROM);
		if (second.weight >= ABOUT_ALIKE * first.weight)
			return `It is ${isOneOfTwo ? 'one of two' : 'most likely one of two'}: the water holds ${own(first)} or ${own(second)}, about as likely.`;
		return `Most likely the water holds ${own(first)}; if not that, ${own(second)}.`;
	}
	return `The water holds about ${measured(meanOf(grounds), expandedUncertaintyOf(grounds), band.unit, analyte)}.`;
}

const looks: Record<LivestockLook, string | null> = {
	well: 'The animals look well. That counts, though for less than a test: they lag behind the water by a week or two.',
	someTroubled:
		'Some animals are troubled. That counts, though for less than a test: many things trouble them.',
	manyTroubled:
		'Many animals are troubled. That counts, though for less than a test: many things trouble them.',
	notLooked: null
};

/** That the way is known and how far is not, and what to do then; nothing where the value is one. */
export function howFarIsNotKnown(grounds: Grounds, direction: Decision['direction']): string[] {
	const { diagnosis, band, analyte } = grounds;
	const need = splitNeedOf(diagnosis, band, direction, analyte);
	if (!need) return [];
	const { nearest, isWayShared, isByMethods } = need;
	const side = direction === 'raise' ? 'low' : 'high';
	const apart = isByMethods
		? 'Two methods do not agree'
		: 'The tank may hold one of several values';
	const own = measured(nearest.value, 2 * nearest.standardUncertainty, band.unit, analyte);
	return [
		isWayShared
			? `${apart}. Either way it is too ${side}; by how much is not known.`
			: `${apart}. It is likely too ${side}; by how much is not known.`,
		direction === 'raise'
			? `Go by the smaller need, as if the water held ${own}: ${FIRST_STEP_DAYS} days of that at most. Find out which value holds before more is added.`
			: `Test again ${inDaysInWords(FIRST_STEP_DAYS)}, and find out which value holds.`
	];
}

const whySilent: Record<SilentWitness, string> = {
	readingDoubted:
		'A known solution was asked as well. It speaks for the kit and the hands, not for this one test, which may have slipped and was not repeated.',
	solutionOff:
		'A known solution was asked as well, but it read off what it holds. Until it is known whether the kit or the solution is off, it bears nothing out.',
	solutionDoubted:
		'A known solution was asked as well, but it may well be what is wrong itself, so that it speaks for nothing yet.',
	methodDoubted:
		'A second method was asked as well, but it may well be what is wrong itself, so that it speaks for nothing yet.',
	methodTooWide: 'A second method was asked as well, but its ± is too wide to bear this out.'
};

/** What independent of the kit was asked and could not count, and why. */
export const silentWords = (silent: readonly SilentWitness[]): string =>
	silent.map((each) => whySilent[each]).join(' ');

/** Whether anything independent of the kit bears the value out. */
function whatBearsItOut(
	{ diagnosis, band, analyte }: Grounds,
	isVerified: boolean,
	direction: Decision['direction']
): string {
	const isAtOdds = (diagnosis.contradictions ?? []).some(({ between }) => between === 'methods');
	// Verified without a known solution, methods at odds bear out the side and nothing else.
	const isOfSide =
		diagnosis.isKitVouched === false ||
		splitNeedOf(diagnosis, band, direction, analyte)?.isWayShared;
	if (isVerified && isAtOdds && isOfSide)
		return 'A second method was asked as well. The two agree on the side, and not on the size.';
	if (isVerified)
		return 'Not the kit alone speaks for it: a known solution or a second method was asked as well.';
	if (isAtOdds)
		return 'A second method was asked, and it does not agree with the kit: neither speaks for the other.';
	const silent = diagnosis.silentWitnesses ?? [];
	return silent.length > 0
		? silentWords(silent)
		: 'Nothing but the kit speaks for it yet. A repeat shares every lasting error of the first; a known solution or a second method does not.';
}

/** Why nothing is done about a value that likely lies outside the band; null where it likely lies within. */
export function whyLeftOutside(grounds: Grounds): string | null {
	const { belief, band } = grounds;
	const { below, within, above } = belief.probabilities;
	if (within >= Math.max(below, above)) return null;
	const mean = meanOf(grounds);
	const outside = Math.max(band.low - mean, mean - band.high);
	return outside <= expandedUncertaintyOf(grounds)
		? 'It may lie outside your band, but by no more than its ±: too little is known to move it.'
		: 'It lies outside your band by very little: too little to move it.';
}

/** What else speaks for or against it, the weightiest first. */
export function otherGrounds(
	grounds: Grounds,
	{ isVerified, direction }: Pick<Decision, 'isVerified' | 'direction'>
): string[] {
	const { belief, diagnosis, livestock, change, analyte } = grounds;
	const { unit, lowAlarm } = limitsOf(analyte);
	const alarm = convertValue(lowAlarm.below, unit, grounds.band.unit, analyte);
	const chanceOfAlarm = Math.min(1, belief.below(alarm));
	const said = [
		chanceOfAlarm >= 0.2 &&
			`Below ${setValue(alarm, grounds.band.unit, analyte)} waiting harms too. The chances that it is so low are ${chanceInWords(chanceOfAlarm)}.`,
		!isOfNoTank(diagnosis) && whatBearsItOut(grounds, isVerified, direction),
		change === 'tooSmallToTell' &&
			'The change since the last reading is too small for these tests to tell.',
		change === 'notSettled' &&
			`The water may really have changed since the last reading; that is not settled. The chances are ${chanceInWords(grounds.diagnosis.waterChanged)}.`,
		change === 'likelyReal' &&
			(diagnosis.nothingWrong > diagnosis.waterChanged
				? 'The change since the last reading is likely real: over so many days the usual drift of a tank can make it.'
				: 'The change since the last reading is likely real.'),
		looks[livestock]
	];
	return said.filter((line): line is string => typeof line === 'string');
}
