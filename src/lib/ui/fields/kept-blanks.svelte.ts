import { SvelteSet } from 'svelte/reactivity';
import { Persisted } from '../state/persisted.svelte';

/** Everything typed and chosen on a page, as it was typed. */
export type KeptTexts = Readonly<Record<string, string>>;

/** Longest text that is kept of one blank: a list of some thousand readings. */
const LONGEST = 60_000;

function readTexts(stored: unknown): KeptTexts {
	if (typeof stored !== 'object' || stored === null) return {};
	return Object.fromEntries(
		Object.entries(stored).filter(
			(entry): entry is [string, string] =>
				typeof entry[1] === 'string' && entry[1].length <= LONGEST
		)
	);
}

/**
 * The blanks of a page. What is typed is kept from the first letter and survives a reload; what is
 * wrong with a blank is said once it has been left.
 */
export class KeptBlanks {
	readonly #kept: Persisted<KeptTexts>;
	readonly #left = new SvelteSet<string>();
	#thrown: KeptTexts | null = $state.raw(null);
	/** Something had been typed on an earlier visit. */
	readonly isAsLeft: boolean;

	/** @param key under which the browser keeps them */
	constructor(key: string) {
		this.#kept = new Persisted<KeptTexts>(key, {}, readTexts);
		this.isAsLeft = this.isBegun;
		for (const name of Object.keys(this.all)) this.#left.add(name);
	}

	get all(): KeptTexts {
		return this.#kept.current;
	}
	text(name: string): string {
		return this.all[name] ?? '';
	}
	set(name: string, text: string): void {
		this.#thrown = null;
		this.#kept.current = { ...this.all, [name]: text };
	}
	leave(name: string): void {
		this.#left.add(name);
	}
	/** Whether what is wrong with a blank may be said: it holds something and has been left. */
	isDue(name: string): boolean {
		return this.#left.has(name) && this.text(name).trim() !== '';
	}

	get isBegun(): boolean {
		return Object.values(this.all).some((text) => text.trim() !== '');
	}
	get isThrown(): boolean {
		return this.#thrown !== null;
	}
	startOver(): void {
		const before = this.all;
		this.#kept.current = {};
		this.#left.clear();
		this.#thrown = before;
	}
	bringBack(): void {
		if (this.#thrown) this.#kept.current = this.#thrown;
		this.#thrown = null;
	}
}
