import type { Act } from './advice-loss';
import { bestAct, isCalledFor } from './best-act';
import { believe, livestockRatios, type Belief } from './decide-belief';
import {
	expandedUncertaintyOf,
	howFarIsNotKnown,
	otherGrounds,
	whatItHolds,
	whyLeftOutside,
	whereItLies,
	type Grounds
} from './decide-because';
import {
	isSalinityUnknown,
	openContradiction,
	reasonsNotToAct,
	wouldChangeFor
} from './decide-restraint';
import { convertValue } from '../../kits';
import type { Diagnosis } from '../diagnosis/diagnosis';
import type { Band, DecideInput, Decision } from './decision';
import { furtherCheck, type FurtherCheck } from './further-check';
import { isOfNoTank } from './of-no-tank';
import { repeatDueOf, repeatWords } from './repeat-first';
import { emergencyDecision } from './emergency';
import { isWeeklyTooRare, retestInterval } from './retest';
import { salinityOff } from './salinity';
import { isVerifiedBy } from './verified';
import { whatToMend } from './what-to-mend';

type Verdict = Pick<Decision, 'verdict' | 'direction' | 'lacks' | 'check'>;
const leave: Verdict = { verdict: 'leave', direction: null, lacks: null, check: null };
const checkFor = (lacks: Decision['lacks']): Verdict => ({
	verdict: 'check',
	direction: null,
	lacks,
	check: null
});

/** Below this chance of a real change of the water nothing but the size of the change is spoken of; judgement. */
const MAY_BE_REAL = 0.15;
/** From here on a change of the water is the likely account, however wide the rate is; judgement. */
const LIKELY_REAL = 0.8;

/**
 * The ± of the rate is that of all accounts together: it is wide as well where a fault and a real change
 * are both likely. Such a change is not small, it is not settled.
 */
function changeOf({ rate, diagnosis }: DecideInput): Decision['change'] {
	if (!rate) return null;
	const chance = diagnosis?.waterChanged ?? 0;
	if (Math.abs(rate.perDay) > rate.expandedUncertainty || chance >= LIKELY_REAL)
		return 'likelyReal';
	return chance >= MAY_BE_REAL ? 'notSettled' : 'tooSmallToTell';
}

/** Whether what is independent of the kit bears out what is to be done. */
function isBorneOut(diagnosis: Diagnosis, belief: Belief, band: Band): boolean {
	const { contradictions = [], inQuestion, isIndependent, isKitVouched = false } = diagnosis;
	const areMethodsAtOdds = contradictions.some(({ between }) => between === 'methods');
	const read = inQuestion
		? convertValue(inQuestion.value, inQuestion.unit, band.unit, inQuestion.analyte)
		: null;
	return isVerifiedBy({ isIndependent, isKitVouched, areMethodsAtOdds, read }, belief, band);
}

/** What is to be checked of the reading first; null where that is enough. */
function furtherFor(input: DecideInput, belief: Belief, isVerified: boolean): FurtherCheck | null {
	const { diagnosis, next, ranked, isEnough } = input;
	return furtherCheck({
		belief,
		ranked: ranked ?? (next ? [next] : []),
		isWorthGoingOn: !isEnough,
		isVerified,
		hasSetAside: diagnosis?.hasSetAside ?? false,
		isOfNoTank: diagnosis !== null && isOfNoTank(diagnosis),
		isRepeatDue: repeatDueOf(input) === 'due',
		isAtOdds: openContradiction(input) !== null
	});
}

function verdictOf(input: DecideInput, best: Act, belief: Belief, isVerified: boolean): Verdict {
	if (input.hasStonyCorals === false) return leave;
	if (input.isUnitSure === false) return checkFor('unit');
	const further = furtherFor(input, belief, isVerified);
	if (further) return { ...checkFor(further.lacks), check: further.check };
	if (best === 'leave' || !isCalledFor(best, belief)) return leave;
	if (isSalinityUnknown(input)) return checkFor('salinity');
	if (salinityOff(input.salinity, input.analyte)) return checkFor('salinityRight');
	if (input.who === 'sitter' || input.who === 'child') return leave;
	return { verdict: 'adjust', direction: best, lacks: null, check: null };
}

/**
 * What does not fit together of what was read today, where it leaves the true value split: that is not
 * settled, though it changes nothing today. Null otherwise.
 */
const leftSplit = (input: DecideInput): string | null =>
	(input.diagnosis?.trueValue.humps.length ?? 0) > 1 ? openContradiction(input) : null;

function retestFor(input: DecideInput, grounds: Grounds, { verdict }: Verdict): number {
	if (verdict === 'check' || repeatDueOf(input) === 'explained') return 1;
	if (verdict === 'leave' && leftSplit(input)) return 1;
	const { rate } = input;
	const interval = retestInterval({
		band: input.band,
		expandedUncertainty: expandedUncertaintyOf(grounds),
		consumptionPerDay: input.consumptionPerDay ?? null,
		changePerDay: grounds.change === 'likelyReal' ? (rate?.perDay ?? null) : null
	});
	// What is being moved, or lies outside, is looked at sooner.
	const isOutside = grounds.belief.probabilities.within < 0.5;
	return verdict === 'adjust' || isOutside ? Math.min(2, interval) : interval;
}

