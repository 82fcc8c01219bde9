import { typedNumber, type Kit } from '$lib/kits';
import { markRange } from '$lib/ui/bench/marks-form';

/** What one can point at on a barrel: two marks of a filling, or one mark at two moments. */
export type MarkKey = 'seal' | 'line' | 'level' | 'before' | 'after';

/** One mark that is asked for. */
export type AskedMark = {
	key: MarkKey;
	/** On its handle. */
	name: string;
	/** Over its field. */
	label: string;
};

/** A drawn barrel is read no finer than this, mL. */
const FINEST_ML = 0.01;

/**
 * Marks while they are being given. Field and handle are one: what is typed moves the handle, and
 * the handle writes into the field. Nothing stands anywhere before a person has put it there.
 */
export class MarksEntry {
	/** As typed. */
	readonly texts: Partial<Record<MarkKey, string>> = $state({});
	/** What a tap on the barrel places. */
	active: MarkKey;
	readonly #problems: Partial<Record<MarkKey, string>> = $state({});
	/** While a hand drags, the handle stands where the hand is, finer than the field says it. */
	#dragged: { key: MarkKey; numeralMl: number } | null = $state.raw(null);

	constructor(
		readonly kit: Kit,
		readonly asked: readonly AskedMark[]
	) {
		this.active = $state(asked[0]?.key ?? 'seal');
	}

	get range() {
		return markRange(this.kit);
	}
	textOf(key: MarkKey): string {
		return this.texts[key] ?? '';
	}
	get isEmpty(): boolean {
		return this.asked.every(({ key }) => this.textOf(key).trim() === '');
	}
	/** The numeral given for a mark; null while there is none, or none that can be. */
	numeralOf(key: MarkKey): number | null {
		if (this.#dragged?.key === key) return this.#dragged.numeralMl;
		const typed = typedNumber(this.textOf(key), 'the numeral', this.range);
		return 'value' in typed ? typed.value : null;
	}
	problemOf(key: MarkKey): string {
		return this.#problems[key] ?? '';
	}

	type(key: MarkKey, text: string): void {
		this.texts[key] = text;
		this.active = key;
		delete this.#problems[key];
	}
	/** Says what is wrong with a field, if anything is. An empty one is not read. */
	check(key: MarkKey): boolean {
		const text = this.textOf(key);
		delete this.#problems[key];
		if (text.trim() === '') return true;
		const typed = typedNumber(text, 'the numeral you read', this.range);
		if ('problem' in typed) this.#problems[key] = typed.problem;
		return 'value' in typed;
	}
	/** Says that a mark is missing. */
	miss(key: MarkKey, what: string): void {
		this.#problems[key] = what;
	}

	/** Puts a mark somewhere; it is kept on the barrel. */
	place(key: MarkKey, numeralMl: number): void {
		const { low, high } = this.range;
		const held = Math.min(high, Math.max(low, numeralMl));
		// Whoever writes a comma gets one back.
		const isComma = this.textOf(key).includes(',');
		const text = (Math.round(held / FINEST_ML) * FINEST_ML).toFixed(2);
		this.type(key, isComma ? text.replace('.', ',') : text.replace(/^-0\.00$/, '0.00'));
	}
	/** As `place`, by a hand that has not let go yet. */
	drag(key: MarkKey, numeralMl: number): void {
		const { low, high } = this.range;
		this.place(key, numeralMl);
		this.#dragged = { key, numeralMl: Math.min(high, Math.max(low, numeralMl)) };
	}
	letGo(): void {
		this.#dragged = null;
	}
	/** Moves a mark that stands somewhere. */
	nudge(key: MarkKey, byMl: number): void {
		const from = this.numeralOf(key);
		if (from !== null) this.place(key, from + byMl);
	}
	clear(): void {
		for (const { key } of this.asked) this.type(key, '');
		this.active = this.asked[0]?.key ?? 'seal';
	}
}
