import type { Kit } from '../kits';
import { requireReading, type BudgetInput, type BudgetReading } from './budget-input';
import { grubbsTest, type OutlierTest } from './outliers';
import {
	blendScatter,
	meanModel,
	requireOwn,
	scatterModelOf,
	shownVariance,
	stepCorrelation,
	type OwnRepeatability,
	type ScatterModel
} from './own-scatter';
import { budgetOf, ownScatterInput, type ReadingBudget } from './reading-budget';
import { mean, standardDeviation } from './replicates';
import { scatterInputs } from './scatter-inputs';
import { sharedInputs } from './shared-inputs';
import { median, medianFactor, spreadOf, type Spread } from './spread';

export type NextRepeat = {
	/** About 95 %, after one more test that lands in the middle of these. */
	expandedUncertainty: number;
	/** It shrinks by a twentieth at least, or the tests do not agree. */
	isWorthIt: boolean;
	why: 'sharedDominates' | 'shrinks' | 'disagree';
};

export type CombinedRepeats = ReadingBudget & {
	/** Mean of the readings; their median when they do not agree. */
	value: number;
	n: number;
	of: 'mean' | 'median';
	/** Null for one reading. */
	spread: Spread | null;
	/** A screen that deletes nothing; null below three readings. */
	outlier: OutlierTest | null;
	next: NextRepeat;
};

/** What must be gained to be worth the reagent: a twentieth of the ±; this project's choice. */
export const WORTH_GAIN = 0.05;

/** Shared inputs of the mean: the same error in each reading, so its effects add up as they are. */
function sharedOfMean(kit: Kit, readings: readonly BudgetReading[]): BudgetInput[] {
	const each = readings.map((reading) => sharedInputs(kit, reading));
	// Not every reading has every line: one may be counted through the tip, another not.
	const all = new Map(each.flat().map((input) => [input.id, input]));
	return [...all.values()].map((input) => {
		const contributions = each.map((inputs) => {
			const same = inputs.find(({ id }) => id === input.id);
			return same ? same.standardUncertainty * same.sensitivity : 0;
		});
		return { ...input, standardUncertainty: mean(contributions), sensitivity: 1 };
	});
}

/** Scatter of the middle of n: what is left of each part. */
type Shrunk = { model: ScatterModel; restVariance: number; n: number; factor: number };

function shrunkParts({ model, restVariance, n, factor }: Shrunk) {
	const alike = stepCorrelation(model, restVariance);
	return {
		step: model.stepVariance * (alike + ((1 - alike) * factor) / n),
		rest: (restVariance * factor) / n
	};
}

function budgetOfMiddle(
	shared: readonly BudgetInput[],
	scatter: readonly BudgetInput[],
	shrunk: Shrunk,
	degreesOfFreedom: number | null
): ReadingBudget {
	const { model, restVariance } = shrunk;
	const { step, rest } = shrunkParts(shrunk);
	const scaled = (input: BudgetInput, from: number, to: number) => ({
		...input,
		sensitivity: from === 0 ? 0 : input.sensitivity * Math.sqrt(to / from)
	});
	const anew = scatter.flatMap((input) => {
		if (input.id === 'wholeDrops') return [scaled(input, model.stepVariance, step)];
		return degreesOfFreedom === null ? [scaled(input, model.restVariance, rest)] : [];
	});
	const own = degreesOfFreedom === null ? [] : [ownScatterInput(rest, degreesOfFreedom)];
	return budgetOf([...shared, ...anew, ...own], Math.sqrt(model.stepVariance + restVariance));
}

/**
 * Value and uncertainty of several titrations of the same water with the same kit. What ware, bottles
 * and habit do alike stays whole; scatter shrinks with the number, but for the part of the last drop's
 * error that steady repeats share. The standard deviation is never that of these few alone: it is the
 * person's own and the judged one, pooled with what these show.
 *
 * Sources: JCGM 100:2008 for the budget; ISO 5725-6:1994, 5.2.2 for critical range and median.
 *
 * @param readings at least one, in the kit's unit, without those that were set aside
 * @param own a person's own scatter from earlier tests; these readings must not be in it
 * @throws RangeError naming the field when there is no reading, or a number is out of range
 */
export function combineRepeats(
	kit: Kit,
	readings: readonly BudgetReading[],
	own?: OwnRepeatability | null
): CombinedRepeats {
	const [first] = readings;
	if (!first) throw new RangeError('readings must hold at least 1 reading; found 0');
	readings.forEach(requireReading);
	if (own) requireOwn(own);
	const n = readings.length;
	const values = readings.map(({ value }) => value);
	const scatters = readings.map((reading) => scatterInputs(kit, reading));
	const model = meanModel(
		readings.map((reading, i) => scatterModelOf(kit, reading, scatters[i] ?? []))
	);
	const prior = blendScatter(model, [own]);
	const shownSd = Math.sqrt(shownVariance(model, own ? prior.restVariance : model.restVariance));
	const spread = spreadOf(values, model, shownSd);
	const seen = n < 2 ? null : { sd: standardDeviation(values), degreesOfFreedom: n - 1 };
	const blended = own || seen ? blendScatter(model, [own, seen]) : null;
	const restVariance = blended?.restVariance ?? model.restVariance;
	const of = spread && !spread.agrees && n > 2 ? 'median' : 'mean';
	const factor = of === 'median' ? medianFactor(n) : 1;
	const shared = sharedOfMean(kit, readings);
	const scatter = meanScatter(scatters);
	const budgetFor = (count: number, by: number) =>
		budgetOfMiddle(
			shared,
			scatter,
			{ model, restVariance, n: count, factor: by },
			own ? (blended?.degreesOfFreedom ?? null) : null
		);
	const budget = budgetFor(n, factor);
	const after = budgetFor(n + 1, of === 'median' ? medianFactor(n + 1) : 1).expandedUncertainty;
	return {
		...budget,
		value: of === 'median' ? median(values) : mean(values),
		n,
		of,
		spread,
		outlier: n < 3 ? null : grubbsTest(values),
		next: nextRepeat(budget.expandedUncertainty, after, spread)
	};
}

/** Inputs of one typical reading among these. */
function meanScatter(scatters: readonly (readonly BudgetInput[])[]): BudgetInput[] {
	return (scatters[0] ?? []).map((input) => {
		const squares = scatters.map((inputs) => {
			const same = inputs.find(({ id }) => id === input.id);
			return same ? (same.standardUncertainty * same.sensitivity) ** 2 : 0;
		});
		return { ...input, standardUncertainty: Math.sqrt(mean(squares)), sensitivity: 1 };
	});
}

function nextRepeat(now: number, after: number, spread: Spread | null): NextRepeat {
	if (spread && !spread.agrees && spread.toDo === 'takeOneMore')
		return { expandedUncertainty: after, isWorthIt: true, why: 'disagree' };
	const isWorthIt = 1 - after / now >= WORTH_GAIN;
	return { expandedUncertainty: after, isWorthIt, why: isWorthIt ? 'shrinks' : 'sharedDominates' };
}
