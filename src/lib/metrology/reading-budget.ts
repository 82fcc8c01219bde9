import type { Kit } from '../kits';
import {
	requireReading,
	type BudgetInput,
	type BudgetKind,
	type BudgetLineId,
	type BudgetReading
} from './budget-input';
import { studentTQuantile } from './distributions';
import { blendScatter, requireOwn, scatterModelOf, type OwnRepeatability } from './own-scatter';
import { scatterInputs } from './scatter-inputs';
import { sharedInputs } from './shared-inputs';
import { combineUncertainty, effectiveDegreesOfFreedom } from './uncertainty';

export type BudgetLine = {
	id: BudgetLineId;
	name: string;
	/** Its own share, in the kit's unit; shares add in squares. */
	contribution: number;
	kind: BudgetKind;
	/** Where the figure comes from, in a few words. */
	origin: string;
};

export type ReadingBudget = {
	/** In the kit's unit. */
	standardUncertainty: number;
	/** About 95 %. */
	expandedUncertainty: number;
	coverageFactor: number;
	degreesOfFreedom: number;
	/** The part that falls anew at each test: standard deviation of one titration by the same hands. */
	repeatabilitySd: number;
	/** Largest first. */
	lines: BudgetLine[];
};

/** A temperature below this share of all else is left out: it adds a tenth of a percent. */
const WORTH_A_LINE = 0.05;

const variance = (inputs: readonly BudgetInput[]) =>
	combineUncertainty(inputs).standardUncertainty ** 2;

/** Budget of inputs that are all there; `repeatabilitySd` is that of one test. */
export function budgetOf(all: readonly BudgetInput[], repeatabilitySd: number): ReadingBudget {
	const others = all.filter(({ id }) => id !== 'temperature');
	const least = WORTH_A_LINE ** 2 * variance(others);
	const inputs = all.filter((input) => others.includes(input) || variance([input]) > least);
	const { standardUncertainty } = combineUncertainty(inputs);
	const degreesOfFreedom = effectiveDegreesOfFreedom(inputs);
	const coverageFactor = studentTQuantile(0.975, Math.max(1, degreesOfFreedom));
	return {
		standardUncertainty,
		expandedUncertainty: coverageFactor * standardUncertainty,
		coverageFactor,
		degreesOfFreedom,
		repeatabilitySd,
		lines: inputs
			.map(({ id, name, kind, origin, ...input }) => ({
				id,
				name,
				kind,
				origin,
				contribution: Math.abs(input.sensitivity * input.standardUncertainty)
			}))
			.sort((a, b) => b.contribution - a.contribution)
	};
}

/** The line that stands for all scatter but the last drop, once repeats have had their say. */
export function ownScatterInput(restVariance: number, degreesOfFreedom: number): BudgetInput {
	return {
		id: 'ownScatter',
		name: 'own scatter',
		kind: 'scatter',
		standardUncertainty: Math.sqrt(restVariance),
		sensitivity: 1,
		degreesOfFreedom,
		origin: 'repeats, pooled with what is judged'
	};
}

/**
 * Uncertainty of one reading, about 95 %. Sample, delivery and titrant scale with the value; the
 * end point (a whole drop is added at once, and colour is judged) and the reading of the mark do not.
 * The mean half-drop too much is no uncertainty: the kit's conversion has it.
 *
 * Source: measurement model value = V_titrant · c / V_sample by JCGM 100:2008; degrees of freedom of
 * judged inputs by its eq. G.3, of the whole by G.2b. Where each figure comes from stands in its line.
 *
 * @param reading how the reading came about; `value` in the kit's unit
 * @param own a person's own scatter from earlier repeats with this kit and sample volume: pooled with
 *   the judged one, so that one pair does not rule and many do; the step of a drop stays
 * @throws RangeError naming the field when a number is not finite or out of range
 */
export function readingBudget(
	kit: Kit,
	reading: BudgetReading,
	own?: OwnRepeatability | null
): ReadingBudget {
	requireReading(reading);
	const shared = sharedInputs(kit, reading);
	const scatter = scatterInputs(kit, reading);
	if (!own) return budgetOf([...shared, ...scatter], Math.sqrt(variance(scatter)));
	requireOwn(own);
	const model = scatterModelOf(kit, reading, scatter);
	const { restVariance, degreesOfFreedom } = blendScatter(model, [own]);
	const drops = scatter.filter(({ id }) => id === 'wholeDrops');
	return budgetOf(
		[...shared, ...drops, ownScatterInput(restVariance, degreesOfFreedom)],
		Math.sqrt(model.stepVariance + restVariance)
	);
}
