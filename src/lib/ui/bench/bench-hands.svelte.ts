import { observe, reduce, type BenchAction, type Seen } from '$lib/bench';
import { fallSeconds } from '$lib/glassware';
import type { Hold } from './posture';
import { toldAtLook } from './look-told';
import { fillingInWords, placeInWords, sampleInWords } from './place-in-words';
import type { BenchRun } from './run';

/** How long a drop of reagent falls, ms. */
const FALL_MS = fallSeconds(5) * 1000;

/**
 * The learner's hands and eye on one bench: how things are held, what is being moved at this moment,
 * and what was said at the last look. None of it is kept; what is done goes to the run as a deed.
 */
export class BenchHands {
	hold: Hold = $state('lifted');
	noseUnder = $state(true);
	magnify: 'seal' | 'line' = $state('seal');
	isRefilling = $state(false);
	isSwirling = $state(false);
	/** What was told when it was asked for: a look, a place on the scale. */
	words = $state('');
	/** A deed under way, shown as if it were done; in the log only when the hand lets go. */
	#underWay: BenchAction | null = null;
	#lastLook: Seen | null = null;
	#falling: number[] = [];

	constructor(private readonly runNow: () => BenchRun) {}

	get run(): BenchRun {
		return this.runNow();
	}

	/** What the eye sees at this moment. */
	seen(): Seen {
		const { bench } = this.run.titration;
		const at = Math.max(bench.at, this.run.now());
		return observe(this.#underWay ? reduce(bench, this.#underWay, at) : bench, at);
	}

	/** Shows a deed while the hand is still at it. */
	show(action: BenchAction): void {
		this.#underWay = action;
	}

	/** The hand lets go: what was under way is done. */
	letGo(action: BenchAction | null = this.#underWay): void {
		this.#underWay = null;
		if (action) this.run.act(action);
	}

	get underWay(): BenchAction | null {
		return this.#underWay;
	}

	/** What the sample is called: a check may be of other water than the tank's. */
	get waterName(): string {
		const { purpose } = this.run.titration;
		return purpose === 'reference' ? 'the solution' : 'tank water';
	}

	startFlow(): void {
		this.run.act({ type: 'flow.start' });
	}
	stopFlow(): void {
		if (this.run.titration.bench.flow?.giveMl === null) this.run.act({ type: 'flow.stop' });
	}

	startSwirl(): void {
		if (this.isSwirling) return;
		this.isSwirling = true;
		this.run.act({ type: 'swirl.start' });
	}
	stopSwirl(): void {
		this.isSwirling = false;
		if (this.run.titration.bench.swirlStartedAt !== null) this.run.act({ type: 'swirl.stop' });
	}

	/** Nobody is there any more: what was held is let go. */
	letGoOfAll(): void {
		this.stopFlow();
		this.stopSwirl();
	}

	/** Level in the vial while it is being filled to its line, mL; null while nobody pours. */
	levelMl: number | null = $state(null);
	showLevel(ml: number): void {
		this.levelMl = Math.max(0, ml);
		this.show({ type: 'sample.fillToLine', levelMl: this.levelMl });
	}
	pourBy(ml: number): void {
		this.showLevel((this.levelMl ?? 0) + ml);
	}

	/** The deed of moving the titrant's plunger, as the syringe is held now. */
	sealDeed(toMl: number): BenchAction {
		const { delivery } = this.run.titration.bench;
		const sealMl = Math.max(0, toMl);
		const fromMl = delivery.by === 'syringe' ? delivery.syringe.sealMl : 0;
		if (this.hold === 'tipUp' && sealMl < fromMl) return { type: 'titrant.purge', sealMl };
		return {
			type: 'titrant.draw',
			sealMl,
			end: this.hold === 'inBottle' ? 'inTitrant' : 'inAir'
		};
	}
	get sealMl(): number {
		const { delivery } = this.run.titration.bench;
		return delivery.by === 'syringe' ? delivery.syringe.sealMl : 0;
	}
	samplerDeed(toMl: number): BenchAction {
		return {
			type: 'sample.draw',
			toMl: Math.max(0, toMl),
			nose: this.noseUnder ? 'under' : 'inAir'
		};
	}
	get samplerMl(): number {
		return this.run.titration.bench.sampler.volumeMl;
	}
	/** Numeral of a burette's level; its lowest line before it was filled. */
	get buretteMl(): number {
		const { delivery } = this.run.titration.bench;
		return delivery.by === 'burette'
			? (delivery.burette.levelMl ?? delivery.burette.capacityMl)
			: 0;
	}

	/** A drop of reagent lets go; the deed is done when it meets the water. */
	dropReagent(reagentId: string): void {
		const since = this.run.now();
		this.#falling.push(since);
		setTimeout(() => {
			this.#falling.shift();
			this.run.act({ type: 'reagent.dose', reagentId });
		}, FALL_MS);
	}
	get reagentDrop(): number | null {
		const latest = this.#falling.at(-1);
		return latest === undefined ? null : Math.min(1, (this.run.now() - latest) / FALL_MS);
	}

	/** A deliberate look: the colour in the words that a helper would use. */
	look(): void {
		this.run.act({ type: 'vial.look' });
		const now = this.seen();
		const { kit, seed } = this.run.titration.bench;
		this.words = toldAtLook(kit, now, this.#lastLook, seed);
		this.#lastLook = now;
	}

	/** Where things stand, for whoever does not see it: asked for, never announced. */
	tell(what: 'sample' | 'filling' | 'mark'): void {
		const { kit, volumeId } = this.run.titration.bench;
		const volumeMl = kit.sample.volumes.find(({ id }) => id === volumeId)?.volumeMl ?? 1;
		const seen = this.seen();
		if (what === 'sample') this.words = sampleInWords(kit, seen, volumeMl);
		else if (what === 'filling') this.words = fillingInWords(kit, seen);
		else this.words = placeInWords(kit, seen, this.magnify);
	}

	/** For a new titration, or another step, everything is put down. */
	putDown(): void {
		this.hold = 'lifted';
		this.isRefilling = false;
		this.magnify = 'seal';
		this.words = '';
		this.levelMl = null;
		this.#underWay = null;
	}
	forgetLooks(): void {
		this.#lastLook = null;
	}
}
