import { SvelteSet } from 'svelte/reactivity';
import {
	differenceOfAnalyte,
	emptyReagent,
	kitOfDraft,
	suggestionsFor,
	unitFor,
	type Analyte,
	type DraftReagent,
	type Kit,
	type KitDraft,
	type Unit
} from '$lib/kits';
import { impliedBy, type Implied, type ImpliedPlace } from './implied-words';
import type { TextRow } from './pasted-rows';
import { allUsualCautions, usualCautions } from './usual-cautions';

/**
 * A leaflet being typed in. What is typed stands in `draft` as it was typed. What is wrong with a
 * blank is said once the blank has been left; of one that is still empty, only when somebody wants
 * to keep the kit.
 */
export class KitForm {
	draft: KitDraft = $state() as KitDraft;
	#isTried = $state(false);
	readonly #left = new SvelteSet<string>();
	readonly #outcome = $derived.by(() => kitOfDraft(this.draft));
	readonly #suggestions = $derived.by(() => suggestionsFor(this.draft));

	readonly #implied = $derived.by(() => impliedBy(this.draft));

	constructor(draft: KitDraft) {
		this.draft = draft;
		this.keepRowOpen();
	}

	/** The kit, once every blank makes sense. */
	get kit(): Kit | null {
		return 'kit' in this.#outcome ? this.#outcome.kit : null;
	}

	/** All that stands in the way of keeping the kit, by path. */
	get problems(): Readonly<Record<string, string>> {
		return 'problems' in this.#outcome ? this.#outcome.problems : {};
	}

	/** What to say beside a blank, and which is empty or holds this text. */
	problemAt(path: string, text: string): string | undefined {
		const isDue = this.#isTried || (this.#left.has(path) && text.trim() !== '');
		return isDue ? this.problems[path] : undefined;
	}

	/** What an empty blank is taken for; shown in it. */
	suggestionAt(path: string): string | undefined {
		return this.#suggestions[path]?.text;
	}
	/** Why it is taken for that. */
	reasonAt(path: string): string | undefined {
		return this.#suggestions[path]?.why;
	}

	/** What follows from the blanks so far, for the margin of one part. */
	impliedAt(place: ImpliedPlace): readonly Implied[] {
		return this.#implied[place];
	}

	leave(path: string): void {
		this.#left.add(path);
	}

	/** Somebody has tried to keep the kit and been shown all that is missing. */
	get isTried(): boolean {
		return this.#isTried;
	}
	/** Says all that is wrong or missing. */
	tryAll(): void {
		this.#isTried = true;
	}

	/** The id of a blank on the page. */
	idOf(path: string): string {
		return `kit-${path.replaceAll('.', '-')}`;
	}

	/**
	 * What another analyte does not have goes: its unit, and the cautions that were ticked for it. All
	 * that was typed stays.
	 */
	setAnalyte(analyte: Analyte, preferred?: Unit): void {
		const { draft } = this;
		const before = usualCautions[draft.analyte];
		// Whoever took a caution out took it out of what is usual; the new ones are looked at anew.
		const own = draft.hazards.filter((each) => !before.includes(each));
		draft.analyte = analyte;
		draft.unit = unitFor(analyte, preferred ?? draft.unit);
		draft.hazards = [...own, ...usualCautions[analyte].filter((each) => !own.includes(each))];
		draft.isForDifference = differenceOfAnalyte[analyte] !== undefined;
	}

	/** Another way of giving the titrant has other ways to count it. */
	setWay(by: KitDraft['by']): void {
		this.draft.by = by;
		if (by !== 'dropper') return;
		if (this.draft.kind === 'perMl') this.draft.kind = 'perDrop';
		if (this.draft.column === 'mark' || this.draft.column === 'leftMl') this.draft.column = 'drops';
	}

	addReagent(): void {
		this.draft.reagents.push(emptyReagent(this.draft.reagents));
	}
	/** Hands back what was there, so that it can be put back. */
	removeReagent(i: number): DraftReagent | undefined {
		return this.draft.reagents.splice(i, 1)[0];
	}
	putReagent(i: number, reagent: DraftReagent): void {
		this.draft.reagents.splice(i, 0, reagent);
	}
	moveReagent(i: number, by: -1 | 1): void {
		const moved = this.removeReagent(i);
		if (moved) this.putReagent(i + by, moved);
	}

	/** There is always an empty row to go on with. */
	keepRowOpen(): void {
		const last = this.draft.rows.at(-1);
		if (!last || last.at.trim() !== '' || last.value.trim() !== '')
			this.draft.rows.push({ at: '', value: '' });
	}
	setRows(rows: readonly TextRow[]): void {
		this.draft.rows = rows.map((row) => ({ ...row }));
		this.keepRowOpen();
	}

	setCaution(caution: string, isSaid: boolean): void {
		const others = this.draft.hazards.filter((each) => each !== caution);
		this.draft.hazards = isSaid ? [...others, caution] : others;
	}
	/** Cautions in the owner's own words, one on each line. */
	get ownCautions(): string {
		return this.draft.hazards.filter((each) => !allUsualCautions.has(each)).join('\n');
	}
	set ownCautions(text: string) {
		const usual = this.draft.hazards.filter((each) => allUsualCautions.has(each));
		this.draft.hazards = text === '' ? usual : [...usual, ...text.split('\n')];
	}
}
