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
import {
	chosenVolumeMl,
	noWater,
	type BenchState,
	type MeasuredSample,
	type StrayWater
} from './state';
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

/** What is in the vial after measuring: tank water and whatever went along. */
export function vesselOfSample(water: Water, sample: MeasuredSample): Vessel {
	let vessel = vesselOfWater(water, Math.max(sampleTrueMl(sample), 1e-6));
	for (const stray of [sample.displacing, sample.adding])
		if (stray.volumeMl > 0)
			vessel = addWater(vessel, {
				volumeMl: stray.volumeMl,
				alkalinityMolPerL: stray.meqPerL / 1000,
				// Water like tap water holds about as much carbon as alkalinity; a strong base none.
				dicMolPerL: stray.meqPerL > 0 && stray.meqPerL < 20 ? stray.meqPerL / 1000 : 0
			});
	return vessel;
}

function intoVial(state: BenchState, sample: MeasuredSample): BenchState {
	if (sample.markMl <= 0) return state;
	const { water } = state.truth;
	// A nominal sample's grains come with a nominal sample's water.
	const nominalMl = state.kit.sample.volumes[0]?.volumeMl ?? sample.markMl;
	const vessel = vesselOfSample(water, sample);
	return {
		...state,
		vessel,
		sampleVessel: vessel,
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
