import type { Evidence } from '../../observation';
import type { Cue } from '../catalogue/fault';

/** A likelihood is never surer than this, whatever a catalogue says. */
const LEAST = 0.02;
const within = (likelihood: number) => Math.min(1 - LEAST, Math.max(LEAST, likelihood));

/** What one answered question says of faults. */
export type AnsweredCue = {
	/** Probability of what was answered if none of the faults named is there. */
	otherwise: number;
	/** The same by fault. */
	byFault: ReadonlyMap<string, number>;
};

export type Answered = {
	cues: AnsweredCue[];
	/** Ids of the questions that were answered. */
	asked: ReadonlySet<string>;
	unused: { at: number; why: string }[];
};

/**
 * What the answers say. A question that was answered twice counts once: alike, as one answer;
 * differently, as one or the other of the two.
 */
export function answeredCues(evidence: readonly Evidence[], cues: readonly Cue[]): Answered {
	const unused: Answered['unused'] = [];
	const answers = new Map<Cue, Set<string>>();
	evidence.forEach((each, at) => {
		if (each.kind !== 'cue') return;
		const cue = cues.find(({ id }) => id === each.cue);
		if (!cue) unused.push({ at, why: `No question is known by the name ${each.cue}.` });
		else if (!cue.answers.some(({ id }) => id === each.answer))
			unused.push({ at, why: `${each.answer} is no answer to ${each.cue}.` });
		else answers.set(cue, (answers.get(cue) ?? new Set()).add(each.answer));
	});
	evidence.forEach((each, at) => {
		if (each.kind !== 'cue') return;
		const given = answers.get(cues.find(({ id }) => id === each.cue)!);
		const isOther = (before: Evidence) =>
			before.kind === 'cue' && before.cue === each.cue && before.answer !== each.answer;
		if (given && given.size > 1 && evidence.slice(0, at).some(isOther))
			unused.push({
				at,
				why: `${each.cue} was answered in two ways: it counts as one or the other, and tells little.`
			});
	});
	const sorted = [...answers].sort(([a], [b]) => (a.id < b.id ? -1 : 1));
	return {
		cues: sorted.map(([cue, given]) => answeredCue(cue, [...given].sort())),
		asked: new Set(sorted.map(([{ id }]) => id)),
		unused
	};
}

/** A question with its answer, or with two that were given to it. */
export function answeredCue(cue: Cue, given: readonly string[]): AnsweredCue {
	const { otherwise, byFault } = cue.likelihoods;
	const of = (row: Record<string, number>) =>
		given.reduce((sum, answer) => sum + within(row[answer] ?? 0), 0) / given.length;
	return {
		otherwise: of(otherwise),
		byFault: new Map(Object.entries(byFault).map(([fault, row]) => [fault, of(row)]))
	};
}

/**
 * Probability of an answer when two faults are there, by what each makes of it alone. An answer that
 * either makes likelier can come from the one or the other (a noisy OR with what is said otherwise as
 * its leak); one that a fault makes less likely is made less likely by both.
 *
 * Source: noisy OR, Pearl 1988, Probabilistic Reasoning in Intelligent Systems, 4.3.2.
 */
export function answerOfPair(otherwise: number, one: number, two: number): number {
	if (one >= otherwise && two >= otherwise)
		return within(1 - ((1 - one) * (1 - two)) / (1 - otherwise));
	return within((one * two) / otherwise);
}

/** Probability of an answer with no fault, one or two of these ids. */
export function answerWith({ otherwise, byFault }: AnsweredCue, ids: readonly string[]): number {
	const [one, two] = ids.flatMap((id) => byFault.get(id) ?? []);
	if (one === undefined) return otherwise;
	return two === undefined ? one : answerOfPair(otherwise, one, two);
}

/** ln of how likely all answers are, by fault and by pair of faults, against nothing being wrong. */
export class CueEvidence {
	readonly #otherwise: readonly number[];
	/** By cue, by fault: null where the cue does not name it. */
	readonly #named: (number | null)[][];
	readonly #single: Float64Array;

	constructor(cues: readonly AnsweredCue[], faults: readonly { id: string }[]) {
		this.#otherwise = cues.map(({ otherwise }) => otherwise);
		this.#named = cues.map(({ byFault }) => faults.map(({ id }) => byFault.get(id) ?? null));
		this.#single = Float64Array.from(faults, (_, i) =>
			this.#named.reduce((sum, row, c) => {
				const likelihood = row[i] ?? null;
				return likelihood === null ? sum : sum + Math.log(likelihood / this.#otherwise[c]!);
			}, 0)
		);
	}

	ofOne(fault: number): number {
		return this.#single[fault]!;
	}

	ofTwo(one: number, two: number): number {
		let sum = this.#single[one]! + this.#single[two]!;
		this.#named.forEach((row, c) => {
			const a = row[one] ?? null;
			const b = row[two] ?? null;
			if (a === null || b === null) return;
			const otherwise = this.#otherwise[c]!;
			sum +=
				Math.log(answerOfPair(otherwise, a, b) / otherwise) -
				Math.log(a / otherwise) -
				Math.log(b / otherwise);
		});
		return sum;
	}
}
