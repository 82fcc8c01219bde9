import { lookTogether } from '$lib/judgement';
import type { Analyte } from '$lib/kits';
import { KeptBlanks } from '../fields/kept-blanks.svelte';
import { readTogether, type TogetherTexts, type UnitFor } from './together-fields';

/** Values of the log that can be taken over, as they would be typed. */
export type Latest = {
	/** 'alkalinity of today, calcium of 3 days ago' */
	words: string;
	texts: TogetherTexts;
	/** What was found as the rest when another of them was taken off. */
	byDifference: ReadonlySet<Analyte>;
};

/** The values of a tank, being typed in to be looked at together. */
export class TogetherForm {
	readonly kept = new KeptBlanks('halfdrop.together');
	readonly read = $derived.by(() =>
		readTogether(this.kept.all, this.unitFor, this.isMagnesiumByDifference)
	);
	readonly look = $derived.by(() => lookTogether(this.read.input));

	constructor(readonly unitFor: UnitFor) {}

	get isMagnesiumByDifference(): boolean {
		return this.kept.text('byDifference') === 'yes';
	}
	setByDifference(isSo: boolean): void {
		this.kept.set('byDifference', isSo ? 'yes' : '');
	}
	problemAt(name: string): string | undefined {
		return this.kept.isDue(name) ? this.read.problems[name] : undefined;
	}
	/** As what something else, or an empty blank, was taken. */
	noteAt(name: string): string | undefined {
		// A ± that is missing is taken as soon as its value has been left.
		const isDue = this.kept.isDue(name) || this.kept.isDue(name.replace(/U$/, ''));
		return isDue ? this.read.notes[name] : undefined;
	}
	take({ texts, byDifference }: Latest): void {
		for (const [name, text] of Object.entries(texts)) {
			this.kept.set(name, text);
			this.kept.leave(name);
		}
		this.setByDifference(byDifference.size > 0);
	}
}
