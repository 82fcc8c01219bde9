import { compareReadings, enNumber, repeatabilityLimit } from '../../metrology';
import type { BenchCheckId, BenchEvidence, Reading } from '../../observation';

/** What a known solution in a matrix is known to read over its content with a sound kit, in the unit. */
export type MatrixEffect = Partial<Record<'seawater' | 'purified' | 'sodiumChloride', number>>;

/** What the evidence shows about a reading, before anybody concludes. */
export type Facts = {
	/** Tests of the same water by the same way of working; the reading itself is not among them. */
	repeats: readonly Reading[];
	repeatsAgree: boolean;
	repeatsDiffer: boolean;
	/** One of them was made with every step anew: a quick one is made as the reading was, slips and all. */
	isRepeatedWithCare: boolean;
	secondsAgree: boolean;
	secondsDiffer: boolean;
	/** A second method agrees with every repeat there is, though not with the reading. */
	secondsSideWithRepeats: boolean;
	/** Second methods lie on one side of all that was read before, by more than both claim. */
	secondsShowChange: boolean;
	/** The same of the repeats. */
	repeatsShowChange: boolean;
	referenceGood: boolean;
	/** A known solution read off, and nothing speaks for the solution itself being wrong. */
	referenceOff: boolean;
	/** It read off, but were the kit so far off, a second method could not agree with the reading. */
	referenceDoubtful: boolean;
	lotDiffers: boolean;
	lotAgrees: boolean;
	sampleDiffers: boolean;
	sampleAgrees: boolean;
	earlierDiffers: boolean;
	hasEarlier: boolean;
};

/** Two results within what both claim: |E_n| up to 1. */
function agree(a: Reading, b: Pick<Reading, 'value' | 'expandedUncertainty'>): boolean {
	return Math.abs(enNumber(a.value, a.expandedUncertainty, b.value, b.expandedUncertainty)) <= 1;
}

/** Values are written down to a tenth; a difference of two is known no better than this. */
const ROUNDING = 0.05;

/**
 * Two tests by the same kit share its biases, so their difference is held against the scatter
 * alone, which is finer than what each of them claims.
 */
function agreeInScatter(a: Reading, b: Reading): boolean {
	const { repeatabilitySd } = a;
	return repeatabilitySd === undefined
		? agree(a, b)
		: Math.abs(a.value - b.value) <= repeatabilityLimit(repeatabilitySd) + ROUNDING;
}

/** Is a repeat elsewhere by more than scatter explains? */
export const differsInScatter = (reading: Reading, repeat: Reading): boolean =>
	!agreeInScatter(reading, repeat);

/**
 * By how much two values must differ before it is more than their ±: tests of one kit share its biases, so
 * theirs is told by scatter alone.
 */
export function changeReach(
	a: Pick<Reading, 'expandedUncertainty' | 'repeatabilitySd'>,
	b: Pick<Reading, 'expandedUncertainty' | 'repeatabilitySd'>
): number {
	return a.repeatabilitySd !== undefined && b.repeatabilitySd !== undefined
		? repeatabilityLimit(Math.hypot(a.repeatabilitySd, b.repeatabilitySd) / Math.SQRT2)
		: Math.hypot(a.expandedUncertainty, b.expandedUncertainty);
}

/**
 * Two bottles in the same hands and ware: what ware and hands do is in both, so what is left between
 * them is told more finely than either claims.
 */
function differByLot(a: Reading, b: Reading): boolean {
	const of = ({ value, expandedUncertainty, repeatabilitySd }: Reading, lot: string) => ({
		value,
		standardUncertainty: expandedUncertainty / 2,
		repeatabilitySd,
		lot
	});
	return compareReadings(of(a, 'one'), of(b, 'other')).verdict === 'likelyReal';
}

const sameWay: readonly ('first' | BenchCheckId)[] = ['first', 'repeatFull', 'repeatQuick'];
/** Is it a test of the same water by the same way of working, and not the reading itself? */
export const isRepeat = (each: BenchEvidence, reading: Reading): boolean =>
	each.kind === 'test' && sameWay.includes(each.from) && each.reading.id !== reading.id;

