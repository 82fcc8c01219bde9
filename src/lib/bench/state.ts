import type { Burette, Syringe } from '../glassware';
import { drySyringe, dryBurette } from '../glassware';
import type { Kit } from '../kits';
import type { Lamp } from './action';
import { uniformAt } from './noise';
import { kindOf } from './titration-kind';
import type { VialContents } from './vial-contents';
import type { Truth } from './world';

/** Water that is not the sample: its volume and its alkalinity. */
export type StrayWater = { volumeMl: number; meqPerL: number };

/** How the sample came about, so that each part of it can be asked what it did. */
export type MeasuredSample = {
	/** What the mark said, mL; 0 before anything was measured. */
	markMl: number;
	/** Air inside the measured volume, mL. */
	airMl: number;
	/** What the ware really gives over what is printed on it. */
	wareFactor: number;
	/** Other water inside the measured volume, and other water added to it. */
	displacing: StrayWater;
	adding: StrayWater;
};

export type DeliveryState =
	| { by: 'syringe'; syringe: Syringe; hangingMl: number }
	| { by: 'dropper'; tiltDegrees: number; squeezedHard: boolean; hangingMl: number }
	| { by: 'burette'; burette: Burette; hangingMl: number };

/** A hand on the plunger, the bottle or the tap. */
export type Flow = {
	startedAt: number;
	/** For a single press that gives a set amount: it ends by itself when so much has left the tip. */
	giveMl: number | null;
	/** Pushed since it started, mL; kept so that drops that fell need not be found again. */
	pushedMl: number;
};

/** Where each drop went and when, for the curve and the count. */
export type DropRecord = { at: number; volumeMl: number; intoPlume: boolean };

/** One bench during one titration. Plain data; nothing in it is changed in place. */
export type BenchState = {
	kit: Kit;
	truth: Truth;
	seed: number;
	/** Which titration of the run: part of the address of chance. */
	titration: number;
	/** ms since the run began; everything below is as of this moment. */
	at: number;
	/**
	 * The bench as the last deed or drop left it. What follows is worked out from there and never from
	 * a moment in between, so it is the same to the last digit however often the time was asked.
	 */
	from: BenchState | null;
	volumeId: string;
	vialRest: StrayWater;
	vialWet: boolean;
	samplerRest: StrayWater;
	samplerWet: boolean;
	sampler: { volumeMl: number; airMl: number };
	sample: MeasuredSample;
	contents: VialContents | null;
	/** What the vial held before any titrant, for the curve. */
	sampleContents: VialContents | null;
	/** Titrant that has not mixed in yet, mol. */
	unmixedMol: number;
	/** Calcium carbonate grains left, mol. */
	grainsMol: number;
	doses: Record<string, number>;
	delivery: DeliveryState;
	flow: Flow | null;
	/** Drops on their way down. */
	falling: { landsAt: number; volumeMl: number }[];
	swirlStartedAt: number | null;
	lastSwirlEndedAt: number | null;
	lamp: Lamp;
	eyeDegrees: number;
	comparison: VialContents | null;
	/** Seal, and air below it, as they stood before the first drop, mL. */
	filledTo: { sealMl: number; cushionMl: number } | null;
	/** How far the seal was drawn back since the first drop, to fill it again, mL. */
	refilledMl: number;
	/** How often that was done. */
	refills: number;
	/** How far past the full mark those fillings ended, mL in all; below 0 for short of it. */
	refilledPastMl: number;
	drops: DropRecord[];
	/** Index of drops for the address of chance; never goes back. */
	dropIndex: number;
	/** Drops seen falling since titrant was last drawn. */
	dropsSinceFill: number;
	/** All titrant that has reached the vial, mL. */
	inVialMl: number;
	/** Of it, what came by itself from a loose tip, and what hung at the tip at the start, mL. */
	leakedMl: number;
	hungAtStartMl: number;
	/** Titrant that hung at the tip over the vial and was wiped off, mL. */
	wipedMl: number;
	/** Air that left the end of the tip when drops were wanted, mL of travel without liquid. */
	airPushedMl: number;
	/** The tip has been over the vial since it was filled. */
	overVial: boolean;
	/** Pushing that a sticking seal has not yet answered with travel, mL. */
	stuckMl: number;
	/** Seconds of swirling since the last drop fell, and in all since the first. */
	swirledSinceDropS: number;
	swirledS: number;
	looks: number;
};

