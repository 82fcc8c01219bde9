import { colourPathOf, type Lamp, type Seen, type Srgb } from '$lib/bench';
import type { Kit } from '$lib/kits';

/** What is heard at a moment: a tone for the liquid, a grace note for the streak. */
export type Heard = {
	toneHz: number;
	graceHz: number;
	/** 0 to 1: dies away as the streak does. */
	grace: number;
	/** Tone of the comparison vial; null when there is none. */
	comparisonHz: number | null;
};

const BASE_HZ = 220;
/** Each unit of colour difference (CIEDE2000) along the colour's way raises the tone by so many cents. */
const CENTS_PER_UNIT = 12;

const pitch = (distance: number) => BASE_HZ * 2 ** ((distance * CENTS_PER_UNIT) / 1200);

/**
 * The colour as tones, for one kit. They follow the way that the kit's colour takes in ordinary water
 * and nothing else: no tone marks an end, and light that the eye would not see makes no sound.
 */
export function earFor(kit: Kit): (seen: Seen) => Heard {
	const ways = new Map<Lamp, (colour: Srgb) => number>();
	return (seen) => {
		let along = ways.get(seen.lamp);
		if (!along) ways.set(seen.lamp, (along = colourPathOf(kit, seen.lamp)));
		const { bulk, plume, plumeShare } = seen.vial;
		return {
			toneHz: pitch(along(bulk)),
			graceHz: pitch(along(plume)),
			grace: plumeShare < 0.05 ? 0 : plumeShare,
			comparisonHz: seen.comparison && pitch(along(seen.comparison))
		};
	};
}

/** The tones made audible. Nothing sounds before the person has asked for it. */
export class Ear {
	#context: AudioContext | null = null;
	#tone: { oscillator: OscillatorNode; gain: GainNode } | null = null;
	#grace: { oscillator: OscillatorNode; gain: GainNode } | null = null;

	/** Must be called from a press, or the browser keeps silent. */
	start(): void {
		if (this.#context) return;
		const Context = globalThis.AudioContext;
		if (!Context) return;
		this.#context = new Context();
		this.#tone = this.#voice('sine');
		this.#grace = this.#voice('triangle');
	}

	#voice(type: OscillatorType) {
		const context = this.#context;
		if (!context) return null;
		const oscillator = context.createOscillator();
		const gain = context.createGain();
		oscillator.type = type;
		gain.gain.value = 0;
		oscillator.connect(gain).connect(context.destination);
		oscillator.start();
		return { oscillator, gain };
	}

	/** Follows what is to be heard; called in every frame. */
	follow(heard: Heard): void {
		const context = this.#context;
		if (!context || !this.#tone || !this.#grace) return;
		const at = context.currentTime;
		this.#tone.oscillator.frequency.setTargetAtTime(heard.toneHz, at, 0.02);
		this.#tone.gain.gain.setTargetAtTime(0.05, at, 0.05);
		this.#grace.oscillator.frequency.setTargetAtTime(heard.graceHz, at, 0.02);
		this.#grace.gain.gain.setTargetAtTime(0.05 * heard.grace, at, 0.03);
	}

	/** A drop meets the surface. */
	tick(): void {
		this.#short(1400, 0.02, 0.08);
	}

	/** The comparison vial's own tone, for a moment. */
	compare(hz: number): void {
		this.#short(hz, 0.5, 0.06);
	}

	#short(hz: number, seconds: number, loudness: number): void {
		const context = this.#context;
		if (!context) return;
		const oscillator = context.createOscillator();
		const gain = context.createGain();
		oscillator.frequency.value = hz;
		gain.gain.setValueAtTime(loudness, context.currentTime);
		gain.gain.exponentialRampToValueAtTime(0.001, context.currentTime + seconds);
		oscillator.connect(gain).connect(context.destination);
		oscillator.start();
		oscillator.stop(context.currentTime + seconds);
	}

	stop(): void {
		void this.#context?.close();
		this.#context = null;
		this.#tone = null;
		this.#grace = null;
	}
}
