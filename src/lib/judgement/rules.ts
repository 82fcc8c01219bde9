import type { BenchCheckId, Conclusion } from '../observation';
import type { Facts } from './facts';

/** How a conclusion stands with the facts, why, and which checks would tell more, the best first. */
export type Ruling = {
	verdict: 'earned' | 'notYet' | 'against';
	why: string;
	next: BenchCheckId[];
};

const earned = (why: string): Ruling => ({ verdict: 'earned', why, next: [] });
const notYet = (why: string, ...next: BenchCheckId[]): Ruling => ({ verdict: 'notYet', why, next });
const against = (why: string, ...next: BenchCheckId[]): Ruling => ({
	verdict: 'against',
	why,
	next
});

function stands(facts: Facts): Ruling {
	if (facts.repeatsDiffer)
		return against('A repeat came out elsewhere by more than scatter explains.', 'repeatFull');
	if (facts.sampleDiffers)
		return against('Fresh water from the tank read differently.', 'freshSample');
	if (facts.lotDiffers)
		return against('A fresh bottle read differently on the same water.', 'reference');
	if (facts.referenceOff)
		return against('A known solution did not read what it holds.', 'freshLot', 'secondMethod');
	if (facts.referenceDoubtful)
		return earned(
			'A second method agrees on the tank and cannot be squared with a kit so far off: that solution, or its test, is in doubt.'
		);
	if (facts.referenceGood)
		return earned('A known solution read right, within what both can claim.');
	if (facts.secondsDiffer)
		return notYet(
			'Two methods differ; nothing says yet which of them is off.',
			'reference',
			'freshLot'
		);
	if (facts.secondsAgree)
		return earned('A second method, made otherwise, agrees within both uncertainties.');
	return facts.repeatsAgree
		? notYet('A repeat shares every bias of the first test.', 'reference', 'secondMethod')
		: notYet('Nothing independent was asked.', 'reference', 'secondMethod');
}

function technique(facts: Facts): Ruling {
	if (facts.repeatsDiffer)
		return earned('The same water and bottles gave another value in the same hands.');
	if (facts.sampleDiffers) return earned('Fresh water, taken with care, read differently.');
	if (!facts.repeatsAgree)
		return facts.secondsDiffer
			? notYet(
					'Another method differs: that may be your hands, your bottle, or that method.',
					'repeatFull'
				)
			: notYet('Nothing that you collected tells a slip from a fault of the bottle.', 'repeatFull');
	if (facts.referenceGood)
		return against('Repeats agree, and in these hands a known solution read right.');
	if (facts.referenceOff && facts.lotAgrees)
		return earned(
			'Repeats agree, a fresh bottle reads the same, and a known solution reads off: what is left is hands and ware.'
		);
	return facts.referenceOff
		? notYet(
				'Repeats agree and a known solution reads off: a habit of the hands or the bottle.',
				'freshLot'
			)
		: notYet('Repeats agree. Only a habit could hide behind that.', 'reference', 'secondMethod');
}

function reagent(facts: Facts): Ruling {
	if (facts.referenceGood)
		return against('With these bottles a known solution read right.', 'repeatFull');
	if (facts.lotAgrees) return against('A fresh bottle read the same.', 'reference');
	if (facts.referenceDoubtful)
		return against(
			'A second method agrees on the tank; a bottle so far off would have parted them.'
		);
	if (facts.repeatsDiffer)
		return notYet('Tests with one and the same bottle differ among themselves.', 'repeatFull');
	if (facts.lotDiffers && facts.referenceOff)
		return earned(
			'A fresh bottle reads differently, and with the old one a known solution is off.'
		);
	if (!facts.repeatsAgree)
		return notYet(
			'Without a repeat, a slip of the hand explains it as well.',
			'repeatFull',
			'repeatQuick'
		);
	if (facts.lotDiffers)
		return earned('Repeats agree, and a fresh bottle read differently on the same water.');
	if (facts.referenceOff)
		return earned('Repeats agree among themselves, and a known solution reads off.');
	return notYet(
		'A known solution or a fresh bottle would convict this one, or clear it.',
		'freshLot',
		'reference'
	);
}

function secondMethod(facts: Facts): Ruling {
	if (facts.secondsAgree) return against('The two methods agree within what both claim.');
	if (!facts.secondsDiffer) return notYet('No second method was asked.', 'secondMethod');
	if (facts.repeatsDiffer && facts.secondsSideWithRepeats)
		return against('It agrees with your own repeat, and not with the reading.');
	if (facts.sampleDiffers)
		return against('Fresh water read differently: the two may not have met the same water.');
	if (facts.referenceGood)
		return earned('Your kit reads a known solution right; the other method differs from it.');
	return facts.referenceOff
		? against('It was your own kit that did not read a known solution right.', 'freshLot')
		: notYet('Two methods differ; only a known solution says which is off.', 'reference');
}

function waterChanged(facts: Facts): Ruling {
	if (facts.sampleDiffers)
		return against('Fresh water from the tank does not show it: it was in the sample.');
	if (facts.repeatsDiffer)
		return against('A repeat on the same water came out elsewhere.', 'repeatFull');
	if (facts.referenceOff || facts.lotDiffers)
		return against('The kit itself did not hold up.', 'repeatFull', 'freshLot');
	if (!facts.hasEarlier)
		return notYet('There is nothing from before to compare with.', 'freshSample');
	if (!facts.earlierDiffers)
		return against('The change is too small for these two readings to tell.');
	if (facts.secondsAgree)
		return earned('A second method agrees, and the change is larger than both readings allow.');
	if (!facts.repeatsAgree && !facts.sampleAgrees)
		return notYet('Confirm the reading first: a slip can look like a change.', 'repeatFull');
	return facts.referenceGood
		? earned('Reading confirmed, kit checked, and the change is larger than both readings allow.')
		: notYet('A change is real only once the kit has been checked.', 'reference', 'secondMethod');
}

/** Conclusions that say something; that nothing can be said is right where none of them is earned. */
const telling = { stands, technique, reagent, secondMethod, waterChanged };

function cantTellYet(facts: Facts): Ruling {
	const carried = Object.values(telling).some((rule) => rule(facts).verdict === 'earned');
	return carried
		? notYet('What you had collected would have carried more than that.')
		: { ...earned('With what was known, that is the honest answer.'), next: stands(facts).next };
}

export const rules = { ...telling, cantTellYet } satisfies Record<
	Conclusion,
	(facts: Facts) => Ruling
>;
