import type { Kit } from '../kits';
import { usedMlIn, type BudgetInput, type BudgetReading } from './budget-input';
import { mean, standardDeviation } from './replicates';
import { roundingCorrelation } from './rounding';
import { DROP_SPREAD } from './scatter-inputs';

/** A person's own scatter with this kit, pooled from their repeats, in the kit's unit. */
export type OwnRepeatability = { sd: number; degreesOfFreedom: number };

/**
 * What a person's repeats say about their scatter: pooled over groups of tests of one water each,
 * Σ(n − 1)s² / Σ(n − 1). Groups may be of any size; a single test says nothing. Values must be in one
 * unit and of one sample volume. Null when no group has two.
 *
 * Source: ISO 5725-2, pooled repeatability.
 */
export function ownRepeatability(groups: readonly (readonly number[])[]): OwnRepeatability | null {
	const repeated = groups.filter((values) => values.length > 1);
	const degreesOfFreedom = repeated.reduce((sum, values) => sum + values.length - 1, 0);
	if (degreesOfFreedom === 0) return null;
	const squares = repeated.reduce(
		(sum, values) => sum + (values.length - 1) * standardDeviation(values) ** 2,
		0
	);
	return { sd: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}

/** @throws RangeError naming the field */
export function requireOwn(own: OwnRepeatability): void {
	if (!(own.sd >= 0 && Number.isFinite(own.sd)))
		throw new RangeError(`own.sd must be 0 or above; found ${own.sd}`);
	if (!(own.degreesOfFreedom > 0))
		throw new RangeError(`own.degreesOfFreedom must be above 0; found ${own.degreesOfFreedom}`);
}

/**
 * The judged scatter counts for as much as this many degrees of freedom of repeats: taken to be right
 * to about a third (JCGM 100, eq. G.3). One pair of one's own so moves it by a fifth, forty pairs
 * leave it a tenth.
 */
export const JUDGED_DEGREES = 4;

/** Scatter of one test, as variances in the kit's unit squared. */
export type ScatterModel = {
	/** Step of the last addition: even over its size. */
	step: number;
	stepVariance: number;
	/** All else that falls anew. */
	restVariance: number;
	/** The part of the rest that comes in after the last addition: reading the mark. */
	afterVariance: number;
	/** What moves the end against the steps without changing the value: drops counted by travel. */
	phaseVariance: number;
};

/** Scatter of one reading as its budget's inputs have it. */
export function scatterModelOf(
	kit: Kit,
	reading: BudgetReading,
	inputs: readonly BudgetInput[]
): ScatterModel {
	const varianceOf = (is: (input: BudgetInput) => boolean) =>
		inputs
			.filter((input) => input.kind === 'scatter' && is(input))
			.reduce((sum, input) => sum + (input.standardUncertainty * input.sensitivity) ** 2, 0);
	const dropValue = kit.delivery.dropMl * reading.valuePerMl;
	const drops = usedMlIn(reading) / kit.delivery.dropMl;
	return {
		step: dropValue * (reading.endStepDrops ?? 1),
		stepVariance: varianceOf(({ id }) => id === 'wholeDrops'),
		restVariance: varianceOf(({ id }) => id !== 'wholeDrops'),
		afterVariance: varianceOf(({ id }) => id === 'readingMark'),
		phaseVariance: kit.delivery.by === 'dropper' ? 0 : drops * (DROP_SPREAD * dropValue) ** 2
	};
}

/** Scatter of the middle of several readings of one water. */
export function meanModel(models: readonly ScatterModel[]): ScatterModel {
	const of = (field: keyof ScatterModel) => mean(models.map((model) => model[field]));
	return {
		step: of('step'),
		stepVariance: of('stepVariance'),
		restVariance: of('restVariance'),
		afterVariance: of('afterVariance'),
		phaseVariance: of('phaseVariance')
	};
}

/** How far repeats of one water share the error of the last step, when the rest scatters by so much. */
export function stepCorrelation(model: ScatterModel, restVariance = model.restVariance): number {
	const before = Math.max(0, restVariance - model.afterVariance) + model.phaseVariance;
	return roundingCorrelation(Math.sqrt(before) / model.step);
}

/** Variance that repeats of one water show among themselves: what the step does alike is not in it. */
export function shownVariance(model: ScatterModel, restVariance = model.restVariance): number {
	return restVariance + model.stepVariance * (1 - stepCorrelation(model, restVariance));
}

/** The other way round: the rest that goes with a variance shown; 0 when the step alone explains it. */
function restBehind(model: ScatterModel, shown: number): number {
	if (shownVariance(model, 0) >= shown) return 0;
	let low = 0;
	let high = shown;
	for (let i = 0; i < 60; i++) {
		const middle = (low + high) / 2;
		if (shownVariance(model, middle) < shown) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}

export type Blended = { restVariance: number; degreesOfFreedom: number };

/**
 * Judged scatter and what repeats showed, pooled by their degrees of freedom. The step of a drop is
 * kept apart: repeats that all end on the same drop look steadier than they are, since they share its
 * error.
 */
export function blendScatter(
	model: ScatterModel,
	seen: readonly (OwnRepeatability | null | undefined)[]
): Blended {
	let weight = JUDGED_DEGREES;
	let sum = JUDGED_DEGREES * shownVariance(model);
	for (const each of seen) {
		if (!each) continue;
		weight += each.degreesOfFreedom;
		sum += each.degreesOfFreedom * each.sd ** 2;
	}
	return { restVariance: restBehind(model, sum / weight), degreesOfFreedom: weight };
}
