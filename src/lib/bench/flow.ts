import {
	dropperDropFactor,
	heldMl,
	holdingHand,
	leak,
	push,
	runBurette,
	slipOfSeal
} from '../glassware';
import { normalAt } from './noise';
import type { BenchState, DeliveryState, Flow } from './state';

/** Spread of single drops about their mean; common practice, no source. */
const DROP_SPREAD = 0.04;
/** A badly seated tip lets a drop go about every 25 s; common practice, no source. */
const LEAK_DROPS_PER_S = 1 / 25;
/** From the bare nozzle, without a tip, drops are this much larger (wider rim; Tate 1864). */
const BARE_NOZZLE_FACTOR = 2;
/** Set amounts come at this pace: about a drop in 0.6 s, or a short stream. */
const GIVE_MS_PER_DROP = 600;
const STREAM_MS_PER_DROP = 120;

/** Volume of the next drop to fall, mL: the kit's drop, the bottle's own, the hand's, and chance. */
export function nextDropMl(state: BenchState): number {
	const { delivery, kit, seed, titration, dropIndex } = state;
	const scatter = 1 + DROP_SPREAD * normalAt(seed, titration, 'drop', dropIndex);
	const own = state.truth.ware?.dropFactor ?? 1;
	const hand =
		delivery.by === 'dropper'
			? dropperDropFactor(delivery.tiltDegrees, delivery.squeezedHard)
			: delivery.by === 'syringe' && delivery.syringe.tip === 'off'
				? BARE_NOZZLE_FACTOR
				: 1;
	return kit.delivery.dropMl * own * hand * Math.max(0.8, Math.min(1.2, scatter));
}

/** All that the hand has pushed by a time since the flow started, mL. */
function pushedBy(state: BenchState, flow: Flow, at: number): number {
	const ms = at - flow.startedAt;
	if (flow.giveMl === null) return heldMl(holdingHand(state.kit.delivery.dropMl), ms / 1000);
	return Math.min(flow.giveMl, (ms / msPerDrop(state, flow.giveMl)) * state.kit.delivery.dropMl);
}
const msPerDrop = (state: BenchState, giveMl: number) =>
	giveMl > 2.5 * state.kit.delivery.dropMl ? STREAM_MS_PER_DROP : GIVE_MS_PER_DROP;

/** When a set amount will have been given. */
export function giveEndsAt(state: BenchState, flow: Flow): number {
	if (flow.giveMl === null) return Number.POSITIVE_INFINITY;
	return flow.startedAt + (flow.giveMl / state.kit.delivery.dropMl) * msPerDrop(state, flow.giveMl);
}

/** Moves plunger, bottle or tap by so much. */
function pushDelivery(
	delivery: DeliveryState,
	volumeMl: number
): { delivery: DeliveryState; liquidMl: number; airMl: number } {
	if (delivery.by === 'dropper') return { delivery, liquidMl: volumeMl, airMl: 0 };
	if (delivery.by === 'burette') {
		const run = runBurette(delivery.burette, volumeMl);
		return { ...run, delivery: { ...delivery, burette: run.burette } };
	}
	const pushed = push(delivery.syringe, delivery.syringe.sealMl - volumeMl);
	return { ...pushed, delivery: { ...delivery, syringe: pushed.syringe } };
}

function leakMlPerS(state: BenchState): number {
	const { delivery } = state;
	return delivery.by === 'syringe' && delivery.syringe.tip === 'loose' && state.overVial
		? state.kit.delivery.dropMl * LEAK_DROPS_PER_S
		: 0;
}

type Moved = Pick<BenchState, 'flow' | 'stuckMl' | 'delivery' | 'leakedMl' | 'airPushedMl'>;

/** Delivery at a later time, with nothing yet fallen: what came out hangs at the tip. */
export function flowTo(state: BenchState, at: number): Moved {
	let { delivery, flow, stuckMl } = state;
	let liquidMl = 0;
	let airMl = 0;
	if (flow) {
		const pushedMl = pushedBy(state, flow, at);
		const seal = slipOfSeal(
			stuckMl + Math.max(0, pushedMl - flow.pushedMl),
			delivery.by === 'syringe' ? (state.truth.ware?.stickyJumpMl ?? 0) : 0
		);
		const moved = pushDelivery(delivery, seal.travelMl);
		stuckMl = seal.stuckMl;
		delivery = moved.delivery;
		liquidMl = moved.liquidMl;
		airMl = moved.airMl;
		flow = { ...flow, pushedMl };
	}
	let leakedMl = 0;
	const rate = leakMlPerS(state);
	if (rate > 0 && delivery.by === 'syringe') {
		const leaked = leak(delivery.syringe, (rate * (at - state.at)) / 1000);
		leakedMl = leaked.liquidMl;
		delivery = { ...delivery, syringe: leaked.syringe };
	}
	return {
		flow,
		stuckMl,
		delivery: { ...delivery, hangingMl: delivery.hangingMl + liquidMl + leakedMl },
		leakedMl: state.leakedMl + leakedMl,
		airPushedMl: state.airPushedMl + airMl
	};
}

/** First span in which the next drop is looked for, ms; it doubles until the drop is in it. */
const FIRST_SPAN_MS = 1000;
/** The moment is found to this, ms: a hand pushes less than a billionth of a drop in it. */
const NEAR_MS = 1e-6;
/** So often a straight line is laid through both ends before they are halved: a push is mostly steady. */
const LINES = 3;

/**
 * When the next drop will leave the tip, if that is not after `until`. The moment is found from the
 * state alone, so asking with another `until` gives the same to the last digit.
 */
export function nextDropAt(state: BenchState, until: number): number | null {
	if (!state.flow && leakMlPerS(state) === 0) return null;
	const size = nextDropMl(state);
	const beyond = (at: number) => flowTo(state, at).delivery.hangingMl - size;
	if (beyond(until) < 0) return null;
	const early = state.at;
	const giveEnds = state.flow ? giveEndsAt(state, state.flow) : Number.POSITIVE_INFINITY;
	let late = giveEnds > early ? Math.min(early + FIRST_SPAN_MS, giveEnds) : early + FIRST_SPAN_MS;
	while (beyond(late) < 0) late += late - early;
	return Math.min(momentBetween(beyond, early, late), until);
}

/** Where what hangs has become a drop; the later end of what is left, so that the drop is there. */
function momentBetween(beyond: (at: number) => number, early: number, late: number): number {
	const near = Math.max(NEAR_MS, 4 * Number.EPSILON * late);
	const look = (at: number) => {
		if (!(at > early && at < late)) return;
		if (beyond(at) < 0) early = at;
		else late = at;
	};
	for (let line = 0; line < LINES && late - early > near; line++) {
		const under = beyond(early);
		const crossing = early - (under * (late - early)) / (beyond(late) - under);
		// A hair to both sides, so that a steady push is done at once.
		look(crossing - near / 3);
		look(crossing + near / 3);
	}
	while (late - early > near) look((early + late) / 2);
	return late;
}
