import type { Telling } from './conclusion-weights';
import type { Facts } from './facts';

/**
 * What can be said of a conclusion by counting facts, with the sentence that goes with it. The verdict
 * itself is the engine's (`verdictsOf`); the sentence is spoken where the two say the same.
 */
export type Ruling = { verdict: 'earned' | 'notYet' | 'against'; why: string };

export const earned = (why: string): Ruling => ({ verdict: 'earned', why });
export const notYet = (why: string): Ruling => ({ verdict: 'notYet', why });
export const against = (why: string): Ruling => ({ verdict: 'against', why });

function stands(facts: Facts): Ruling {
	if (facts.repeatsDiffer)
		return against('A repeat came out elsewhere by more than scatter explains.');
	if (facts.sampleDiffers) return against('Fresh water from the tank read differently.');
	if (facts.lotDiffers) return against('A fresh bottle read differently on the same water.');
	if (facts.referenceOff) return against('A known solution did not read what it holds.');
	if (facts.referenceDoubtful)
		return earned(
			'A second method agrees on the tank and cannot be squared with a kit so far off: that solution, or its test, is in doubt.'
		);
	if (facts.referenceGood)
		return earned('A known solution read right, within what both can claim.');
	if (facts.secondsDiffer)
		return notYet('Two methods differ; nothing says yet which of them is off.');
	if (facts.secondsAgree)
		return earned('A second method, made otherwise, agrees within both uncertainties.');
	return facts.repeatsAgree
		? notYet('A repeat shares every bias of the first test.')
		: notYet('Nothing independent was asked.');
}

function technique(facts: Facts): Ruling {
	if (facts.repeatsDiffer)
		return earned('The same water and bottles gave another value in the same hands.');
	if (facts.sampleDiffers) return earned('Fresh water, taken with care, read differently.');
	if (!facts.repeatsAgree)
		return facts.secondsDiffer
			? notYet('Another method differs: that may be your hands, your bottle, or that method.')
			: notYet('Nothing that you collected tells a slip from a fault of the bottle.');
	if (facts.referenceGood)
		return against('Repeats agree, and in these hands a known solution read right.');
	if (facts.referenceOff && facts.lotAgrees)
		return earned(
			'Repeats agree, a fresh bottle reads the same, and a known solution reads off: what is left is hands and ware.'
		);
	return facts.referenceOff
		? notYet('Repeats agree and a known solution reads off: a habit of the hands or the bottle.')
		: notYet('Repeats agree. Only a habit could hide behind that.');
}

function reagent(facts: Facts): Ruling {
	if (facts.referenceGood) return against('With these bottles a known solution read right.');
	if (facts.lotAgrees) return against('A fresh bottle read the same.');
	if (facts.referenceDoubtful)
		return against(
			'A second method agrees on the tank; a bottle so far off would have parted them.'
		);
	if (facts.repeatsDiffer)
		return notYet('Tests with one and the same bottle differ among themselves.');
	if (facts.lotDiffers && facts.referenceOff)
		return earned(
			'A fresh bottle reads differently, and with the old one a known solution is off.'
		);
	if (!facts.repeatsAgree)
		return notYet('Without a repeat, a slip of the hand explains it as well.');
	if (facts.lotDiffers)
		return earned('Repeats agree, and a fresh bottle read differently on the same water.');
	if (facts.referenceOff)
		return earned('Repeats agree among themselves, and a known solution reads off.');
	return notYet('A known solution or a fresh bottle would convict this one, or clear it.');
}

function secondMethod(facts: Facts): Ruling {
	if (facts.secondsAgree) return against('The two methods agree within what both claim.');
	if (!facts.secondsDiffer) return notYet('No second method was asked.');
	if (facts.repeatsDiffer && facts.secondsSideWithRepeats)
		return against('It agrees with your own repeat, and not with the reading.');
	if (facts.sampleDiffers)
		return against('Fresh water read differently: the two may not have met the same water.');
	if (facts.referenceGood)
		return earned('Your kit reads a known solution right; the other method differs from it.');
	return facts.referenceOff
		? against('It was your own kit that did not read a known solution right.')
		: notYet('Two methods differ; only a known solution says which is off.');
}

/**
 * Another method shows a change, and the reading, which does not agree with it, was not confirmed with care: a
 * slip can hide a change as well as look like one.
 */
export const isChangeUnconfirmed = (facts: Facts): boolean =>
	facts.secondsShowChange &&
	facts.secondsDiffer &&
	!facts.sampleDiffers &&
	!(facts.repeatsAgree && facts.isRepeatedWithCare);

/** The same, and no careful repeat was made: that comes first. */
export const isRepeatFirst = (facts: Facts): boolean =>
	isChangeUnconfirmed(facts) && !facts.isRepeatedWithCare;

function waterChanged(facts: Facts): Ruling {
	if (facts.sampleDiffers)
		return against('Fresh water from the tank does not show it: it was in the sample.');
	if (facts.referenceOff || facts.lotDiffers) return against('The kit itself did not hold up.');
	if (isRepeatFirst(facts))
		return notYet(
			'Another method lies further from what was read before than both allow, but the reading does not bear it out. Repeat the reading with care first: a slip can hide a change.'
		);
	if (facts.repeatsDiffer)
		return isChangeUnconfirmed(facts) && facts.repeatsShowChange && facts.secondsSideWithRepeats
			? earned(
					'The reading slipped. Your repeat and the other method agree, and both lie further from what was read before than all of them allow.'
				)
			: against('A repeat on the same water came out elsewhere.');
	if (!facts.hasEarlier) return notYet('There is nothing from before to compare with.');
	if (!facts.earlierDiffers)
		return against('The change is too small for these two readings to tell.');
	if (facts.secondsAgree)
		return earned('A second method agrees, and the change is larger than both readings allow.');
	if (!facts.repeatsAgree && !facts.sampleAgrees)
		return notYet('Confirm the reading first: a slip can look like a change.');
	return facts.referenceGood
		? earned('Reading confirmed, kit checked, and the change is larger than both readings allow.')
		: notYet('A change is real only once the kit has been checked.');
}

export const rules = { stands, technique, reagent, secondMethod, waterChanged } satisfies Record<
	Telling,
	(facts: Facts) => Ruling
>;
