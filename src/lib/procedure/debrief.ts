import {
	curveOf,
	endMovedBy,
	ledgerOf,
	trueValueOf,
	type Curve,
	type Ledger,
	type LedgerLine
} from '../bench';
import { slipWords, supportOf, type Finding, type Support } from '../judgement';
import { convertValue, type Kit } from '../kits';
import { methodFiguresOf } from '../metrology';
import type {
	BenchEvidence,
	Conclusion,
	PracticeCheckId,
	Reading,
	RelatedValue,
	Slip,
	SlipKind,
	TakenFromReading
} from '../observation';
import { nextThing, type NextThing } from './next-thing';
import { evidenceOf, readingInQuestion } from './evidence';
import { readingOfTitration } from './readings';
import { declaredOf } from './declared-value';
import { differenceOfReading, relatedValues, type ReadingDifference } from './related';
import type { RunState } from './run';
import type { TitrationRun } from './titration-run';
import { slipsKnowingTheEnd } from './slips-at-end';
import { findingsTogether } from './values-together';

export type SlipNote = {
	slip: Slip;
	name: string;
	remedy: string;
	/** What it made of the value, in the kit's unit; null without a value, and where another slip owns it. */
	amount: number | null;
	/** By how much it moved the end, mL of titrant: see `endMovedBy`. Null with a value, and where nothing tells. */
	endMovedMl: number | null;
};

export type Debrief = {
	/** The learner's own first reading; null for a drill that ends before one. */
	reading: Reading | null;
	/** In the kit's unit. */
	trueValue: number;
	ledger: Ledger | null;
	slips: SlipNote[];
	/** The one thing to do next. */
	next: NextThing;
	curve: Curve;
	conclusion: {
		given: Conclusion;
		sure: number;
		/** All that would have been right here. */
		right: Conclusion[];
		isRight: boolean;
		support: Support;
		wouldTellMore: PracticeCheckId | null;
	} | null;
	evidence: BenchEvidence[];
	inQuestion: Reading | null;
	/** Other values that were known by then. */
	related: RelatedValue[];
	/** What the reading in question leaves when something is taken off, as it was said and as it was. */
	difference: (ReadingDifference & { trueValue: number }) | null;
	/** The values looked at together, where there are others than the reading. */
	together: readonly Finding[];
	reveal: string | null;
};

/**
 * What a good kit reads of a known solution over its content, about where tanks lie. Alkalinity, of plain
 * bicarbonate: at the same hue plain water is less acid, since its salts hold the dye and the carbon
 * otherwise. Calcium, of calcium alone: no magnesium hydroxide carries any of it down. Hardness, of both
 * metals: some magnesium falls out of the buffer where no sea salt keeps it. Found with the house kits and
 * clean hands on this bench; a test repeats it. Magnesium by itself is never titrated.
 */
const matrixEffects: Partial<
	Record<Kit['analyte'], { unit: Kit['unit']; purified: number; sodiumChloride: number }>
> = {
	alkalinity: { unit: 'dKH', purified: -0.22, sodiumChloride: 0 },
	calcium: { unit: 'mg/L', purified: 4.9, sodiumChloride: 5.4 },
	hardness: { unit: 'mmol/L', purified: -4.2, sodiumChloride: 0.2 }
};

/** What a kit reads of a known solution in other than seawater over its content, in its unit. */
export function matrixEffectOn({ analyte, unit }: Pick<Kit, 'analyte' | 'unit'>): {
	purified: number;
	sodiumChloride: number;
} {
	const { unit: from, ...effect } = matrixEffects[analyte] ?? {
		unit,
		purified: 0,
		sodiumChloride: 0
	};
	const inUnit = (value: number) => convertValue(value, from, unit, analyte);
	return {
		purified: inUnit(effect.purified),
		sodiumChloride: inUnit(effect.sodiumChloride)
	};
}

function ledgerOfTitration(titration: TitrationRun, slips: readonly Slip[]): Ledger | null {
	const declared = declaredOf(titration);
	return declared && ledgerOf(titration.bench, declared, slips);
}

type SlipLine = Extract<LedgerLine, { kind: 'slip' }>;

function noteOf(slip: Slip, ledger: Ledger | null, moved: ReadonlyMap<SlipKind, number>): SlipNote {
	const line = ledger?.lines.find(
		(each): each is SlipLine => each.kind === 'slip' && each.slip.kind === slip.kind
	);
	return {
		slip,
		...slipWords(slip),
		amount: line?.amount ?? null,
		endMovedMl: moved.get(slip.kind) ?? null
	};
}

