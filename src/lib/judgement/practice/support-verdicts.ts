import type { BenchEvidence, Conclusion, Evidence, Reading } from '../../observation';
import { besideRulings, type Beside, type BesideRulings } from './beside';
import { conclusionWeights, tellingConclusions, type Telling } from './conclusion-weights';
import { diagnose } from '../diagnosis/diagnose';
import type { DiagnoseOptions } from '../diagnosis/diagnosis';
import { factsOf, type Facts, type MatrixEffect } from './facts';
import { aboutReading } from './practice-evidence';
import { isChangeUnconfirmed } from './rules';
import { telltaleOf, type Telltale } from './slipped-reading';

export type Verdict = 'earned' | 'notYet' | 'against';

/** What is wrong is found at two in three, judgement; what people would then act on, at three in four. */
const EARNED = { cause: 0.65, value: 0.75 };
/** The evidence speaks against what is no longer likely; judgement. */
const UNLIKELY = 0.15;
/** A cause of which there are many is unlikely to begin with: it must have become half as likely too; judgement. */
const UNLIKELY_CAUSE = 0.05;

/** Verdicts on all conclusions, and what they rest on. */
export type Verdicts = {
	verdicts: Record<Conclusion, Verdict>;
	/** How probable each conclusion is. */
	weights: Record<Telling, number>;
	facts: Facts;
	/** What the values beside it say. */
	beside: BesideRulings;
	/** A known solution or a second method speaks for it. */
	isIndependent: boolean;
	/** The evidence by which today's water is asked about, the test in question first. */
	about: readonly Evidence[];
};

/** That all is as it was read, or that the water did it, is said only with something independent. */
export const needsProof = (conclusion: Conclusion): boolean =>
	conclusion === 'stands' || conclusion === 'waterChanged';

/** Values beside the reading of which nothing is known. */
const NOTHING_BESIDE = (analyte: Beside['analyte']): Beside => ({ analyte, related: [] });

/**
 * Verdicts on all conclusions from one and the same evidence, by how probable each has become. The
 * order of the evidence does not matter.
 */
export function verdictsOf(
	reading: Reading,
	evidence: readonly BenchEvidence[],
	matrixEffect: MatrixEffect = {},
	options: DiagnoseOptions = {},
	values: Beside = NOTHING_BESIDE(options.method?.analyte ?? 'alkalinity')
): Verdicts {
	const beside = besideRulings(reading, evidence, values);
	const facts = factsOf(reading, evidence, matrixEffect);
	const asked = telltaleOf({ reading, evidence, matrixEffect, options }, EARNED.cause);
	const { weights } = asked;
	// Asked for only where something has become improbable: it costs as much again.
	let reached: Record<Telling, number> | null = null;
	const alone = (conclusion: Telling) =>
		(reached ??= conclusionWeights(diagnose(aboutReading(reading, []), options), reading))[
			conclusion
		];
	// However odd a reading looks beside earlier ones: without a check, a cause is a guess.
	const isChecked =
		evidence.some((each) => each.kind !== 'earlier' && each.reading.id !== reading.id) ||
		values.related.some((each) => each.isChecked);
	// What two kits saw is not in one of them.
	const isIndependent = asked.isIndependent || beside.waterChanged?.verdict === 'earned';

	const verdictOf = (conclusion: Telling): Verdict => {
		if (!isChecked) return 'notYet';
		const weight = weights[conclusion];
		const isEarned = needsProof(conclusion)
			? weight >= EARNED.value && isIndependent
			: weight >= EARNED.cause && !isInDoubtItself(conclusion, facts);
		if (isEarned) return 'earned';
		return isAgainst(conclusion, asked, () => alone(conclusion), facts) ? 'against' : 'notYet';
	};
	const telling = Object.fromEntries(
		tellingConclusions.map((each) => [each, withBeside(verdictOf(each), each, { beside, facts })])
	) as Record<Telling, Verdict>;
	const told = {
		...telling,
		salinity: beside.salinity.verdict,
		carriedOver: beside.carriedOver.verdict
	};
	const isAnyEarned = Object.values(told).includes('earned');
	return {
		verdicts: { ...told, cantTellYet: isAnyEarned ? 'notYet' : 'earned' },
		weights,
		facts,
		beside,
		isIndependent,
		about: asked.about
	};
}

/** While the other method shows a change and no careful repeat spoke against it, the reading is as much in doubt as that. */
const isInDoubtItself = (conclusion: Telling, facts: Facts): boolean =>
	conclusion === 'secondMethod' && isChangeUnconfirmed(facts);

/**
 * A verdict on a reading, and what the values beside it add: they can take away, or bring home a change
 * that the kit alone would call no more than drift. Where the reading itself did not hold up, they do not.
 */
function withBeside(
	verdict: Verdict,
	conclusion: Telling,
	{ beside, facts }: Pick<Verdicts, 'beside' | 'facts'>
): Verdict {
	if (conclusion === 'stands' && beside.stands)
		return verdict === 'against' ? verdict : beside.stands.verdict;
	if (conclusion === 'waterChanged' && beside.waterChanged) {
		const { repeatsDiffer, sampleDiffers, lotDiffers, referenceOff } = facts;
		const isShaken = repeatsDiffer || sampleDiffers || lotDiffers || referenceOff;
		return isShaken ? verdict : beside.waterChanged.verdict;
	}
	return verdict;
}

/** @param alone how likely it was with nothing but the reading */
function isAgainst(
	conclusion: Telling,
	{ weights, changedBy }: Telltale,
	alone: () => number,
	facts: Facts
): boolean {
	const weight = weights[conclusion];
	switch (conclusion) {
		case 'stands':
			return weight < UNLIKELY;
		case 'secondMethod':
			// Where the two agree there is nothing to find.
			return facts.secondsAgree || (facts.secondsDiffer && weight < UNLIKELY);
		case 'waterChanged':
			if (isChangeUnconfirmed(facts)) return false;
			return (
				(facts.hasEarlier || facts.sampleDiffers) &&
				[weight, ...changedBy].every((each) => each < UNLIKELY)
			);
		default:
			return weight < UNLIKELY_CAUSE && weight < alone() / 2;
	}
}
