/** What of it is wanted. */
export type BuzzerWays = { sound: boolean; vibration: boolean };

const END_HZ = 880;
const TICK_HZ = 1400;

/**
 * Marks times: the end of a wait, the beat of the drops. It knows nothing but times, so that nothing
 * it does can hint at how near an end point is.
 *
 * @param ways asked each time, so that a switch works at once
 */
export class Buzzer {
	#context: AudioContext | null = null;

	constructor(private readonly ways: () => BuzzerWays) {}

	static get canVibrate(): boolean {
		return typeof navigator.vibrate === 'function';
	}
	static get canSound(): boolean {
		return typeof globalThis.AudioContext === 'function';
	}

	/** To be called from a press: before one, browsers keep silent. */
	wake(): void {
		if (!this.ways().sound || !Buzzer.canSound) return;
		this.#context ??= new AudioContext();
		if (this.#context.state === 'suspended') void this.#context.resume().catch(() => {});
	}

	/** A time is over. */
	end(): void {
		const { sound, vibration } = this.ways();
		if (sound) for (const after of [0, 0.35, 0.7]) this.#tone(END_HZ, 0.22, after, 0.2);
		if (vibration && Buzzer.canVibrate) navigator.vibrate([250, 120, 250, 120, 250]);
	}

	/** A beat. */
	tick(): void {
		const { sound, vibration } = this.ways();
		if (sound) this.#tone(TICK_HZ, 0.03, 0, 0.12);
		if (vibration && Buzzer.canVibrate) navigator.vibrate(30);
	}

	#tone(hz: number, seconds: number, after: number, loudness: number): void {
		const context = this.#context;
		if (!context) return;
		const from = context.currentTime + after;
		const oscillator = context.createOscillator();
		const gain = context.createGain();
		oscillator.frequency.value = hz;
		gain.gain.setValueAtTime(loudness, from);
		gain.gain.exponentialRampToValueAtTime(0.001, from + seconds);
		oscillator.connect(gain).connect(context.destination);
		oscillator.start(from);
		oscillator.stop(from + seconds);
	}

	stop(): void {
		void this.#context?.close().catch(() => {});
		this.#context = null;
	}
}
