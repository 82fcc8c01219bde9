import {
	addAcid,
	addAlkalinity,
	alkalinityAt,
	compositionOf,
	loseCarbonDioxide
} from '../chemistry';
import { carbonDioxideLoss, unmixedShare } from '../glassware';
import { titrantMolPerL, type BenchState } from './state';

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
export function settle(state: BenchState, at: number): BenchState {
	const seconds = (at - state.at) / 1000;
	if (seconds <= 0) return { ...state, at };
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
export function land(state: BenchState, volumeMl: number): BenchState {
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

/** Less than this is a trace that no eye finds at a tip, mL. */
const TRACE_ML = 1e-6;

/** Whatever is at the tip goes in, or is put in, at once. */
export function landNow(state: BenchState, volumeMl: number): BenchState {
	return volumeMl > TRACE_ML ? land(state, volumeMl) : state;
}
