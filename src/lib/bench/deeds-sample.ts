import type { OtherWater } from '../chemistry';
import type { Kit } from '../kits';
import { bottlesOf, reagentOf, withDoses } from './dosing';
import {
	chosenVolumeMl,
	noWater,
	type BenchState,
	type MeasuredSample,
	type StrayWater
} from './state';
import { kindOf } from './titration-kind';
import type { VialContents } from './vial-contents';
import type { Water } from './world';

/** Film that stays behind when a vial or a sample syringe of this size is rinsed and shaken out, mL. */
const FILM_ML = { vial: 0.25, sampler: 0.15 };
/** Tap water of middling hardness, meq/L (invented: about 10 dKH). */
const TAP_MEQ_PER_L = 3.5;

function mixed(a: StrayWater, b: StrayWater): StrayWater {
	const volumeMl = a.volumeMl + b.volumeMl;
	return volumeMl === 0
		? noWater
		: { volumeMl, meqPerL: (a.volumeMl * a.meqPerL + b.volumeMl * b.meqPerL) / volumeMl };
}

/** Rinsed and shaken out: the old rest is gone but for a hundredth, a film of the new water stays. */
export function rinse(
	state: BenchState,
	ware: 'vial' | 'sampler',
	water: 'sample' | 'purified' | 'tap'
): BenchState {
	const old = ware === 'vial' ? state.vialRest : state.samplerRest;
	const trace = { ...old, volumeMl: old.volumeMl / 100 };
	const film =
		water === 'sample'
			? noWater
			: { volumeMl: FILM_ML[ware], meqPerL: water === 'tap' ? TAP_MEQ_PER_L : 0 };
	const rest = mixed(trace, film);
	return ware === 'vial'
		? { ...state, vialRest: rest, vialWet: true }
		: { ...state, samplerRest: rest, samplerWet: true };
}

/** The sample syringe's seal drawn to a mark; in air, air comes in instead. */
export function drawSample(state: BenchState, toMl: number, nose: 'under' | 'inAir'): BenchState {
	const volumeMl = Math.max(0, Math.min(toMl, chosenVolumeMl(state) * 1.3));
	const { sampler } = state;
	const taken = volumeMl - sampler.volumeMl;
	// Pushed back: air at the nose leaves first.
	const airMl =
		taken >= 0
			? sampler.airMl + (nose === 'inAir' ? taken : 0)
			: Math.max(0, sampler.airMl + taken);
	return { ...state, sampler: { volumeMl, airMl } };
}

/** Tank water that a measured sample really holds, mL. */
export function sampleTrueMl(sample: MeasuredSample): number {
	return Math.max(
		0,
		(sample.markMl - sample.airMl) * sample.wareFactor - sample.displacing.volumeMl
	);
}

/** Equivalents of alkalinity from which water is nothing of the tap: something stood in the ware, meq/L. */
export const STRANGE_MEQ_PER_L = 20;

/**
 * Stray water like tap water holds as much carbon as alkalinity, and hardness of as many equivalents, four
 * parts calcium to one magnesium (invented); a strong base none.
 */
function asOtherWater({ volumeMl, meqPerL }: StrayWater): OtherWater {
	const molPerL = meqPerL / 1000;
	const hardMolPerL = meqPerL > 0 && meqPerL < STRANGE_MEQ_PER_L ? molPerL : 0;
	return {
		volumeMl,
		alkalinityMolPerL: molPerL,
		dicMolPerL: hardMolPerL,
		calciumMolPerL: 0.4 * hardMolPerL,
		magnesiumMolPerL: 0.1 * hardMolPerL
	};
}

/** What is in the vial after measuring: tank water and whatever went along. */
export function contentsOfSample(kit: Kit, water: Water, sample: MeasuredSample): VialContents {
	const kind = kindOf(kit);
	return [sample.displacing, sample.adding]
		.filter(({ volumeMl }) => volumeMl > 0)
		.reduce(
			(contents, stray) => kind.addWater(contents, asOtherWater(stray)),
			kind.fill(water, Math.max(sampleTrueMl(sample), 1e-6))
		);
}

function intoVial(state: BenchState, sample: MeasuredSample): BenchState {
	if (sample.markMl <= 0) return state;
	const { water } = state.truth;
	// A nominal sample's grains come with a nominal sample's water.
	const nominalMl = state.kit.sample.volumes[0]?.volumeMl ?? sample.markMl;
	const contents = contentsOfSample(state.kit, water, sample);
	return {
		...state,
		contents,
		sampleContents: contents,
		sample,
		grainsMol: (water.carbonateGrainsMg / 1000 / 100.0869) * (sampleTrueMl(sample) / nominalMl),
		vialWet: true,
		vialRest: noWater
	};
}

/** The sample syringe emptied into the vial: its film stood inside the measure, the vial's rest adds to it. */
export function pourSample(state: BenchState): BenchState {
	const { sampler } = state;
	const poured = intoVial(state, {
		...state.sample,
		markMl: sampler.volumeMl,
		airMl: sampler.airMl,
		displacing: state.samplerRest,
		adding: state.vialRest
	});
	return { ...poured, sampler: { volumeMl: 0, airMl: 0 }, samplerRest: noWater };
}

/** The vial filled up to a level: what stood in it takes the sample's place. */
export function fillToLine(state: BenchState, levelMl: number): BenchState {
	return intoVial(state, {
		...state.sample,
		markMl: Math.max(0, Math.min(levelMl, chosenVolumeMl(state) * 1.3)),
		airMl: 0,
		displacing: state.vialRest,
		adding: noWater
	});
}

/** One drop or spoonful of a reagent. */
export function doseReagent(state: BenchState, reagentId: string): BenchState {
	const { kit, truth, contents, sampleContents } = state;
	const { id } = reagentOf(kit, reagentId);
	const doses = { ...state.doses, [id]: (state.doses[id] ?? 0) + 1 };
	const dosed = (each: VialContents) => withDoses(kit, each, id, 1, bottlesOf(truth));
	const after = contents && dosed(contents);
	return {
		...state,
		doses,
		contents: after,
		sampleContents: state.drops.length === 0 ? after : sampleContents && dosed(sampleContents)
	};
}
