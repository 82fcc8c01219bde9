import { VIAL_PATH_CM, colourOfDyes, type LampSpectrum } from '../chemistry';
import { lineMl, PLUME_SHARE, tipFilling } from '../glassware';
import type { Kit } from '../kits';
import type { Lamp } from './action';
import { advance } from './advance';
import type { Seen, SeenBurette, SeenDropper, SeenSyringe, Srgb } from './seen';
import { titrantMolPerL, type BenchState } from './state';
import { kindOf } from './titration-kind';
import type { VialContents } from './vial-contents';

/** In dim light the eye has so much of the light, and sees colour accordingly badly. */
const DIM = 0.32;

const dimmed = (rgb: Srgb, lamp: Lamp): Srgb =>
	lamp === 'dim' ? { r: rgb.r * DIM, g: rgb.g * DIM, b: rgb.b * DIM } : rgb;

const spectrumOf = (lamp: Lamp): LampSpectrum => (lamp === 'dim' ? 'white' : lamp);

/** Colour of a vial under a lamp as the screen shows it. */
export function shownColour(
	kit: Kit,
	contents: VialContents,
	lamp: Lamp,
	unmixedMolPerKg = 0
): Srgb {
	const { rgb } = kindOf(kit).colourOf(contents, VIAL_PATH_CM, spectrumOf(lamp), unmixedMolPerKg);
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

/** A precipitate of 50 mmol/L, all the magnesium of seawater, lets a third of the colour through: judgement. */
const HAZE_MOL_PER_L = 0.045;
const hazeOf = (molPerL: number) => -Math.expm1(-molPerL / HAZE_MOL_PER_L);

function seenVial(state: BenchState): Seen['vial'] {
	const { kit, contents, lamp, unmixedMol } = state;
	const kind = kindOf(kit);
	// Against the titrant's own strength: how much is unmixed is a matter of volume, its colour of amount.
	const dropMol = (state.kit.delivery.dropMl / 1000) * titrantMolPerL(state) || 1;
	const blank = lampColour(lamp);
	const massKg = contents ? kind.massKgOf(contents) : 1;
	const haze = contents ? hazeOf(kind.hazeMolPerL(contents)) : 0;
	return {
		levelMl: contents ? kind.volumeMlOf(contents) : state.vialRest.volumeMl + state.inVialMl,
		wet: state.vialWet,
		bulk: contents ? shownColour(kit, contents, lamp, -unmixedMol / massKg) : blank,
		plume: contents
			? shownColour(kit, contents, lamp, (unmixedMol / massKg) * (1 / PLUME_SHARE - 1))
			: blank,
		plumeShare: Math.min(1, unmixedMol / dropMol),
		haze: 1 - (1 - state.truth.water.haze) * (1 - haze),
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
		comparison: now.comparison && shownColour(now.kit, now.comparison, now.lamp),
		sampler: { ...now.sampler, wet: now.samplerWet },
		delivery: seenDelivery(now),
		fallingDrop: drop ? Math.min(1, Math.max(0, 1 - (drop.landsAt - at) / 101)) : null,
		dropsFallen: now.dropsSinceFill,
		flowing: now.flow !== null
	};
}