export const noWater: StrayWater = { volumeMl: 0, meqPerL: 0 };

/** Dead volume of the nozzle alone, mL, below what ISO 7886-1 allows for a 1 mL syringe (0.07). */
const NOZZLE_ML = 0.04;
/** The seal's two rims stand this far apart on a 1 mL barrel, mL; common practice, no source. */
export const SEAL_RIM_ML = 0.05;
const JET_ML = 0.2;

function deliveryOf(kit: Kit, truth: Truth): DeliveryState {
	const { delivery } = kit;
	if (delivery.by === 'dropper')
		return { by: 'dropper', tiltDegrees: 0, squeezedHard: false, hangingMl: 0 };
	if (delivery.by === 'burette')
		return { by: 'burette', burette: dryBurette(delivery.capacityMl, JET_ML), hangingMl: 0 };
	const tipVolumeMl = truth.ware?.tipVolumeMl ?? delivery.tipVolumeMl ?? 0.17;
	return {
		by: 'syringe',
		syringe: drySyringe({
			barrelEndMl: delivery.barrelEndMl,
			tipVolumeMl,
			nozzleMl: Math.min(NOZZLE_ML, tipVolumeMl),
			sealRimMl: SEAL_RIM_ML
		}),
		hangingMl: 0
	};
}

/**
 * A bench with everything clean, empty and put down, at time 0 or `at`.
 *
 * @param titration which titration of the run, from 0
 * @throws RangeError naming `kit` when it does not say what is in its bottles
 */
export function createBench(input: {
	kit: Kit;
	truth: Truth;
	seed: number;
	titration?: number;
	at?: number;
}): BenchState {
	const { kit, truth, seed } = input;
	kindOf(kit);
	const left = truth.ware;
	return {
		kit,
		truth,
		seed,
		titration: input.titration ?? 0,
		at: input.at ?? 0,
		from: null,
		volumeId: kit.sample.volumes[0]?.id ?? '',
		vialRest: { volumeMl: left?.vialLeftMl ?? 0, meqPerL: left?.vialLeftMeqPerL ?? 0 },
		vialWet: (left?.vialLeftMl ?? 0) > 0,
		samplerRest: { volumeMl: left?.samplerLeftMl ?? 0, meqPerL: 0 },
		samplerWet: (left?.samplerLeftMl ?? 0) > 0,
		sampler: { volumeMl: 0, airMl: 0 },
		sample: {
			markMl: 0,
			airMl: 0,
			wareFactor: left?.sampleFactor ?? 1,
			displacing: noWater,
			adding: noWater
		},
		contents: null,
		sampleContents: null,
		unmixedMol: 0,
		grainsMol: 0,
		doses: {},
		delivery: deliveryOf(kit, truth),
		flow: null,
		falling: [],
		swirlStartedAt: null,
		lastSwirlEndedAt: null,
		lamp: truth.light,
		// A standing person looks down on a bench: nobody's eye is level by itself.
		eyeDegrees: 12 + 10 * uniformAt(seed, input.titration ?? 0, 'eye'),
		comparison: null,
		filledTo: null,
		refilledMl: 0,
		refills: 0,
		refilledPastMl: 0,
		drops: [],
		dropIndex: 0,
		dropsSinceFill: 0,
		inVialMl: 0,
		leakedMl: 0,
		hungAtStartMl: 0,
		wipedMl: 0,
		airPushedMl: 0,
		overVial: false,
		stuckMl: 0,
		swirledSinceDropS: 0,
		swirledS: 0,
		looks: 0
	};
}

/** Volume that the chosen sample should have, mL. */
export function chosenVolumeMl(state: BenchState): number {
	return (
		state.kit.sample.volumes.find((volume) => volume.id === state.volumeId)?.volumeMl ??
		state.kit.sample.volumes[0]?.volumeMl ??
		0
	);
}

/** What is really in the titrant bottle, mol per litre. */
export function titrantMolPerL(state: BenchState): number {
	return (state.kit.contents?.titrant.molPerL ?? 0) * (state.truth.titrant?.strengthFactor ?? 1);
}