const all = <T>(things: readonly T[], is: (thing: T) => boolean) =>
	things.length > 0 && things.every(is);

/** Does all that was read now lie on one side of all that was read before, by more than both claim? */
const showChange = (now: readonly Reading[], then: readonly Reading[]) =>
	[1, -1].some((side) =>
		all(now, (each) => all(then, (old) => !agree(each, old) && side * (each.value - old.value) > 0))
	);

/** What a known solution says: it read right, or by what factor the kit would then be off. */
function referencesIn(evidence: readonly BenchEvidence[], matrixEffect: MatrixEffect) {
	return evidence.flatMap((each) => {
		if (each.kind !== 'reference') return [];
		const expected = each.nominal + (matrixEffect[each.matrix] ?? 0);
		const isGood = agree(each.reading, {
			value: expected,
			expandedUncertainty: each.nominalExpandedUncertainty
		});
		return [{ isGood, foundOverExpected: each.reading.value / expected }];
	});
}

/** Everything that evidence shows about one reading; the order of the evidence does not matter. */
export function factsOf(
	reading: Reading,
	evidence: readonly BenchEvidence[],
	matrixEffect: MatrixEffect = {}
): Facts {
	const others = evidence.filter((each) => each.reading.id !== reading.id);
	const testsFrom = (from: BenchCheckId) =>
		others.flatMap((each) => (each.kind === 'test' && each.from === from ? [each.reading] : []));
	const readingsOf = (kind: BenchEvidence['kind']) =>
		others.flatMap((each) => (each.kind === kind ? [each.reading] : []));
	const repeats = others.flatMap((each) => (isRepeat(each, reading) ? [each.reading] : []));
	const lots = testsFrom('freshLot');
	const samples = testsFrom('freshSample');
	const seconds = readingsOf('secondMethod');
	const earlier = readingsOf('earlier');
	const before = others.flatMap((each) =>
		each.kind === 'earlier' && each.daysAgo > 0 ? [each.reading] : []
	);
	const references = referencesIn(others, matrixEffect);
	const bad = references.filter(({ isGood }) => !isGood);

	const secondsAgree = all(seconds, (each) => agree(each, reading));
	// Were the kit off by what the solution says, the tank would hold this; does a second method allow it?
	const isExcluded = ({ foundOverExpected }: { foundOverExpected: number }) =>
		foundOverExpected > 0 &&
		seconds.every(
			(each) =>
				!agree(each, {
					value: reading.value / foundOverExpected,
					expandedUncertainty: reading.expandedUncertainty / foundOverExpected
				})
		);
	const referenceDoubtful = secondsAgree && all(bad, isExcluded);
	return {
		repeats,
		repeatsAgree: all(repeats, (each) => agreeInScatter(reading, each)),
		repeatsDiffer: repeats.some((each) => differsInScatter(reading, each)),
		isRepeatedWithCare: others.some(
			(each) => isRepeat(each, reading) && each.kind === 'test' && each.from !== 'repeatQuick'
		),
		secondsAgree,
		secondsDiffer: seconds.some((each) => !agree(each, reading)),
		secondsSideWithRepeats: all(seconds, (each) => all(repeats, (repeat) => agree(each, repeat))),
		secondsShowChange: showChange(seconds, before),
		repeatsShowChange: showChange(repeats, before),
		referenceGood: all(references, ({ isGood }) => isGood),
		referenceOff: bad.length > 0 && !referenceDoubtful,
		referenceDoubtful,
		lotDiffers: lots.some((each) => differByLot(each, reading)),
		lotAgrees: all(lots, (each) => !differByLot(each, reading)),
		sampleDiffers: samples.some((each) => !agree(each, reading)),
		sampleAgrees: all(samples, (each) => agree(each, reading)),
		earlierDiffers: earlier.some((each) => !agree(each, reading)),
		hasEarlier: earlier.length > 0
	};
}
