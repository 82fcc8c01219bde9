import { colourOf, colourOfDyes, volumeMlOf, type LampSpectrum, type Vessel } from '../chemistry';
import { lineMl, PLUME_SHARE, tipFilling } from '../glassware';
import type { Lamp } from './action';
import { advance } from './advance';
import type { Seen, SeenBurette, SeenDropper, SeenSyringe, Srgb } from './seen';
import { titrantMolPerL, type BenchState } from './state';

/** Mean way of the light through a kit's vial, cm. */
export const VIAL_PATH_CM = 2;
/** In dim light the eye has so much of the light, and sees colour accordingly badly. */
const DIM = 0.32;

const dimmed = (rgb: Srgb, lamp: Lamp): Srgb =>
	lamp === 'dim' ? { r: rgb.r * DIM, g: rgb.g * DIM, b: rgb.b * DIM } : rgb;

const spectrumOf = (lamp: Lamp): LampSpectrum => (lamp === 'dim' ? 'white' : lamp);

/** Colour of a vessel under a lamp as the screen shows it. */
export function shownColour(vessel: Vessel, lamp: Lamp, extraAcidMolPerKg = 0): Srgb {
	const { rgb } = colourOf(vessel, VIAL_PATH_CM, spectrumOf(lamp), { extraAcidMolPerKg });
	return dimmed(rgb, lamp);
}

const lampColours = new Map<Lamp, Srgb>();
/** An empty vial: the lamp itself. */
function lampColour(lamp: Lamp): Srgb {
	let colour = lampColours.get(lamp);
	if (!colour) {
		colour = dimmed(colourOfDyes([], VIAL_PATH_CM, spectrumOf(lamp)).rgb, lamp);
		lampColours.set(lamp, colour);
	}
	return colour;
}

function seenVial(state: BenchState): Seen['vial'] {
	const { vessel, lamp, unmixedMol } = state;
	// Against the acid's own strength: how much is unmixed is a matter of volume, its colour of acid.
	const dropMol = (state.kit.delivery.dropMl / 1000) * titrantMolPerL(state) || 1;
	const blank = lampColour(lamp);
	const massKg = vessel?.massKg ?? 1;
	return {
		levelMl: vessel ? volumeMlOf(vessel) : state.vialRest.volumeMl + state.inVialMl,
		wet: state.vialWet,
		bulk: vessel ? shownColour(vessel, lamp, -unmixedMol / massKg) : blank,
		plume: vessel
			? shownColour(vessel, lamp, (unmixedMol / massKg) * (1 / PLUME_SHARE - 1))
			: blank,
		plumeShare: Math.min(1, unmixedMol / dropMol),
		haze: state.truth.water.haze,
		grains: state.grainsMol > 2e-8,
		swirling: state.swirlStartedAt !== null,
		swirlMs: state.swirlStartedAt === null ? 0 : state.at - state.swirlStartedAt
	};
}

function seenDelivery({ delivery }: BenchState): SeenSyringe | SeenDropper | SeenBurette {
	const { hangingMl } = delivery;
	if (delivery.by === 'dropper') {
		const { tiltDegrees, squeezedHard } = delivery;
		return { by: 'dropper', tiltDegrees, squeezedHard, hangingMl };
	}
	if (delivery.by === 'burette') {
		const { levelMl, jetAirMl } = delivery.burette;
		return { by: 'burette', levelMl, jetAirMl, hangingMl };
	}
	const { syringe } = delivery;
	return {
		by: 'syringe',
		tip: syringe.tip === 'off' ? 'off' : 'fitted',
		sealMl: syringe.sealMl,
		lineMl: lineMl(syringe),
		cushionMl: syringe.cushionMl,
		tipLiquid: tipFilling(syringe),
		tipAirMl: syringe.tipAirMl,
		hangingMl,
		dripping: syringe.tip === 'loose' && hangingMl > 0
	};
}

/**
 * What the eye sees at a moment not before the bench's own time, whether or not anything is under
 * way. Looking changes nothing.
 */
export function observe(state: BenchState, at: number): Seen {
	const now = advance(state, at);
	const drop = now.falling[0];
	return {
		at,
		lamp: now.lamp,
		light: lampColour(now.lamp),
		eyeDegrees: now.eyeDegrees,
		vial: seenVial(now),
		comparison: now.comparison && shownColour(now.comparison, now.lamp),
		sampler: { ...now.sampler, wet: now.samplerWet },
		delivery: seenDelivery(now),
		fallingDrop: drop ? Math.min(1, Math.max(0, 1 - (drop.landsAt - at) / 101)) : null,
		dropsFallen: now.dropsSinceFill,
		flowing: now.flow !== null
	};
}