/** Conclusions that are true beside the verdict: a tank that changed was read rightly, and so on. */
const trueBeside: Partial<Record<Conclusion, readonly Conclusion[]>> = {
	waterChanged: ['stands'],
	secondMethod: ['stands'],
	salinity: ['waterChanged', 'stands']
};

/**
 * What would have been right to conclude about the learner's own reading: what the scenario says;
 * and if own slips, or a stop away from the end, moved the reading by more than its uncertainty, technique as well, and no longer
 * that it stands.
 */
function rightConclusions(
	run: RunState,
	ledger: Ledger | null,
	reading: Reading | null
): Conclusion[] {
	const verdict = run.scenario.verdict ?? 'stands';
	if (run.scenario.inQuestion === 'earlier' || !ledger || !reading) return [verdict];
	const byHands = ledger.lines
		.filter(({ kind }) => kind === 'slip' || kind === 'eye')
		.reduce((sum, line) => sum + line.amount, 0);
	if (Math.abs(byHands) <= reading.expandedUncertainty)
		// Where the water changed, or another method is off, the learner's own reading stands as well.
		return [verdict, ...(trueBeside[verdict] ?? [])];
	return verdict === 'stands' ? ['technique'] : [verdict, 'technique'];
}

/** A reading that is itself off is no value to look at beside others. */
const isReadRightly = ({ kind, verdict }: RunState['scenario']): boolean =>
	kind === 'case' && verdict !== 'technique' && verdict !== 'reagent';

/** What was taken for granted gives way to what was measured since. */
function takenAnew(
	takenOff: RunState['scenario']['takenOff'],
	related: readonly RelatedValue[]
): TakenFromReading | undefined {
	const anew = related.findLast((each) => each.isChecked && each.of === takenOff?.of);
	return takenOff && !takenOff.isMeasured && anew?.unit
		? { ...takenOff, ...anew, of: takenOff.of, unit: anew.unit, isMeasured: true }
		: takenOff;
}

/** Everything that is shown when a run is over. */
export function debriefOf(run: RunState): Debrief | null {
	const first = run.titrations[0];
	if (!first) return null;
	const reading = readingOfTitration(first);
	const slips = slipsKnowingTheEnd(first);
	const ledger = ledgerOfTitration(first, slips);
	const moved = ledger ? new Map<SlipKind, number>() : endMovedBy(first.bench, slips);
	const notes = slips.map((slip) => noteOf(slip, ledger, moved));
	const given = run.inquiry.context.conclusion;
	const evidence = evidenceOf(run);
	const related = relatedValues(run);
	const inQuestion = readingInQuestion(run);
	const { takenOff } = run.scenario;
	const { water } = first.bench.truth;
	const difference = inQuestion && differenceOfReading(run.kit, inQuestion, takenOff);
	const right = rightConclusions(run, ledger, reading);
	const support =
		given && inQuestion
			? supportOf({
					reading: inQuestion,
					evidence: evidence.filter((each) => each.reading.id !== inQuestion.id),
					conclusion: given.conclusion,
					matrixEffect: matrixEffectOn(run.kit),
					method: methodFiguresOf(run.kit),
					beside: { related, ...(takenOff ? { takenOff } : {}) },
					offered: run.scenario.checks.map(({ check }) => check),
					minutes: Object.fromEntries(
						run.scenario.checks.map(({ check, minutes }) => [check, minutes])
					)
				})
			: null;
	return {
		reading,
		trueValue: trueValueOf(water, run.kit),
		ledger,
		slips: notes,
		next: nextThing(run.kit, ledger, notes, run.scenario.kind === 'case'),
		curve: curveOf(first.bench),
		conclusion:
			given && support
				? {
						given: given.conclusion,
						sure: given.sure,
						right,
						isRight: right.includes(given.conclusion),
						support,
						wouldTellMore: support.wouldTellMore
					}
				: null,
		evidence,
		inQuestion,
		related,
		difference: difference && { ...difference, trueValue: trueValueOf(water, difference) },
		together:
			inQuestion && isReadRightly(run.scenario)
				? findingsTogether({
						kit: run.kit,
						reading: inQuestion,
						difference: differenceOfReading(run.kit, inQuestion, takenAnew(takenOff, related)),
						evidence,
						related
					})
				: [],
		reveal: run.scenario.reveal ?? null
	};
}
