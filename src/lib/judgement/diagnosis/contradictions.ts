import type { Analysis } from './analysis';
import type { Contradiction } from './diagnosis';
import { ordinaryWorld, readingCovariance } from './model';
import type { Row } from './row';

/** So many expanded uncertainties apart is a contradiction: by chance in 1 of 80 pairs. Judgement. */
const APART = 1.25;

function whatLiesApart(one: Row, other: Row): NonNullable<Contradiction['between']> {
	if (one.things.solution !== null) return 'solution';
	if (one.isEarlier || other.isEarlier) return 'days';
	return one.things.instrument === other.things.instrument ? 'tests' : 'methods';
}

/**
 * Pieces of evidence that lie further apart than they would if nothing were wrong and the water had
 * not changed, and known solutions that read off what they hold; what lies furthest apart first.
 *
 * Ordinary spreads are those of the model: repeats differ by scatter alone, another bottle, another
 * person or another day by what these bring.
 */
export function contradictionsOf(
	{ model }: Analysis,
	inUnit: (value: number) => number = (value) => value
): Contradiction[] {
	const { rows, count, value, shift, amountMean } = model;
	const off = (i: number) => value[i]! - shift[i]! - amountMean[i]!;
	const covariance = (i: number, j: number) => readingCovariance(model, ordinaryWorld, i, j);
	const found: (Pick<Contradiction, 'difference'> & {
		at: number[];
		between: NonNullable<Contradiction['between']>;
		sd: number;
	})[] = [];
	for (let i = 0; i < count; i++) {
		const { at, things, weighed } = rows[i]!;
		if (weighed) continue;
		// The tank may hold anything within reason; a known solution holds what it does.
		if (things.solution !== null)
			found.push({
				at: [at],
				between: 'solution',
				difference: off(i),
				sd: Math.sqrt(covariance(i, i))
			});
		for (let j = 0; j < i; j++) {
			const other = rows[j]!;
			if (other.weighed || (things.solution === null) !== (other.things.solution === null))
				continue;
			const variance = covariance(i, i) + covariance(j, j) - 2 * covariance(i, j);
			const difference = off(i) - off(j);
			found.push({
				at: [at, other.at],
				between: whatLiesApart(rows[i]!, other),
				difference,
				sd: Math.sqrt(Math.max(0, variance))
			});
		}
	}
	return found
		.filter(({ difference, sd }) => Math.abs(difference) > APART * 2 * sd)
		.sort(
			(a, b) => Math.abs(b.difference) / b.sd - Math.abs(a.difference) / a.sd || a.at[0]! - b.at[0]!
		)
		.map(({ at, between, difference, sd }) => {
			// Told by their order in the evidence, whatever order the rows are in.
			const isTurned = at.length === 2 && at[0]! > at[1]!;
			return {
				at: isTurned ? at.toReversed() : at,
				between,
				difference: inUnit(isTurned || at.length === 1 ? difference : -difference),
				ordinary: inUnit(2 * sd)
			};
		});
}
