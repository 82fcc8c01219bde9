import { SvelteSet } from 'svelte/reactivity';
import type { SentenceForm } from '../../fields/sentence';
import type { Evidence } from '$lib/observation';
import { forms, type FormId } from './forms';
import type { Blanks, EvidenceForm, FormContext, Part } from './form';

/**
 * A sentence being filled in. What is typed stands in `blanks` as it was typed; what is wrong with a
 * blank is said once it has been left, and of one that is still empty when somebody wants to tell it.
 */
export class SentenceDraft implements SentenceForm {
	blanks: Record<string, string> = $state({});
	#isTried = $state(false);
	#asked = '';
	readonly #left = new SvelteSet<string>();
	readonly #told = $derived.by(() => forms[this.form].read(this.blanks, this.contextOf()));

	constructor(
		readonly form: FormId,
		blanks: Blanks,
		/** Asked anew each time: the check goes on while one types. */
		private readonly contextOf: () => FormContext
	) {
		this.blanks = { ...forms[form].begin?.(contextOf()), unit: contextOf().unit, ...blanks };
	}

	get parts(): readonly Part[] {
		return forms[this.form].parts(this.blanks, this.contextOf());
	}
	get remark(): string | null {
		return forms[this.form].remark?.(this.blanks, this.contextOf()) ?? null;
	}
	/** The evidence, once every blank makes sense. */
	get evidence(): Evidence | null {
		return 'evidence' in this.#told ? this.#told.evidence : null;
	}
	get problems(): Readonly<Record<string, string>> {
		return 'problems' in this.#told ? this.#told.problems : {};
	}

	/** What is odd, though it can be. */
	get doubts(): Readonly<Record<string, string>> {
		const form: EvidenceForm = forms[this.form];
		return form.doubts?.(this.blanks, this.contextOf()) ?? {};
	}
	/** Whether something odd is asked now: once for what stands there, and anew where that is changed. */
	asksOnce(): boolean {
		const asked = Object.values(this.doubts).join(' ');
		const isNew = asked !== '' && asked !== this.#asked;
		this.#asked = asked;
		return isNew;
	}

	problemAt(path: string, text: string): string | undefined {
		const isDue = this.#isTried || (this.#left.has(path) && text.trim() !== '');
		return isDue ? (this.problems[path] ?? this.doubts[path]) : undefined;
	}
	suggestionAt(): undefined {
		return undefined;
	}
	leave(path: string): void {
		this.#left.add(path);
	}
	idOf(path: string): string {
		return `tell-${this.form}-${path}`;
	}
	/** Says all that is wrong or missing. */
	tryAll(): void {
		this.#isTried = true;
	}
}
