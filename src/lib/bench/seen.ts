import type { Rgb } from '../chemistry';
import type { Lamp } from './action';

/** Display colour, each channel 0 to 1, gamma-encoded sRGB. */
export type Srgb = Rgb;

/**
 * What the eye can see at one moment, and nothing that it cannot: two hidden truths that look alike
 * give equal values here. The screen draws from this alone.
 */
export type Seen = {
	/** ms since the run began. */
	at: number;
	lamp: Lamp;
	/** The light itself, beside the vial. */
	light: Srgb;
	/** Eye off the level of the mark, degrees. */
	eyeDegrees: number;
	vial: {
		/** Level of the liquid, as mL in the vial. */
		levelMl: number;
		/** A film or rest of water from before, visible as wetness. */
		wet: boolean;
		bulk: Srgb;
		/** Colour where the last drop fell, and how much of it is left unmixed, 0 to 1. */
		plume: Srgb;
		plumeShare: number;
		haze: number;
		/** A grain or snow lies at the bottom. */
		grains: boolean;
		swirling: boolean;
		/** ms since this swirl began; the surface lags the vial. */
		swirlMs: number;
	};
	/** The comparison vial beside it, when one was made. */
	comparison: Srgb | null;
	sampler: { volumeMl: number; airMl: number; wet: boolean };
	delivery: SeenSyringe | SeenDropper | SeenBurette;
	/** A drop in free fall: 0 leaves the tip, 1 meets the surface. */
	fallingDrop: number | null;
	/** How many drops a watcher could have counted since titrant was last drawn. */
	dropsFallen: number;
	flowing: boolean;
};

export type SeenSyringe = {
	by: 'syringe';
	tip: 'off' | 'fitted';
	/** Leading edge of the seal, mL from the nozzle end of the barrel. */
	sealMl: number;
	/** Liquid line, mL from the nozzle end; null when no liquid stands in the barrel. */
	lineMl: number | null;
	/** The air between line and seal, mL. */
	cushionMl: number;
	/** How much of the tip holds liquid, 0 to 1: above the air at its end, below the air it came with. */
	tipLiquid: number;
	/** Air at the lower end of the tip that will leave first, mL. */
	tipAirMl: number;
	/** Liquid hanging at the tip, mL. */
	hangingMl: number;
	/** Drips without a push. */
	dripping: boolean;
};
export type SeenDropper = {
	by: 'dropper';
	tiltDegrees: number;
	squeezedHard: boolean;
	hangingMl: number;
};
export type SeenBurette = {
	by: 'burette';
	/** Numeral at the bottom of the meniscus, mL; null before filling. */
	levelMl: number | null;
	jetAirMl: number;
	hangingMl: number;
};
