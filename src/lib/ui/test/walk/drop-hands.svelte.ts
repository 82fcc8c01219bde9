import type { Buzzer } from '../../state/buzzer';
import { everyBeat } from '../../state/ticker';
import type { TankRun } from '../run';
import { dropsOf } from './drops';

/** What hands say while drops are added. The beat is theirs alone; all else is in the log. */
export class DropHands {
	isBeating = $state(false);
	/** Of the beat. */
	seconds = $state(2);
	#stop: (() => void) | null = null;

	constructor(
		private readonly run: () => TankRun,
		private readonly buzzer: Pick<Buzzer, 'tick' | 'wake'>
	) {}

	readonly drops = $derived.by(() => dropsOf(this.run().titration));

	fell(drops: number): void {
		this.run().say({ type: 'titrant.fell', drops });
	}
	flash(): void {
		this.stopBeat();
		this.run().say({ type: 'colour.turned' });
	}
	faded(): void {
		this.run().say({ type: 'colour.faded' });
	}
	/** With the time it had stood, where there is something to count it from. */
	stays(): void {
		this.stopBeat();
		const { holdsFrom } = this.drops;
		const stoodMs = holdsFrom === null ? null : this.run().now() - holdsFrom;
		this.run().say({
			type: 'colour.stayed',
			...(stoodMs === null ? {} : { secondsSinceDrop: Math.max(0, Math.round(stoodMs / 100) / 10) })
		});
	}
	undo(): void {
		this.stopBeat();
		this.run().undo();
	}

	/** Starts the beat, or stops it: one press for both. */
	toggleBeat(): void {
		if (this.isBeating) this.stopBeat();
		else this.#startBeat();
	}
	setSeconds(seconds: number): void {
		this.seconds = seconds;
		if (!this.isBeating) return;
		this.stopBeat();
		this.#startBeat();
	}
	#startBeat(): void {
		this.isBeating = true;
		this.#stop = everyBeat(
			this.seconds * 1000,
			() => performance.now(),
			() => {
				this.fell(1);
				this.buzzer.tick();
			}
		);
	}
	stopBeat(): void {
		this.#stop?.();
		this.#stop = null;
		this.isBeating = false;
	}
}
