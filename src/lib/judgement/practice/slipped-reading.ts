import type { BenchEvidence, Evidence, Reading } from '../../observation';
import { faultById } from '../catalogue/catalogue';
import { diagnose } from '../diagnosis/diagnose';
import type { Diagnosis, DiagnoseOptions } from '../diagnosis/diagnosis';
import { conclusionWeights, type Telling } from './conclusion-weights';
import { differsInScatter, isRepeat, type MatrixEffect } from './facts';
import { aboutReading } from './practice-evidence';

/** What evidence says of a reading, and of the water it was taken from. */
export type Telltale = {
	/** How probable each conclusion is, from 0 to 1. */
	weights: Record<Telling, number>;
	/** How probable it is that the water changed with a repeat in question that came out elsewhere; one for each. */
	changedBy: readonly number[];
	/** Something independent holds today's water. */
	isIndependent: boolean;
	/** The evidence by which the water is asked about, the test in question first. */
	about: readonly Evidence[];
};

type Asking = {
	reading: Reading;
	evidence: readonly BenchEvidence[];
	matrixEffect: MatrixEffect;
	options: DiagnoseOptions;
};

/** Probability that something is wrong with the test in question alone, not with what it shares with others. */
const slippedOnce = ({ explanations }: Diagnosis): number =>
	explanations.reduce(
		(sum, { faults, probability }) =>
			faults.some((id) => faultById(id)?.scope === 'oneTest') ? sum + probability : sum,
		0
	);

/**
 * What the engine says of a reading and of the water.
 *
 * A slip of one test is in that test alone, so the engine looks for it in the test in question only. Where
 * repeats came out elsewhere, what it says of the water depends on which of them it is asked about: a
 * slip that hides a change makes the reading agree with those from before, and each then speaks for the
 * other. So whether the reading slipped is asked of today's evidence by itself. If it did, it knows
 * nothing of the water, and the same engine is asked about each of those repeats without it. What is then
 * left is held against ordinary drift and what came before like any reading.
 *
 * @param found how probable a slip is on which the reading is set aside, from 0 to 1
 */
export function telltaleOf(asking: Asking, found: number): Telltale {
	const { reading, evidence, matrixEffect, options } = asking;
	const about = aboutReading(reading, evidence, matrixEffect);
	const whole = diagnose(about, options);
	const plain: Telltale = {
		weights: conclusionWeights(whole, reading),
		changedBy: [],
		isIndependent: whole.isIndependent,
		about
	};
	const elsewhere = evidence.filter(
		(each) => isRepeat(each, reading) && differsInScatter(reading, each.reading)
	);
	const today = about.filter((each) => each.kind !== 'earlier' || each.daysAgo === 0);
	if (elsewhere.length === 0 || today.length === about.length) return plain;

	const rest = evidence.filter((each) => each.reading.id !== reading.id);
	const asked = elsewhere.map((each) => {
		const aboutIt = aboutReading(each.reading, rest, matrixEffect);
		const diagnosis = diagnose(aboutIt, options);
		const { secondMethod, waterChanged } = conclusionWeights(diagnosis, each.reading);
		return {
			aboutIt,
			isIndependent: diagnosis.isIndependent,
			weights: { secondMethod, waterChanged }
		};
	});
	const changedBy = asked.map(({ weights }) => weights.waterChanged);
	const byToday = diagnose(today, options);
	if (slippedOnce(byToday) < found) return { ...plain, changedBy };

	// A change is no likelier than the repeat says that speaks least for it.
	const least = asked.reduce((a, b) => (b.weights.waterChanged < a.weights.waterChanged ? b : a));
	return {
		weights: { ...conclusionWeights(byToday, reading), ...least.weights },
		changedBy,
		isIndependent: asked.every(({ isIndependent }) => isIndependent),
		about: least.aboutIt
	};
}
