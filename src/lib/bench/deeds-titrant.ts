import {
	draw,
	fillBurette,
	fitTip,
	purge,
	push,
	removeTip,
	runBurette,
	type Syringe
} from '../glassware';
import { nextDropMl } from './flow';
import { landNow } from './settle';
import { uniformAt } from './noise';
import type { BenchState } from './state';

type SyringeBench = BenchState & { delivery: Extract<BenchState['delivery'], { by: 'syringe' }> };

function withGlass<By extends BenchState['delivery']['by']>(
	state: BenchState,
	by: By,
	action: string
): BenchState & { delivery: Extract<BenchState['delivery'], { by: By }> } {
	if (state.delivery.by !== by)
		throw new RangeError(`${action} needs a ${by}; this kit delivers by ${state.delivery.by}`);
	return state as BenchState & { delivery: Extract<BenchState['delivery'], { by: By }> };
}

const withSyringe = (state: SyringeBench, syringe: Syringe): SyringeBench => ({
	...state,
	delivery: { ...state.delivery, syringe }
});

/** The tip pushed on, firmly or only just. */
export function putTipOn(state: BenchState, firm: boolean): BenchState {
	const bench = withGlass(state, 'syringe', 'tip.fit');
	return withSyringe(bench, fitTip(bench.delivery.syringe, firm));
}

export function takeTipOff(state: BenchState): BenchState {
	const bench = withGlass(state, 'syringe', 'tip.remove');
	const bare = withSyringe(bench, removeTip(bench.delivery.syringe).syringe);
	return { ...bare, delivery: { ...bare.delivery, hangingMl: 0 } };
}

function fillingOf({ delivery }: BenchState): BenchState['filledTo'] {
	if (delivery.by !== 'syringe') return null;
	const { sealMl, cushionMl } = delivery.syringe;
	return { sealMl, cushionMl };
}

/** A filling is over: counting starts anew, and a drop may hang at the tip as it leaves the bottle. */
function outOfTheBottle(state: BenchState): BenchState {
	const { seed, titration, dropIndex } = state;
	const hangs = uniformAt(seed, titration, 'hangs', dropIndex) < 0.5;
	const share = 0.35 + 0.5 * uniformAt(seed, titration, 'hanging', dropIndex);
	const hangingMl = hangs ? share * state.kit.delivery.dropMl : 0;
	return {
		...state,
		stuckMl: 0,
		delivery: { ...state.delivery, hangingMl },
		dropsSinceFill: 0,
		overVial: false
	};
}

/** How full it stands, mL from any fixed place. */
const standsMl = ({ delivery }: BenchState): number =>
	delivery.by === 'syringe'
		? delivery.syringe.sealMl
		: delivery.by === 'burette'
			? -(delivery.burette.levelMl ?? 0)
			: 0;

/** How full it stands at its full mark, from the same place. */
const fullMl = ({ kit: { delivery } }: BenchState): number =>
	delivery.by === 'syringe' ? delivery.capacityMl : 0;

/**
 * The seal, or the level, was moved, but not to give drops: before the first drop that is where counting starts;
 * later it is set off against the travel.
 */
function notCounted(before: BenchState, after: BenchState): BenchState {
	if (before.drops.length === 0) return { ...after, filledTo: fillingOf(after) };
	const movedMl = standsMl(after) - standsMl(before);
	// Drawn in two goes it is one refill: no drop fell in between.
	const isAnother = movedMl > 0 && before.dropsSinceFill > 0;
	const isSameFilling = before.refills > 0 && before.dropsSinceFill === 0;
	const pastMl = isAnother ? standsMl(after) - fullMl(after) : isSameFilling ? movedMl : 0;
	return {
		...after,
		refilledMl: before.refilledMl + movedMl,
		refills: before.refills + (isAnother ? 1 : 0),
		refilledPastMl: before.refilledPastMl + pastMl
	};
}

