import {
	addIndicator,
	addWater,
	dicAtAlkalinityAndPh,
	fillVessel,
	mediumOf,
	densityKgPerL,
	molPerKgFromDkh,
	type Vessel
} from '../chemistry';
import { chosenVolumeMl, type BenchState, type StrayWater } from './state';
import type { Water } from './world';

/** Film that stays behind when a vial or a sample syringe of this size is rinsed and shaken out, mL. */
const FILM_ML = { vial: 0.25, sampler: 0.15 };
/** Tap water of middling hardness, meq/L (invented: about 10 dKH). */
const TAP_MEQ_PER_L = 3.5;

/** A measured volume of a water. */
export function vesselOfWater(water: Water, volumeMl: number): Vessel {
	const { matrix, salinity, temperatureC } = water;
	const density = densityKgPerL(matrix === 'purified' ? 0 : salinity, temperatureC);
	const alkalinityMolPerKg = molPerKgFromDkh(water.alkalinityDkh, density);
	const medium = mediumOf(
		matrix,
		matrix === 'purified' ? 0 : salinity,
		temperatureC,
		Math.max(Math.abs(alkalinityMolPerKg), 1e-5)
	);
	const dicMolPerKg = Math.max(
		0,
		dicAtAlkalinityAndPh(alkalinityMolPerKg, water.ph, { medium, dyes: [] })
	);
	return fillVessel({ matrix, salinity, temperatureC, alkalinityMolPerKg, dicMolPerKg, volumeMl });
}

const noWater: StrayWater = { volumeMl: 0, meqPerL: 0 };

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

function intoVial(
	state: BenchState,
	markMl: number,
	trueMl: number,
	stray: StrayWater
): BenchState {
	if (trueMl <= 1e-9 && stray.volumeMl <= 1e-9) return state;
	const { water } = state.truth;
	// A nominal sample's grains come with a nominal sample's water.
	const nominalMl = state.kit.sample.volumes[0]?.volumeMl ?? markMl;
	let vessel = vesselOfWater(water, Math.max(trueMl, 1e-6));
	if (stray.volumeMl > 0)
		vessel = addWater(vessel, {
			volumeMl: stray.volumeMl,
			alkalinityMolPerL: stray.meqPerL / 1000,
			dicMolPerL: Math.max(0, Math.min(stray.meqPerL / 1000, 0.01))
		});
	return {
		...state,
		vessel,
		sampleVessel: vessel,
		sampleMarkMl: markMl,
		sampleTrueMl: trueMl,
		sampleStray: stray,
		grainsMol: (water.carbonateGrainsMg / 1000 / 100.0869) * (trueMl / nominalMl),
		vialWet: true
	};
}

/** The sample syringe emptied into the vial: its own film and the vial's rest go along. */
export function pourSample(state: BenchState): BenchState {
	const { sampler } = state;
	const factor = state.truth.ware?.sampleFactor ?? 1;
	const room = (sampler.volumeMl - sampler.airMl) * factor;
	// A wet sample syringe holds its film inside the measured volume.
	const filmMl = Math.min(state.samplerRest.volumeMl, room);
	const stray = mixed(state.vialRest, { ...state.samplerRest, volumeMl: filmMl });
	const poured = intoVial(state, sampler.volumeMl, room - filmMl, stray);
	return {
		...poured,
		sampler: { volumeMl: 0, airMl: 0 },
		samplerRest: noWater,
		vialRest: noWater
	};
}

/** The vial filled up to a level: what stood in it takes the sample's place. */
export function fillToLine(state: BenchState, levelMl: number): BenchState {
	const level = Math.max(0, Math.min(levelMl, chosenVolumeMl(state) * 1.3));
	const factor = state.truth.ware?.sampleFactor ?? 1;
	const trueMl = Math.max(0, level * factor - state.vialRest.volumeMl);
	return { ...intoVial(state, level, trueMl, state.vialRest), vialRest: noWater };
}

/** One drop or spoonful of a reagent. */
export function doseReagent(state: BenchState, reagentId: string): BenchState {
	const reagent = state.kit.reagents.find((candidate) => candidate.id === reagentId);
	if (!reagent)
		throw new RangeError(
			`reagentId must be one of ${state.kit.reagents.map((each) => each.id).join(', ')}; found ${reagentId}`
		);
	const doses = { ...state.doses, [reagentId]: (state.doses[reagentId] ?? 0) + 1 };
	const dyes = state.kit.contents?.dyes[reagentId] ?? [];
	const strength = state.truth.indicator?.strengthFactor ?? 1;
	const dose = {
		volumeMl: reagent.dose.unit === 'mL' ? reagent.dose.amount : (reagent.dose.unitMl ?? 0.03),
		dyes: dyes.map((dye) => ({ ...dye, molPerL: dye.molPerL * strength }))
	};
	const vessel = state.vessel && addIndicator(state.vessel, dose);
	return {
		...state,
		doses,
		vessel,
		sampleVessel:
			state.drops.length === 0
				? vessel
				: state.sampleVessel && addIndicator(state.sampleVessel, dose)
	};
}
