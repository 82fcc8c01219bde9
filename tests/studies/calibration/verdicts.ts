import { faultById, type Diagnosis, type Fault } from '../../../src/lib/judgement';
import type { CalibrationCase, TrueCause } from './case';

export const NOTHING = 'nothing';
export const NONE_OF_THESE = 'noneOfThese';
const REAL_CHANGE = 'realChange';

type ClassOf = (fault: string) => string;
export const catalogueClassOf =
	(faults?: readonly Fault[]): ClassOf =>
	(id) =>
		id === REAL_CHANGE
			? 'water'
			: ((faults ? faults.find((each) => each.id === id) : faultById(id))?.class ?? 'unknown');

const keyOf = (classes: readonly string[]) => [...new Set(classes)].sort().join('+') || NOTHING;

/**
 * The diagnosis as probabilities of verdicts that exclude each other: which classes something is
 * wrong in ('nothing', 'reagent', 'reagent+water', …, 'noneOfThese'). They sum to 1.
 */
export function verdictsOf(diagnosis: Diagnosis, classOf: ClassOf): Map<string, number> {
	const found = new Map<string, number>([[NONE_OF_THESE, diagnosis.noneOfThese]]);
	for (const { faults, probability } of diagnosis.explanations) {
		const key = keyOf(faults.map(classOf));
		found.set(key, (found.get(key) ?? 0) + probability);
	}
	return found;
}

/** All ways of taking one of each. */
const combinations = <T>(lists: readonly (readonly T[])[]): T[][] =>
	lists.reduce<T[][]>(
		(all, list) => all.flatMap((begun) => list.map((each) => [...begun, each])),
		[[]]
	);

/** Verdicts that are right; the first is the one that base rates are counted by. */
export function rightVerdicts(causes: readonly TrueCause[]): string[] {
	const named = combinations(causes.map(({ classes }) => classes)).map(keyOf);
	const isOdd = causes.some((cause) => cause.isOdd);
	return [...new Set(isOdd ? [NONE_OF_THESE, ...named] : named)];
}

const idOf = (ids: readonly string[]) => [...ids].sort().join('+');

/** Explanations that are right, by id; none where the catalogue has no name for it. */
export function rightExplanations(causes: readonly TrueCause[]): Set<string> {
	return new Set(combinations(causes.map(({ ids }) => ids)).map(idOf));
}

/**
 * Whether the first explanation is right, and whether it is with every cause taken as good that the
 * diagnosis itself says nothing so far tells from it (its groups).
 */
export function isNamed(diagnosis: Diagnosis, { truth }: CalibrationCase) {
	const first = diagnosis.explanations[0];
	const isOdd = truth.causes.some((cause) => cause.isOdd);
	if (!first || diagnosis.noneOfThese > first.probability) return { cause: isOdd, group: isOdd };
	const right = rightExplanations(truth.causes);
	const groupOf = (fault: string) =>
		diagnosis.groups.find(({ faults }) => faults.includes(fault))?.faults ?? [fault];
	const alike = combinations(first.faults.map(groupOf)).map(idOf);
	return {
		cause: right.has(idOf(first.faults)),
		group: alike.some((id) => right.has(id))
	};
}

/**
 * Where one cause of the catalogue is there and no other: whether the likeliest of all causes is it,
 * in its group, or of its class. Null elsewhere.
 */
export function likeliestCause(
	diagnosis: Diagnosis,
	{ truth }: CalibrationCase,
	classOf: ClassOf
): { cause: boolean; group: boolean; class: boolean } | null {
	const [cause, second] = truth.causes;
	if (!cause || second || cause.ids.length === 0 || cause.isOdd) return null;
	let best = { id: '', p: -1 };
	for (const [id, p] of Object.entries(diagnosis.faults)) if (p > best.p) best = { id, p };
	const alike = diagnosis.groups.find(({ faults }) => faults.includes(best.id))?.faults ?? [
		best.id
	];
	const classes: readonly string[] = cause.classes;
	return {
		cause: cause.ids.includes(best.id),
		group: alike.some((id) => cause.ids.includes(id)),
		class: classes.includes(classOf(best.id))
	};
}

/** The likeliest verdict. */
export function likeliest(verdicts: ReadonlyMap<string, number>): {
	verdict: string;
	probability: number;
} {
	let best = { verdict: NOTHING, probability: -1 };
	for (const [verdict, probability] of verdicts)
		if (probability > best.probability) best = { verdict, probability };
	return best;
}
