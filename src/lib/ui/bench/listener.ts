import type { Seen } from '$lib/bench';
import type { Kit } from '$lib/kits';
import { Ear, earFor } from './ear';

/** Listens at one bench: the tones follow what is seen there, when somebody wants them. */
export class Listener {
	readonly #ear = new Ear();
	#kit: Kit | null = null;
	#hear: ReturnType<typeof earFor> | null = null;
	#dropsHeard = 0;

	constructor(private readonly isWanted: () => boolean) {}

	/** From a press: a browser lets nothing sound that was not asked for on this very visit. */
	wake(): void {
		if (this.isWanted()) this.#ear.start();
	}

	/** Follows one moment. */
	follow(kit: Kit, seen: Seen): void {
		if (this.isWanted()) {
			this.#ear.follow(this.#hearingFor(kit)(seen));
			if (seen.dropsFallen > this.#dropsHeard) this.#ear.tick();
		}
		this.#dropsHeard = seen.dropsFallen;
	}

	/** The comparison vial's tone, for a moment. */
	compare(kit: Kit, seen: Seen): void {
		const hz = this.isWanted() ? this.#hearingFor(kit)(seen).comparisonHz : null;
		if (hz !== null) this.#ear.compare(hz);
	}

	#hearingFor(kit: Kit) {
		if (!this.#hear || this.#kit !== kit) {
			this.#kit = kit;
			this.#hear = earFor(kit);
		}
		return this.#hear;
	}

	stop(): void {
		this.#ear.stop();
	}
}
