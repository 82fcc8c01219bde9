import type { Analysis } from './analysis';
import type { Belief } from './beliefs';
import { contradictionsOf } from './contradictions';
import type { SilentWitness } from './diagnosis';
import type { Fault } from '../catalogue/fault';
import { inQuestionOf } from './in-question';

/** What is more likely than this to be wrong itself speaks for nothing; judgement. */
const DOUBTED = 0.3;
/** A second method that claims less than this, as a standard uncertainty in shares of the value, verifies nothing; judgement. */
const TOO_WIDE = 0.08;

/**
 * Whether something independent holds what is believed of the tank now: the kit in question was given
 * a known solution, or another method measured the tank's water; and that is not itself what is
 * probably wrong. A known solution that reads off what it holds bears nothing out: the kit or the solution
 * is off. One that reads as it should says nothing of a slip in the one test in question, unless that was
 * repeated. Earlier readings are of another day. Told as well: whether a known solution is among what holds
 * it, and what was asked and could not count.
 */
export function witnessesOf(
	analysis: Analysis,
	beliefs: readonly Belief[]
): { isHeld: boolean; isKitVouched: boolean; silent: SilentWitness[] } {
	const { model, faults, places } = analysis;
	const doubt = (...scopes: Fault['scope'][]) =>
		beliefs.reduce(
			(sum, { place, probability }) =>
				place !== places.noneOfThese &&
				places.faultsAt(place).some((fault) => scopes.includes(faults[fault]!.scope))
					? sum + probability
					: sum,
			0
		);
	const isNarrow = (i: number) => {
		const at = i * model.size + i;
		const variance = (model.added[at] ?? 0) + (model.scatter[i] ?? 0);
		return Math.sqrt(variance) <= TOO_WIDE * Math.abs(model.value[i] ?? 0);
	};
	const rows = model.rows.slice(0, model.count);
	const read = rows.filter(({ things }) => things.solution !== null && things.kit !== null);
	// Two readings of a solution that lie apart are another matter: one of them may be right.
	const readOff = contradictionsOf(analysis).flatMap(({ between, at }) =>
		between === 'solution' && at.length === 1 ? at : []
	);
	const byReference = read.length > 0;
	const isReadOff = byReference && read.every(({ at }) => readOff.includes(at));
	const methods = rows.flatMap(({ things, isEarlier }, i) =>
		things.instrument !== null && things.solution === null && !isEarlier ? [i] : []
	);
	const isSolutionDoubted = byReference && doubt('solution') >= DOUBTED;
	// It was the kit that read the solution, not the test in question: that one may have slipped alone.
	const isReadingDoubted =
		byReference &&
		inQuestionOf(analysis)?.isRepeated === false &&
		doubt('oneTest', 'sampling') >= DOUBTED;
	const isMethodDoubted = methods.length > 0 && doubt('instrument') >= DOUBTED;
	const isAnyNarrow = methods.some(isNarrow);
	const isKitVouched = byReference && !isSolutionDoubted && !isReadOff && !isReadingDoubted;
	return {
		isHeld: isKitVouched || (isAnyNarrow && !isMethodDoubted),
		isKitVouched,
		silent: [
			...(isSolutionDoubted ? (['solutionDoubted'] as const) : []),
			...(isReadOff && !isSolutionDoubted ? (['solutionOff'] as const) : []),
			...(isReadingDoubted && !isReadOff && !isSolutionDoubted
				? (['readingDoubted'] as const)
				: []),
			...(isMethodDoubted ? (['methodDoubted'] as const) : []),
			...(methods.length > 0 && !isAnyNarrow && !isMethodDoubted
				? (['methodTooWide'] as const)
				: [])
		]
	};
}
