import { stepOf, type TankTitration } from '$lib/procedure';
import type { TankRun } from '../run';
import { deedOf, isPlain, type Deed, type PlainStep } from './deeds';

const chosenIn = ({ events }: TankTitration): string | null => {
	const chosen = events.findLast(({ event }) => event.type === 'sample.chosen')?.event;
	return chosen?.type === 'sample.chosen' ? chosen.volumeId : null;
};

/** What is set at a plain step before its button is pressed, and the press itself. */
export class PlainHands {
	/** Set by hand; null while nobody has. */
	#volumeId: string | null = $state(null);
	/** Another amount than the leaflet's; null while it is that, not a number while it cannot be read. */
	amount: number | null = $state(null);
	/** The time of a wait has run out. */
	isTimeOver = $state(false);

	constructor(private readonly run: () => TankRun) {}

	/** A new step finds nothing set. */
	begin(): void {
		this.#volumeId = null;
		this.amount = null;
	}

	get step(): PlainStep | null {
		const step = stepOf(this.run().titration.walk.context);
		return step && isPlain(step) ? step : null;
	}
	/** As chosen now, or earlier in this test, or the leaflet's first. */
	get volumeId(): string {
		const { state, kit } = this.run();
		const earlier = [...state.titrations].reverse().map(chosenIn);
		return this.#volumeId ?? earlier.find((id) => id !== null) ?? kit.sample.volumes[0]?.id ?? '';
	}
	set volumeId(volumeId: string) {
		this.#volumeId = volumeId;
	}
	/** Chooses the sample next in size, where the leaflet has one. */
	takeOther(way: 'larger' | 'smaller'): void {
		const nowMl = this.sampleVolumeMl;
		const [other] = this.run()
			.kit.sample.volumes.filter(({ volumeMl }) =>
				way === 'larger' ? volumeMl > nowMl : volumeMl < nowMl
			)
			.sort((a, b) => Math.abs(a.volumeMl - nowMl) - Math.abs(b.volumeMl - nowMl));
		if (other) this.#volumeId = other.id;
	}
	get sampleVolumeMl(): number {
		const volume = this.run().kit.sample.volumes.find(({ id }) => id === this.volumeId);
		return volume?.volumeMl ?? Number.NaN;
	}

	#deedAt(step: PlainStep, at: number): Deed {
		const { kit, titration } = this.run();
		return deedOf(step, {
			kit,
			volumeId: this.volumeId,
			amount: this.amount ?? (step.kind === 'dose' ? step.amount : 0),
			secondsInStep: (at - titration.walk.context.stepSince) / 1000
		});
	}
	get deed(): Deed | null {
		const { step } = this;
		return step && this.#deedAt(step, this.run().titration.walk.context.stepSince);
	}
	get isWaiting(): boolean {
		return this.step?.kind === 'wait' && !this.isTimeOver;
	}
	/** A wait that is over need not be skipped any more. */
	get skip(): string | null {
		return this.step?.kind === 'wait' && this.isTimeOver ? null : (this.deed?.skip ?? null);
	}

	goOn(): void {
		const { step } = this;
		if (!step || this.isWaiting || Number.isNaN(this.amount)) return;
		const { events } = this.#deedAt(step, this.run().now());
		for (const event of events) this.run().say(event);
		this.run().say({ type: 'step.done', stepId: step.id });
	}
	/** Goes on without it; the log says so. */
	passOver(): void {
		const { step } = this;
		if (step) this.run().say({ type: 'step.skipped', stepId: step.id });
	}
}
