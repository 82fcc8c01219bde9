import { SvelteSet } from 'svelte/reactivity';
import { substances, type MadeAnalyte } from '$lib/judgement';
import type { Analyte, Kit, Unit } from '$lib/kits';
import { Persisted } from '../state/persisted.svelte';
import { additionOf, type AdditionShown } from './addition';
import type { Blanks } from './blanks';
import { blanksAbout, keptAnalyte, withAnalyte, withBlanksAbout } from './blanks-about';
import { betterWith } from './better-with';
import { solutionOf, type Solution } from './solution';
import { unitOfBlanks } from './solution-input';

const KEY = 'halfdrop.known-solution';

function readBlanks(stored: unknown): Blanks {
	if (typeof stored !== 'object' || stored === null) return {};
	return Object.fromEntries(
		Object.entries(stored).filter(
			(entry): entry is [string, string] => typeof entry[1] === 'string' && entry[1].length <= 200
		)
	);
}

/** An analyte of which solutions are made here; undefined of another. */
export const madeOf = (analyte: Analyte): MadeAnalyte | undefined =>
	Object.values(substances).find((substance) => substance.analyte === analyte)?.analyte;

/**
 * A known solution being made. What is typed is kept from the first letter, as it was typed; what is
 * wrong with a blank is said once it has been left.
 */
export class RecipeForm {
	readonly #kept = new Persisted<Blanks>(KEY, {}, readBlanks);
	readonly #left = new SvelteSet<string>();
	/** Of what the solution is by what was chosen on this visit; before that, what led here decides. */
	#chosen: MadeAnalyte | null = $state.raw(null);
	readonly #analyte = $derived.by(
		() => this.#chosen ?? this.asked ?? keptAnalyte(this.#kept.current) ?? 'alkalinity'
	);
	readonly #blanks = $derived.by(() => blanksAbout(this.#kept.current, this.#analyte));
	readonly #solution = $derived.by(() =>
		solutionOf(this.blanks, this.preferredUnit(), this.kit, this.#analyte)
	);
	readonly #addition = $derived.by(() => additionOf(this.blanks, this.#solution));
	readonly #better = $derived.by(() =>
		betterWith(this.blanks, this.preferredUnit(), this.#analyte)
	);
	/** Kits that could read it, and the one of a check that the page serves. */
	kits: readonly Kit[] = $state.raw([]);
	checksKit: Kit | null = $state.raw(null);
	/** What that check or kit is about, where solutions are made of it. */
	asked: MadeAnalyte | null = $state.raw(null);
	/** What was thrown away last, to be brought back. */
	#thrown: Blanks | null = $state.raw(null);

	/** Something had been typed on an earlier visit. */
	readonly isAsLeft: boolean;

	/** @param preferredUnit in which values are typed until something is */
	constructor(private readonly preferredUnit: () => Unit) {
		this.isAsLeft = this.isBegun;
		// What was typed on an earlier visit has been left.
		for (const name of Object.keys(this.#kept.current)) this.#left.add(name.replace(/^.*:/, ''));
	}

	get blanks(): Blanks {
		return this.#blanks;
	}
	/** Of what the solution is. */
	get analyte(): MadeAnalyte {
		return this.#analyte;
	}
	/** Makes a solution of something else; what was typed for this one stays kept. */
	setAnalyte(analyte: MadeAnalyte): void {
		this.#thrown = null;
		this.#chosen = analyte;
		this.#kept.current = withAnalyte(this.#kept.current, analyte);
	}
	/** The kit that will read it, and with it of what the solution is; empty where nobody says. */
	setKit(id: string): void {
		const kit = this.kits.find((each) => each.id === id);
		const analyte = kit && madeOf(kit.analyte);
		if (analyte) this.setAnalyte(analyte);
		this.set('kit', id);
	}
	/** The kit that will read it: the one chosen, before that the check's; null where nobody says. */
	get kit(): Kit | null {
		const chosen = this.blanks['kit'];
		const found = chosen === undefined ? this.checksKit : this.kits.find(({ id }) => id === chosen);
		return found?.analyte === this.#analyte ? found : null;
	}
	get solution(): Solution {
		return this.#solution;
	}
	get addition(): AdditionShown {
		return this.#addition;
	}
	/** What would make it known better. */
	get better() {
		return this.#better;
	}

	text(name: string): string {
		return this.blanks[name] ?? '';
	}
	set(name: string, text: string): void {
		this.#thrown = null;
		// Numbers keep their meaning when another unit is preferred later.
		const unit = unitOfBlanks(this.blanks, this.preferredUnit(), this.#analyte);
		const changed = { unit, [name]: text };
		this.#kept.current = withBlanksAbout(this.#kept.current, this.#analyte, changed);
	}
	leave(name: string): void {
		this.#left.add(name);
	}
	problemAt(name: string): string | undefined {
		const problem = this.#solution.problems[name] ?? this.#addition.problems[name];
		const isDue = this.#left.has(name) && this.text(name).trim() !== '';
		return isDue ? problem : undefined;
	}

	get isBegun(): boolean {
		return Object.keys(this.blanks).length > 0;
	}
	get isThrown(): boolean {
		return this.#thrown !== null;
	}
	startOver(): void {
		const before = this.#kept.current;
		this.#chosen = this.#analyte;
		this.#kept.current = {};
		this.#left.clear();
		this.#thrown = before;
	}
	bringBack(): void {
		if (this.#thrown) this.#kept.current = this.#thrown;
		this.#thrown = null;
	}
}
