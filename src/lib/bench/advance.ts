import { fallSeconds } from '../glassware';
import { flowTo, giveEndsAt, nextDropAt, nextDropMl } from './flow';
import { land, settle } from './settle';
import type { BenchState } from './state';

/** From the tip to the surface, cm. */
const FALL_MS = fallSeconds(5) * 1000;
/** What is left at the tip below this was never a drop of its own, mL. */
const TRACE_ML = 1e-6;

/** A drop leaves the tip; what hung there beyond its size stays. */
function detach(state: BenchState, dropMl: number): BenchState {
	const { delivery, at } = state;
	const left = delivery.hangingMl - dropMl;
	const hangingMl = left > TRACE_ML ? left : 0;
	return {
		...state,
		delivery: { ...delivery, hangingMl },
		falling: [
			...state.falling,
			{ landsAt: at + FALL_MS, volumeMl: delivery.hangingMl - hangingMl }
		],
		dropIndex: state.dropIndex + 1,
		dropsSinceFill: state.dropsSinceFill + 1
	};
}

/**
 * What has already been worked out to follow from a state, in order: each frame of a stream would
 * otherwise begin again at the first drop. It holds nothing that could not be found anew.
 */
const following = new WeakMap<BenchState, BenchState[]>();

/**
 * The bench at a later moment, when nobody does anything new. It steps from one drop to the next,
 * never from frame to frame: looking often or seldom gives the same state.
 *
 * @param at ms since the run began, not before `state.at`
 * @throws RangeError naming `at` when time would run backwards
 */
export function advance(state: BenchState, at: number): BenchState {
	if (!(at >= state.at))
		throw new RangeError(`at must not be before the bench's own time ${state.at}; found ${at}`);
	const origin = state.from ?? state;
	const known = following.get(origin) ?? [];
	following.set(origin, known);
	let now = known.findLast((each) => each.at <= at) ?? origin;
	for (;;) {
		const giveEnds = now.flow ? giveEndsAt(now, now.flow) : Number.POSITIVE_INFINITY;
		const landsAt = now.falling[0]?.landsAt ?? Number.POSITIVE_INFINITY;
		const horizon = Math.min(at, giveEnds, landsAt);
		const dropAt = nextDropAt(now, horizon);
		const next = dropAt ?? horizon;
		const then = settle({ ...now, ...flowTo(now, next) }, next);
		if (dropAt !== null) {
			now = detach(then, nextDropMl(then));
		} else if (landsAt <= at && next === landsAt) {
			const [drop, ...rest] = then.falling;
			now = land({ ...then, falling: rest }, drop?.volumeMl ?? 0);
		} else if (giveEnds <= at && next === giveEnds) {
			now = { ...then, flow: null };
		} else {
			return { ...then, from: now };
		}
		known.push(now);
	}
}
