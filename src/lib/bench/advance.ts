import {
	addAcid,
	addAlkalinity,
	alkalinityAt,
	compositionOf,
	loseCarbonDioxide
} from '../chemistry';
import {
	carbonDioxideLoss,
	dropperDropFactor,
	fallSeconds,
	heldMl,
	holdingHand,
	leak,
	push,
	runBurette,
	unmixedShare
} from '../glassware';
import { normalAt } from './noise';
import { titrantMolPerL, type BenchState, type DeliveryState, type Flow } from './state';

/** From the tip to the surface, cm. */
const FALL_MS = fallSeconds(5) * 1000;
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
function giveEndsAt(state: BenchState, flow: Flow): number {
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

/** Delivery at a later time, with nothing yet fallen: what came out hangs at the tip. */
function flowTo(state: BenchState, at: number): BenchState {
	let { delivery, flow } = state;
	let liquidMl = 0;
	let airMl = 0;
	if (flow) {
		const pushedMl = pushedBy(state, flow, at);
		const moved = pushDelivery(delivery, Math.max(0, pushedMl - flow.pushedMl));
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
		...state,
		flow,
		delivery: { ...delivery, hangingMl: delivery.hangingMl + liquidMl + leakedMl },
		leakedMl: state.leakedMl + leakedMl,
		airPushedMl: state.airPushedMl + airMl
	};
}

/** When the next drop will leave the tip, if that is before `until`. */
function nextDropAt(state: BenchState, until: number): number | null {
	if (!state.flow && leakMlPerS(state) === 0) return null;
	const size = nextDropMl(state);
	const hangsAt = (at: number) => flowTo(state, at).delivery.hangingMl;
	if (hangsAt(until) < size) return null;
	let early = state.at;
	let late = until;
	for (let i = 0; i < 60 && late - early > 1e-9; i++) {
		const middle = (early + late) / 2;
		if (hangsAt(middle) >= size) late = middle;
		else early = middle;
	}
	return late;
}

/** Acid over what brings the water to pH 6: what a grain of carbonate can still take up, mol. */
function acidForGrainsMol(state: BenchState): number {
	if (!state.vessel) return 0;
	const out = { value: 0, slope: 0 };
	alkalinityAt(1e-6, compositionOf(state.vessel), out);
	return Math.max(0, out.value * state.vessel.massKg - state.vessel.alkalinityMol);
}
/** Share of that acid taken up each second by grains, still and swirled; this project's choice: minutes. */
const GRAINS_STILL_PER_S = 0.01;
const GRAINS_SWIRLED_PER_S = 0.04;

/** What happens in the vial by itself: mixing, CO2 leaving, grains dissolving. */
function settle(state: BenchState, at: number): BenchState {
	const seconds = (at - state.at) / 1000;
	if (seconds <= 0) return state;
	const isSwirled = state.swirlStartedAt !== null;
	let { vessel, grainsMol } = state;
	if (vessel) {
		vessel = loseCarbonDioxide(vessel, carbonDioxideLoss(seconds, isSwirled));
		if (grainsMol > 0) {
			const rate = isSwirled ? GRAINS_SWIRLED_PER_S : GRAINS_STILL_PER_S;
			const takenMol =
				Math.min(2 * grainsMol, acidForGrainsMol(state)) * (1 - Math.exp(-rate * seconds));
			grainsMol -= takenMol / 2;
			vessel = addAlkalinity(vessel, { alkalinityMol: takenMol, dicMol: takenMol / 2 });
		}
	}
	return {
		...state,
		at,
		vessel,
		grainsMol,
		unmixedMol: state.unmixedMol * unmixedShare(seconds, isSwirled),
		swirledS: state.swirledS + (isSwirled && state.drops.length > 0 ? seconds : 0),
		swirledSinceDropS: state.swirledSinceDropS + (isSwirled ? seconds : 0)
	};
}

/** Below this share of a drop's acid, nothing unmixed is to be seen. */
const VISIBLE_PLUME_DROPS = 0.15;

/** A drop meets the surface. */
function land(state: BenchState, volumeMl: number): BenchState {
	const molPerL = titrantMolPerL(state);
	const acidMol = (volumeMl / 1000) * molPerL;
	const dropMol = (state.kit.delivery.dropMl / 1000) * molPerL;
	return {
		...state,
		vessel: state.vessel && addAcid(state.vessel, { volumeMl, molPerL }),
		unmixedMol: state.unmixedMol + acidMol,
		inVialMl: state.inVialMl + volumeMl,
		swirledSinceDropS: 0,
		drops: [
			...state.drops,
			{ at: state.at, volumeMl, intoPlume: state.unmixedMol > VISIBLE_PLUME_DROPS * dropMol }
		]
	};
}

/** Whatever is at the tip goes in, or is put in, at once. */
export function landNow(state: BenchState, volumeMl: number): BenchState {
	return volumeMl > 0 ? land(state, volumeMl) : state;
}

/**
 * The bench at a later moment, when nobody does anything new. It steps from one drop to the next,
 * never from frame to frame, so looking often or seldom gives the same state.
 *
 * @param at ms since the run began, not before `state.at`
 * @throws RangeError naming `at` when time would run backwards
 */
export function advance(state: BenchState, at: number): BenchState {
	if (!(at >= state.at))
		throw new RangeError(`at must not be before the bench's own time ${state.at}; found ${at}`);
	let now = state;
	for (;;) {
		const giveEnds = now.flow ? giveEndsAt(now, now.flow) : Number.POSITIVE_INFINITY;
		const landsAt = now.falling[0]?.landsAt ?? Number.POSITIVE_INFINITY;
		const horizon = Math.min(at, giveEnds, landsAt);
		const dropAt = nextDropAt(now, horizon);
		const next = dropAt ?? horizon;
		now = settle({ ...flowTo(now, next), at: now.at }, next);
		if (dropAt !== null) {
			const volumeMl = now.delivery.hangingMl;
			now = {
				...now,
				at: dropAt,
				delivery: { ...now.delivery, hangingMl: 0 },
				falling: [...now.falling, { landsAt: dropAt + FALL_MS, volumeMl }],
				dropIndex: now.dropIndex + 1,
				dropsSinceFill: now.dropsSinceFill + 1
			};
		} else if (landsAt <= at && next === landsAt) {
			const [drop, ...rest] = now.falling;
			now = land({ ...now, at: next, falling: rest }, drop?.volumeMl ?? 0);
		} else if (giveEnds <= at && next === giveEnds) {
			now = { ...now, at: next, flow: null };
		} else {
			return { ...now, at };
		}
	}
}
