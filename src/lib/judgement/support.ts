import { enNumber } from '../metrology';
import type { CheckId, Conclusion, Evidence, Reading } from '../observation';

/** Whether the evidence that was collected carries a conclusion. Being right by luck is not it. */
export type Support = {
	verdict: 'earned' | 'notYet' | 'against';
	/** One plain sentence. */
	why: string;
	/** The check that would have told more; null when nothing is missing. */
	wouldTellMore: CheckId | null;
};

export type SupportInput = {
	/** The reading in question. */
	reading: Reading;
	evidence: readonly Evidence[];
	conclusion: Conclusion;
	/** What a reference in this matrix is known to read over its content with a good kit, in the unit. */
	matrixEffect?: Partial<Record<'seawater' | 'purified' | 'sodiumChloride', number>>;
};

/** Two results within what both claim: |E_n| up to 1. */
function agree(a: Reading, b: Reading): boolean {
	return Math.abs(enNumber(a.value, a.expandedUncertainty, b.value, b.expandedUncertainty)) <= 1;
}

/** What the evidence says, before anybody concludes. */
function factsOf({ reading, evidence, matrixEffect }: SupportInput) {
	const repeats = evidence.flatMap((each) =>
		each.kind === 'test' && (each.from === 'repeatFull' || each.from === 'repeatQuick')
			? [each.reading]
			: []
	);
	const freshLots = evidence.flatMap((each) =>
		each.kind === 'test' && each.from === 'freshLot' ? [each.reading] : []
	);
	const freshSamples = evidence.flatMap((each) =>
		each.kind === 'test' && each.from === 'freshSample' ? [each.reading] : []
	);
	const seconds = evidence.flatMap((each) => (each.kind === 'secondMethod' ? [each.reading] : []));
	const references = evidence.flatMap((each) => {
		if (each.kind !== 'reference') return [];
		const expected = each.nominal + (matrixEffect?.[each.matrix] ?? 0);
		return [
			agree(each.reading, {
				...each.reading,
				value: expected,
				expandedUncertainty: each.nominalExpandedUncertainty
			})
		];
	});
	const earlier = evidence.flatMap((each) => (each.kind === 'earlier' ? [each.reading] : []));
	return {
		repeats,
		repeatsAgree: repeats.length > 0 && repeats.every((each) => agree(each, reading)),
		repeatsDiffer: repeats.some((each) => !agree(each, reading)),
		secondsAgree: seconds.length > 0 && seconds.every((each) => agree(each, reading)),
		secondsDiffer: seconds.some((each) => !agree(each, reading)),
		referenceGood: references.length > 0 && references.every(Boolean),
		referenceOff: references.some((good) => !good),
		lotDiffers: freshLots.some((each) => !agree(each, reading)),
		lotAgrees: freshLots.length > 0 && freshLots.every((each) => agree(each, reading)),
		sampleDiffers: freshSamples.some((each) => !agree(each, reading)),
		earlierDiffers: earlier.some((each) => !agree(each, reading)),
		hasEarlier: earlier.length > 0
	};
}
type Facts = ReturnType<typeof factsOf>;

const earned = (why: string): Support => ({ verdict: 'earned', why, wouldTellMore: null });
const notYet = (why: string, wouldTellMore: CheckId): Support => ({
	verdict: 'notYet',
	why,
	wouldTellMore
});
const against = (why: string, wouldTellMore: CheckId | null): Support => ({
	verdict: 'against',
	why,
	wouldTellMore
});

const rules: Record<Conclusion, (facts: Facts) => Support> = {
	stands: (facts) => {
		if (facts.repeatsDiffer)
			return against('A repeat came out elsewhere by more than both readings allow.', 'repeatFull');
		if (facts.referenceOff)
			return against('The reference solution did not read what it holds.', 'freshLot');
		if (facts.sampleDiffers)
			return against('Fresh water from the tank read differently.', 'freshSample');
		if (facts.referenceGood)
			return earned('A known solution read right, within what both can claim.');
		if (facts.secondsDiffer)
			return notYet('Two methods differ; nothing says yet which of them is off.', 'reference');
		if (facts.secondsAgree)
			return earned('A second method, made otherwise, agrees within both uncertainties.');
		return facts.repeatsAgree
			? notYet('A repeat shares every bias of the first test.', 'reference')
			: notYet('Nothing independent was asked.', 'reference');
	},
	technique: (facts) => {
		if (facts.repeatsDiffer)
			return earned('The same water and bottles gave another value in the same hands.');
		if (facts.sampleDiffers) return earned('Fresh water, taken with care, read differently.');
		if (facts.repeatsAgree)
			return against('Repeats agree: hands that slip seldom slip twice alike.', 'reference');
		if (facts.referenceGood && facts.secondsDiffer)
			return notYet(
				'The kit reads a known solution right; a careful repeat would tell.',
				'repeatFull'
			);
		return notYet('A careful repeat is the cheapest way to catch a slip.', 'repeatFull');
	},
	reagent: (facts) => {
		if (facts.referenceGood)
			return against('With these bottles a known solution read right.', null);
		if (facts.lotAgrees) return against('A fresh lot read the same.', 'reference');
		if (!facts.repeatsAgree && !facts.lotDiffers)
			return notYet('Without a repeat, a slip of the hand explains it as well.', 'repeatFull');
		if (facts.lotDiffers) return earned('A fresh lot read differently on the same water.');
		if (facts.referenceOff)
			return earned('Repeats agree among themselves, and a known solution reads off.');
		return notYet(
			'A known solution or a fresh lot would convict the bottle, or clear it.',
			'reference'
		);
	},
	secondMethod: (facts) => {
		if (facts.secondsAgree) return against('The two methods agree within what both claim.', null);
		if (!facts.secondsDiffer) return notYet('No second method was asked.', 'secondMethod');
		if (facts.referenceGood)
			return earned('Your kit reads a known solution right; the other method differs from it.');
		return notYet('Two methods differ; only a known solution says which is off.', 'reference');
	},
	waterChanged: (facts) => {
		if (facts.repeatsDiffer || facts.referenceOff)
			return against('Test and reference do not hold together yet.', 'repeatFull');
		if (facts.hasEarlier && !facts.earlierDiffers)
			return against('The change is too small for these two readings to tell.', null);
		const confirmed = facts.referenceGood || facts.secondsAgree || facts.sampleDiffers;
		if (confirmed && (facts.earlierDiffers || facts.sampleDiffers))
			return earned('The kit was checked, and the change is larger than both readings allow.');
		return notYet('A change is real only once the kit has been checked.', 'reference');
	},
	cantTellYet: (facts) => {
		const known =
			facts.referenceGood || facts.secondsAgree || facts.lotDiffers || facts.referenceOff;
		return known
			? notYet('What you had collected would have carried more than that.', 'repeatFull')
			: earned('With what was known, that is the honest answer.');
	}
};

/** Whether a conclusion was earned by the evidence. The order of the evidence does not matter. */
export function supportOf(input: SupportInput): Support {
	return rules[input.conclusion](factsOf(input));
}