const people: readonly NonNullable<DecideInput['who']>[] = ['keeper', 'sitter', 'child'];

/** Cases come as JSON as well: a band may lack, or an end of it. */
function requireBand(band: Partial<Band> | null | undefined): void {
	if (!band || ![band.low, band.high].every(Number.isFinite) || typeof band.unit !== 'string')
		throw new RangeError(
			`band must give low, high and unit; found ${JSON.stringify(band) ?? 'nothing'}`
		);
}

/**
 * What to do about a reading: leave it, check it, adjust, or act at once. From the probability that
 * the true value lies in the person's band, from what leaving and moving it are expected to cost
 * (`adviceLoss`), from how fast it changes, and a little from how the animals look. To adjust takes
 * a value outside the band by about its ± or more, or one that it costs far more to leave;
 * something independent of the kit that does not contradict it, a known unit, a known salinity near
 * that of the sea, and an adult keeper. A reading far off that was made once is repeated before that.
 *
 * @param input values of the band, the rate and the consumption in the band's unit
 * @throws RangeError naming the field: a look of the animals that is none of the list, a band that lacks
 *   or is the wrong way round, a rate or consumption out of range, a salinity that no tank has, somebody who is
 *   none of the list, no diagnosis, next or isEnough where there is no emergency
 */
export function decide(input: DecideInput): Decision {
	const { diagnosis, band, livestock, analyte = 'alkalinity' } = input;
	requireBand(band);
	if (!Object.hasOwn(livestockRatios, livestock))
		throw new RangeError(
			`livestock must be one of ${Object.keys(livestockRatios).join(', ')}; found ${String(livestock)}`
		);
	if (!diagnosis && !input.isEmergency)
		throw new RangeError('diagnosis must be given unless isEmergency; found null');
	if (typeof input.isEnough !== 'boolean' && !input.isEmergency)
		throw new RangeError(`isEnough must be true or false; found ${String(input.isEnough)}`);
	if (input.next === undefined && !input.isEmergency)
		throw new RangeError('next must be a ranked check or null; found nothing');
	if (input.who !== undefined && !people.includes(input.who))
		throw new RangeError(`who must be one of ${people.join(', ')}; found ${String(input.who)}`);
	if (input.rate && !(input.rate.expandedUncertainty >= 0 && Number.isFinite(input.rate.perDay)))
		throw new RangeError(
			`rate must be a change a day with an expandedUncertainty of 0 or above; found ${input.rate.perDay} and ${input.rate.expandedUncertainty}`
		);
	if (!diagnosis) return emergencyDecision();
	const belief = believe(diagnosis, band, livestock, analyte);
	if (input.isEmergency) return emergencyDecision(belief.probabilities);
	salinityOff(input.salinity, analyte);
	const change = changeOf(input);
	const grounds: Grounds = { belief, diagnosis, band, livestock, change, analyte };
	const isOfTank = !isOfNoTank(diagnosis);
	// Whatever was asked besides met the same cup, or no water of the tank.
	const isVerified = isOfTank && isBorneOut(diagnosis, belief, band);
	const best = bestAct(belief);
	const verdict = verdictOf(input, best, belief, isVerified);
	const howFar = howFarIsNotKnown(grounds, verdict.direction);
	// A sitter and a tank without corals have their own reasons.
	const isLeftAsItIs =
		verdict.verdict === 'leave' &&
		input.hasStonyCorals !== false &&
		(input.who ?? 'keeper') === 'keeper';
	const split = leftSplit(input);
	// Without stony corals little is used up, whatever is put down for it.
	const tooRare =
		input.hasStonyCorals !== false &&
		isWeeklyTooRare(input.consumptionPerDay ?? 0, band.unit, analyte) &&
		'So much is used in a day that a test a week is too rare.';
	return {
		...verdict,
		probabilities: belief.probabilities,
		because: [
			...reasonsNotToAct(input, best, verdict),
			...(isOfTank ? repeatWords(input, verdict) : []),
			...(isLeftAsItIs ? [whyLeftOutside(grounds)] : []),
			...howFar,
			...(isOfTank ? [whereItLies(grounds), whatItHolds(grounds)] : []),
			...(isLeftAsItIs && split
				? [`${split} It changes nothing today; another test tells which holds.`]
				: []),
			...(verdict.verdict === 'leave' ? whatToMend(grounds) : []),
			...otherGrounds(grounds, { isVerified, direction: verdict.direction }),
			...(tooRare ? [tooRare] : [])
		].filter((line): line is string => line !== null),
		wouldChange: wouldChangeFor(input, verdict, howFar.length === 0, best),
		isVerified,
		change,
		retestInDays: retestFor(input, grounds, verdict)
	};
}
