import type { MethodFigures } from '../../metrology';
import {
	benchCheckIds,
	conclusions,
	isBenchCheck,
	type BenchCheckId,
	type BenchEvidence,
	type Conclusion,
	type PracticeCheckId,
	type Reading,
	type RelatedQuantity
} from '../../observation';
import type { Beside } from './beside';
import type { MatrixEffect } from './facts';
import { rankChecks } from '../ranking/rank';
import { isRepeatFirst, rules, type Ruling } from './rules';
import { needsProof, verdictsOf, type Verdict, type Verdicts } from './support-verdicts';
import { whyByWeight, whyCantTell } from './support-words';

/** Whether the evidence that was collected carries a conclusion. Being right by luck is not it. */
export type Support = {
	verdict: Verdict;
	/** One or two plain sentences. */
	why: string;
	/** The check that would have told more; null when nothing is missing or nothing more was to be had. */
	wouldTellMore: PracticeCheckId | null;
};

export type CollectedInput = {
	/** The reading in question. */
	reading: Reading;
	/** Whatever was collected; the reading itself may be among it. */
	evidence: readonly BenchEvidence[];
	/** What a reference in this matrix is known to read over its content with a good kit, in the unit. */
	matrixEffect?: MatrixEffect;
	/** The checks that could be had; any of them when left out. */
	offered?: readonly PracticeCheckId[];
	/** Minutes that a check takes there, where they are known; nothing else is then reckoned for it. */
	minutes?: Partial<Record<PracticeCheckId, number>>;
	/** The kit in question; the project's invented syringe kit when left out. */
	method?: MethodFigures;
	/** Other values of the tank, and what was taken off the reading; nothing when left out. */
	beside?: Omit<Beside, 'analyte'>;
};
export type SupportInput = CollectedInput & { conclusion: Conclusion };

const judged = ({ reading, evidence, matrixEffect, method, beside }: CollectedInput): Verdicts =>
	verdictsOf(
		reading,
		evidence,
		matrixEffect,
		method ? { method } : {},
		beside && { ...beside, analyte: method?.analyte ?? 'alkalinity' }
	);

/** The sentence that goes with the facts, where they say the same; otherwise how probable it is. */
function whyOf(conclusion: Conclusion, { verdicts, weights, facts, beside }: Verdicts): string {
	const verdict = verdicts[conclusion];
	if (conclusion === 'cantTellYet') return whyCantTell(verdict);
	if (conclusion === 'salinity' || conclusion === 'carriedOver') return beside[conclusion].why;
	if (conclusion === 'stands' || conclusion === 'waterChanged') {
		const said = beside[conclusion];
		if (said?.verdict === verdict) return said.why;
	}
	const ruling = rules[conclusion](facts);
	return ruling.verdict === verdict ? ruling.why : whyByWeight(conclusion, verdict, weights);
}

/**
 * Whether a conclusion was earned by the evidence, by the same engine that diagnoses a reading at the
 * tank. The order of the evidence does not matter.
 */
export function supportOf(input: SupportInput): Support {
	const { conclusion } = input;
	const all = judged(input);
	const verdict = all.verdicts[conclusion];
	const isMissing = verdict !== 'earned' || conclusion === 'cantTellYet';
	return {
		verdict,
		why: whyOf(conclusion, all),
		wouldTellMore: isMissing ? mostTelling(input, all) : null
	};
}

/** The conclusions that the evidence earns, in the order of every screen. */
export function earnedConclusions(input: CollectedInput): Conclusion[] {
	const { verdicts } = judged(input);
	return conclusions.filter((each) => verdicts[each] === 'earned');
}

/** Checks that share nothing with the reading but the water. */
const independent: readonly BenchCheckId[] = ['reference', 'secondMethod'];

/** The same test with every step anew. */
const careful: readonly BenchCheckId[] = ['repeatFull'];

/** A value beside the reading on which the conclusion waits, where it was to be had and was not asked. */
function besideTelling(
	{ conclusion, offered = [], beside }: SupportInput,
	rulings: Verdicts
): RelatedQuantity | null {
	const isOpen = (each: Ruling | null) => each?.verdict === 'notYet';
	const taken = beside?.takenOff?.of;
	const wanted: (RelatedQuantity | undefined)[] = [
		isOpen(rulings.beside.salinity) && conclusion === 'salinity' ? 'salinity' : undefined,
		isOpen(rulings.beside.carriedOver) && ['carriedOver', 'stands'].includes(conclusion)
			? taken
			: undefined
	];
	const isAsked = (of: RelatedQuantity) =>
		beside?.related.some((each) => each.isChecked && each.of === of);
	return wanted.find((of) => of && offered.includes(of) && !isAsked(of)) ?? null;
}

/** Checks that were made already. */
function madeIn(evidence: readonly BenchEvidence[]): Set<string> {
	return new Set(evidence.map((each) => (each.kind === 'test' ? each.from : each.kind)));
}

/**
 * Of the checks that were to be had and were not made, the one that would have told most for its
 * cost; where proof is missing, of those that can bring it.
 */
function mostTelling(input: SupportInput, verdicts: Verdicts): PracticeCheckId | null {
	const { evidence, conclusion, method, minutes = {} } = input;
	const { isIndependent, facts, about } = verdicts;
	const beside = besideTelling(input, verdicts);
	if (beside) return beside;
	const made = madeIn(evidence);
	const left = (input.offered ?? benchCheckIds)
		.filter(isBenchCheck)
		.filter((check) => !made.has(check));
	const wanted =
		conclusion === 'waterChanged' && isRepeatFirst(facts)
			? careful
			: needsProof(conclusion) && !isIndependent
				? independent
				: [];
	const fitting = left.filter((check) => wanted.includes(check));
	const available = fitting.length > 0 ? fitting : left;
	if (available.length === 0) return null;
	const { ranked } = rankChecks(about, {
		available,
		costs: Object.fromEntries(
			Object.entries(minutes).map(([check, each]) => [
				check,
				{ minutes: each, priceMinutes: 0, riskMinutes: 0 }
			])
		),
		...(method ? { method } : {})
	});
	const best = ranked.find((each) => each.kind === 'checks');
	return available.find((check) => check === best?.checks[0]) ?? null;
}
