import type { CheckId } from '../../observation';
import type { RankedCheck } from '../ranking/ranked-check';
import { bestAct, isCalledFor } from './best-act';
import type { Belief } from './decide-belief';
import type { Decision } from './decision';

/** What is expected to tell less, in bits, is not asked before something independent; judgement. */
const HARDLY_TELLS = 0.05;
/**
 * Chance of changing the advice from which one more check comes first, although the value is verified
 * already; judgement.
 */
const WORTH_ASKING_STILL = 0.2;

/** Checks that read today's water once more, and with that whether the test in question slipped. */
const repeats: readonly CheckId[] = ['repeatQuick', 'repeatFull', 'freshSample'];

/** How a reading stands when it is asked whether it is to be checked further. */
export type Standing = {
	/** Of the tank's true value, and of what to do about it. */
	belief: Belief;
	/** Checks and questions that are left, the best first. */
	ranked: readonly RankedCheck[];
	/** One of them, or some in turn, are worth their minutes. */
	isWorthGoingOn: boolean;
	/** Something independent of the kit bears the value out. */
	isVerified: boolean;
	/** A number beside the one in question can hardly have been read. */
	hasSetAside: boolean;
	/** Nothing of the tank follows from what was read. */
	isOfNoTank: boolean;
	/** Far off, made once, and explained by no answer. */
	isRepeatDue: boolean;
	/** What is known of today does not fit together. */
	isAtOdds: boolean;
};

/** The check of the reading that comes next, or what lacks where none of those left is it. */
export type FurtherCheck = {
	check: RankedCheck | null;
	lacks: Extract<Decision['lacks'], 'reading' | 'repeat' | 'independent'> | null;
};

const by = (check: RankedCheck): FurtherCheck => ({ check, lacks: null });
const lacking = (lacks: FurtherCheck['lacks']): FurtherCheck => ({ check: null, lacks });

/** The best of those that test the same water again; null where none is to be had. */
const repeatAmong = (ranked: readonly RankedCheck[]): RankedCheck | null =>
	ranked.find(
		(each) => each.kind === 'checks' && each.checks.every((check) => repeats.includes(check))
	) ?? null;

/** Whether a check tests the same water again, and nothing else. */
export const isRepeat = (check: RankedCheck | null): boolean =>
	check !== null && repeatAmong([check]) !== null;

/**
 * What leads from a reading that says nothing of the tank to one that does: the question that tells most of how
 * it came about, then water taken anew, whatever others find in the same cup.
 */
function towardsTheTank(ranked: readonly RankedCheck[]): FurtherCheck {
	const tells = ({ information }: RankedCheck) => information >= HARDLY_TELLS;
	const question = ranked
		.filter((each) => each.kind === 'cue' && tells(each))
		.reduce<RankedCheck | null>(
			(most, each) => (most && most.information >= each.information ? most : each),
			null
		);
	const anew = ranked.find(
		(each) => each.kind === 'checks' && each.checks.every((check) => check === 'freshSample')
	);
	const next = question ?? anew ?? ranked.find(tells);
	return next ? by(next) : lacking('reading');
}

/**
 * What is to be checked of a reading before anything is done or left by it; null where it is enough. The one
 * rule of when to stop: `rankChecks` tells it and `decide` goes by it.
 *
 * A number of no tank is looked at once more, and water taken anew; one far off that was made once is
 * repeated; what is at odds is cleared up; to move a value takes something independent; and a check that may
 * well turn the advice comes before it. Beyond that, what is verified is checked no further.
 */
export function furtherCheck({
	belief,
	ranked,
	isWorthGoingOn,
	isVerified,
	hasSetAside,
	isOfNoTank,
	isRepeatDue,
	isAtOdds
}: Standing): FurtherCheck | null {
	const best = bestAct(belief);
	const first = ranked[0] ?? null;
	const next = isWorthGoingOn ? first : null;
	if (hasSetAside) return lacking('reading');
	if (isOfNoTank) return towardsTheTank(ranked);
	if (isRepeatDue) {
		const repeat = repeatAmong(ranked);
		return repeat ? by(repeat) : lacking('repeat');
	}
	const turning =
		(next && ranked.find(({ changesAdvice }) => changesAdvice >= WORTH_ASKING_STILL)) ?? null;
	// Something independent verifies nothing while it contradicts the kit.
	if (next && isAtOdds) return by(next);
	if (best === 'leave' && next && !isVerified) return by(next);
	if (best !== 'leave' && !isVerified)
		return next && next.information >= HARDLY_TELLS ? by(next) : lacking('independent');
	if (best !== 'leave' && next && !isCalledFor(best, belief)) return by(turning ?? next);
	return turning && by(turning);
}
