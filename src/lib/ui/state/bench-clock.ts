/**
 * Time on the practice bench, ms since the run began. It stands still while the page is hidden or
 * closed: nobody's colour fades because a telephone rang.
 */
export class BenchClock {
	#base: number;
	#since: number | null = null;

	/**
	 * @param startAt time of the last thing that happened, ms
	 * @param wall a clock that never runs backwards, ms
	 */
	constructor(
		startAt: number,
		private readonly wall: () => number
	) {
		this.#base = startAt;
	}

	get isRunning(): boolean {
		return this.#since !== null;
	}

	/** Whole milliseconds. */
	now(): number {
		return Math.floor(this.#base + (this.#since === null ? 0 : this.wall() - this.#since));
	}

	resume(): void {
		if (this.#since === null) this.#since = this.wall();
	}

	pause(): void {
		this.#base = this.now();
		this.#since = null;
	}
}
