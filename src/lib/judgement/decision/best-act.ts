import type { Act } from './advice-loss';
import type { Belief } from './decide-belief';

/** An adjustment goes the way that is more likely than all else together. */
const MORE_LIKELY_THAN_NOT = 0.5;
/** From here on a value lies beyond an edge of the band by about its own ± or more: clearly; judgement. */
const CLEARLY = 0.95;
/** One that does not is moved only where to leave it is expected to cost so many times as much; judgement. */
const TIMES_THE_COST = 2;

/** How likely it is that the value lies on the side from which an act moves it; 1 for leaving it. */
const chanceOfSide = ({ probabilities }: Belief, act: Act): number =>
	act === 'raise' ? probabilities.below : act === 'lower' ? probabilities.above : 1;

/** The act that is expected to cost least; an act needs more than even chances of its side. */
export function bestAct(belief: Belief): Act {
	const { losses } = belief;
	const act =
		losses.raise < Math.min(losses.leave, losses.lower)
			? 'raise'
			: losses.lower < losses.leave
				? 'lower'
				: 'leave';
	return chanceOfSide(belief, act) > MORE_LIKELY_THAN_NOT ? act : 'leave';
}

/** Whether an act is called for by a value that is verified: it lies outside beyond its ±, or waiting costs far more. */
export const isCalledFor = (act: Act, belief: Belief): boolean =>
	chanceOfSide(belief, act) >= CLEARLY ||
	belief.losses.leave >= TIMES_THE_COST * belief.losses[act];
