import { putSaid, saidAt, type SaidSoFar } from './forms/draft-store';
import type { Blanks } from './forms/form';
import { formIds, type FormId } from './forms/forms';

/** Where on the page a sentence stands open: among what is known, or under the next check. */
export type SayingPlace = 'known' | 'next';

/**
 * What is being said on the page and is no evidence yet: which sentence stands open, and what stands
 * in the blanks of each. It survives a reload.
 */
export class Saying {
	#said: SaidSoFar = $state.raw({ open: null, blanks: {} });

	/** What was picked among all that is offered, in place of the best; by its key. */
	picked: string | null = $state(null);

	constructor(
		/** The check by its id, or 'new'. */
		private readonly place: string
	) {
		this.#said = saidAt(place);
	}

	/** '[place] [form]' of the open sentence. */
	isOpenHere(place: SayingPlace, form: FormId): boolean {
		return this.#said.open === `${place} ${form}`;
	}
	openAt(place: SayingPlace): FormId | null {
		return formIds.find((form) => this.isOpenHere(place, form)) ?? null;
	}
	open(form: FormId | null, place: SayingPlace): void {
		this.#put({ ...this.#said, open: form === null ? null : `${place} ${form}` });
	}

	blanksOf(form: FormId): Blanks {
		return this.#said.blanks[form] ?? {};
	}
	write(form: FormId, blanks: Blanks): void {
		this.#put({ ...this.#said, blanks: { ...this.#said.blanks, [form]: { ...blanks } } });
	}
	/** It has become evidence: its blanks are empty again. */
	told(form: FormId): void {
		const { [form]: _, ...blanks } = this.#said.blanks;
		this.#put({ open: null, blanks });
	}

	#put(said: SaidSoFar): void {
		this.#said = said;
		putSaid(this.place, said);
	}
}