/** The plunger moved with the end of the syringe in the bottle, or out of it. */
export function drawTitrant(
	state: BenchState,
	sealMl: number,
	end: 'inTitrant' | 'inAir'
): BenchState {
	const bench = withGlass(state, 'syringe', 'titrant.draw');
	const { syringe } = bench.delivery;
	if (sealMl < syringe.sealMl)
		return notCounted(bench, withSyringe(bench, push(syringe, sealMl).syringe));
	const drawn = notCounted(bench, withSyringe(bench, draw(syringe, sealMl, end)));
	return end === 'inAir' ? drawn : outOfTheBottle(drawn);
}

export function purgeAir(state: BenchState, sealMl: number): BenchState {
	const bench = withGlass(state, 'syringe', 'titrant.purge');
	const purged = wipeTip(withSyringe(bench, purge(bench.delivery.syringe, sealMl).syringe));
	return notCounted(bench, purged);
}

export function pourIntoBurette(state: BenchState, levelMl: number): BenchState {
	const bench = withGlass(state, 'burette', 'burette.fill');
	const filled = {
		...bench,
		delivery: { ...bench.delivery, burette: fillBurette(bench.delivery.burette, levelMl) }
	};
	return { ...notCounted(bench, filled), dropsSinceFill: 0, overVial: false };
}

/** Run to waste: the jet fills, the level falls, nothing goes into the vial. */
export function runOut(state: BenchState, volumeMl: number): BenchState {
	const bench = withGlass(state, 'burette', 'burette.runOut');
	const run = runBurette(bench.delivery.burette, volumeMl);
	return notCounted(bench, {
		...bench,
		delivery: { ...bench.delivery, burette: run.burette, hangingMl: 0 }
	});
}

/** Wiped off: what hung is gone. Over the vial that was titrant already counted by its travel. */
export function wipeTip(state: BenchState): BenchState {
	const { hangingMl } = state.delivery;
	return {
		...state,
		wipedMl: state.wipedMl + (state.overVial ? hangingMl : 0),
		delivery: { ...state.delivery, hangingMl: 0 }
	};
}

/** Touched to the wall of the vial: what hung goes in, a part of a drop. */
export function touchOff(state: BenchState): BenchState {
	const { hangingMl } = state.delivery;
	const dry = { ...overVial(state), delivery: { ...state.delivery, hangingMl: 0 } };
	return landNow(dry, hangingMl);
}

/** The tip comes over the vial: whatever hangs there now will go in without any travel. */
function overVial(state: BenchState): BenchState {
	if (state.overVial) return state;
	return {
		...state,
		overVial: true,
		hungAtStartMl: state.hungAtStartMl + state.delivery.hangingMl
	};
}

export function startFlow(state: BenchState): BenchState {
	if (state.flow) return state;
	return { ...overVial(state), flow: { startedAt: state.at, giveMl: null, pushedMl: 0 } };
}

export function stopFlow(state: BenchState): BenchState {
	return state.flow?.giveMl === null ? { ...state, flow: null } : state;
}

/** One press that gives a whole drop, half a drop that hangs, or a short stream. */
export function give(state: BenchState, size: 'drop' | 'half' | 'stream'): BenchState {
	if (state.flow) return state;
	const { delivery } = state;
	const airFirstMl =
		delivery.by === 'syringe'
			? delivery.syringe.tipAirMl
			: delivery.by === 'burette'
				? delivery.burette.jetAirMl
				: 0;
	const dropMl = nextDropMl(state);
	const toNextMl = Math.max(0, dropMl - delivery.hangingMl);
	const giveMl =
		size === 'drop'
			? // A press gives a drop at once, or as much travel as a drop when air is in the way.
				airFirstMl > 0
				? dropMl
				: toNextMl + 1e-9
			: size === 'half'
				? dropMl / 2
				: state.kit.delivery.dropMl * 8;
	return { ...overVial(state), flow: { startedAt: state.at, giveMl, pushedMl: 0 } };
}

export function tiltDropper(state: BenchState, degrees: number): BenchState {
	const bench = withGlass(state, 'dropper', 'dropper.tilt');
	return {
		...bench,
		delivery: { ...bench.delivery, tiltDegrees: Math.max(0, Math.min(90, degrees)) }
	};
}

export function squeezeDropper(state: BenchState, hard: boolean): BenchState {
	const bench = withGlass(state, 'dropper', 'dropper.squeeze');
	return { ...bench, delivery: { ...bench.delivery, squeezedHard: hard } };
}
