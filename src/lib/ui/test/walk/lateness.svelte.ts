import type { TankRun } from '../run';
import type { Drops } from './drops';
import { roundWords } from './time-words';

/** A vial that nobody has looked at for longer than this is asked about, ms. */
export const LATE_MS = 5 * 60_000;

/** Notices that somebody comes back late to a vial with drops in it. */
export class Lateness {
	/** When somebody last came to the page, ms. */
	at = $state(0);
	#found: { words: string; lastSaidAt: number } | null = $state.raw(null);
	/** The pause that was answered by going on: it is not asked about again while it lasts. */
	#answered: number | null = null;
	/** Since when nobody looks, ms. */
	#hiddenAt: number | null = null;

	constructor(
		private readonly run: () => TankRun,
		private readonly drops: () => Drops
	) {}

	/** The question in words; null when there is none, or it was answered by going on. */
	get words(): string | null {
		return this.#found?.lastSaidAt === this.drops().lastSaidAt ? this.#found.words : null;
	}
	answer(): void {
		this.#answered = this.#found?.lastSaidAt ?? null;
		this.#found = null;
	}

	/** The page has come into sight, or gone out of it. */
	look(isVisible: boolean): void {
		const now = this.run().now();
		if (!isVisible) {
			this.#hiddenAt ??= now;
			return;
		}
		this.at = now;
		const goneMs = now - Math.max(this.drops().lastSaidAt, this.#hiddenAt ?? 0);
		this.#hiddenAt = null;
		this.#ask(goneMs);
	}
	/** For hands that say each drop: so long without one, and the vial stood, page in sight or not. */
	stand(): void {
		const { lastDropAt, lastSaidAt } = this.drops();
		if (lastDropAt !== null) this.#ask(this.run().now() - lastSaidAt);
	}

	#ask(goneMs: number): void {
		const now = this.run().now();
		const { lastSaidAt, lastDropAt, phase } = this.drops();
		if (this.#answered === lastSaidAt) return;
		if (!this.run().titration.walk.matches('titrating') || phase === 'holding') return;
		if (goneMs < LATE_MS) return;
		const words =
			lastDropAt === null
				? `About ${roundWords(now - lastSaidAt)} at this step.`
				: `About ${roundWords(now - lastDropAt)} since the last drop.`;
		this.#found = { words, lastSaidAt };
	}
}
