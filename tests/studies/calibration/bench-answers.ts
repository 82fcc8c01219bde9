import { cuesFor } from '../../../src/lib/judgement';
import type { MethodFigures } from '../../../src/lib/metrology';
import type { Evidence } from '../../../src/lib/observation';
import type { Chance } from '../chance';
import { pick, shuffled } from './seeds';

/**
 * How people answer, by plain shares of our own instead of the catalogue's likelihoods: 1 in 10 does
 * not know; of the rest, 6 in 10 whose test has what the question is about say what tells of it, and
 * 9 in 10 of those without say what is usual.
 */
const shares = { unknown: 0.1, tells: 0.6, usual: 0.9 };

/** Answers to questions about the test itself, drawn at random from those that make sense. */
export function answersOnBench(
	method: MethodFigures,
	faults: readonly string[],
	count: number,
	wrongShare: number,
	chance: Chance
): Evidence[] {
	const asked = shuffled(
		chance,
		cuesFor(method).filter(({ about }) => about === undefined)
	).slice(0, count);
	return asked.map(({ id, answers, likelihoods: { otherwise, byFault } }): Evidence => {
		const ids = answers.map((answer) => answer.id).filter((answer) => answer !== 'unknown');
		const usual = ids.reduce((most, answer) =>
			(otherwise[answer] ?? 0) > (otherwise[most] ?? 0) ? answer : most
		);
		const row = faults.map((fault) => byFault[fault]).find((found) => found !== undefined);
		/** The answer that speaks most for the fault. */
		const telling =
			row &&
			ids.reduce((most, answer) =>
				(row[answer] ?? 0) / (otherwise[answer] ?? 1) > (row[most] ?? 0) / (otherwise[most] ?? 1)
					? answer
					: most
			);
		const said = (): string => {
			if (chance.uniform() < shares.unknown) return 'unknown';
			if (chance.uniform() < wrongShare) return pick(chance, ids);
			if (telling !== undefined) return chance.uniform() < shares.tells ? telling : usual;
			return chance.uniform() < shares.usual ? usual : pick(chance, ids);
		};
		const answer = said();
		const isKnown = answers.some((each) => each.id === answer);
		return { kind: 'cue', cue: id, answer: isKnown ? answer : usual };
	});
}
