import { carbonDioxideLoss, unmixedShare } from '../glassware';
import { titrantMolPerL, type BenchState } from './state';
import { titrantPortion } from './titrant-portion';
import { kindOf } from './titration-kind';

/** What happens in the vial by itself: mixing, CO2 leaving, grains dissolving, a precipitate forming. */
export function settle(state: BenchState, at: number): BenchState {
	const seconds = (at - state.at) / 1000;
	if (seconds <= 0) return { ...state, at };
	const isSwirled = state.swirlStartedAt !== null;
	const passed = state.contents
		? kindOf(state.kit).pass(state.contents, {
				seconds,
				isSwirled,
				carbonDioxideShare: carbonDioxideLoss(seconds, isSwirled),
				grainsMol: state.grainsMol
			})
		: { contents: null, grainsMol: state.grainsMol };
	return {
		...state,
		...passed,
		at,
		unmixedMol: state.unmixedMol * unmixedShare(seconds, isSwirled),
		swirledS: state.swirledS + (isSwirled && state.drops.length > 0 ? seconds : 0),
		swirledSinceDropS: state.swirledSinceDropS + (isSwirled ? seconds : 0)
	};
}

/** Below this share of a drop's titrant, nothing unmixed is to be seen. */
const VISIBLE_PLUME_DROPS = 0.15;

/** A drop meets the surface. */
export function land(state: BenchState, volumeMl: number): BenchState {
	const molPerL = titrantMolPerL(state);
	const titrantMol = (volumeMl / 1000) * molPerL;
	const dropMol = (state.kit.delivery.dropMl / 1000) * molPerL;
	return {
		...state,
		contents:
			state.contents &&
			kindOf(state.kit).addTitrant(state.contents, titrantPortion(state.kit, volumeMl, molPerL)),
		unmixedMol: state.unmixedMol + titrantMol,
		inVialMl: state.inVialMl + volumeMl,
		swirledSinceDropS: 0,
		drops: [
			...state.drops,
			{ at: state.at, volumeMl, intoPlume: state.unmixedMol > VISIBLE_PLUME_DROPS * dropMol }
		]
	};
}

/** Less than this is a trace that no eye finds at a tip, mL. */
const TRACE_ML = 1e-6;

/** Whatever is at the tip goes in, or is put in, at once. */
export function landNow(state: BenchState, volumeMl: number): BenchState {
	return volumeMl > TRACE_ML ? land(state, volumeMl) : state;
}
