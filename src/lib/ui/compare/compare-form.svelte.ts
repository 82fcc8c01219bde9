import { typedNumber, unitFor, unitsOf, type Analyte, type Unit } from '$lib/kits';
import { chosenOf } from '../recipe/blanks';
import { KeptBlanks } from '../fields/kept-blanks.svelte';
import { blankOf } from './blank';
import { titrantUnits } from './blank-words';
import { analytes } from './analytes';
import { comparisonOf } from './comparison';
import type { Scatter } from './line';
import { cellText, parsePairs } from './pairs';
import { parsePortions } from './portions';
import { readRepeats } from './repeats';

/** The blanks in which one sample is typed. */
export const oneSample = ['own', 'ownU', 'other', 'otherU'] as const;

const SCATTER = { low: 1e-6, high: 10_000, why: 'A scatter lies above 0' };

/** Samples measured two ways, being typed in. */
export class CompareForm {
	readonly kept = new KeptBlanks('halfdrop.compare');
	// Texts are equal where nothing changed in them: a letter elsewhere must not work it all out anew.
	readonly #pairs = $derived.by(() => this.kept.text('pairs'));
	readonly #portions = $derived.by(() => this.kept.text('portions'));
	readonly typed = $derived.by(() => parsePairs(this.#pairs));
	readonly portions = $derived.by(() => parsePortions(this.#portions));
	readonly blank = $derived.by(() => blankOf(this.portions));
	readonly comparison = $derived.by(() => comparisonOf(this.typed, this.scatter));
	readonly repeats = $derived.by(() =>
		readRepeats(this.kept.text('repeats'), this.kept.text('usualSd'))
	);

	/** @param preferredUnit of alkalinity */
	constructor(private readonly preferredUnit: () => Unit) {}

	get analyte(): Analyte {
		return chosenOf(this.kept.all, 'analyte', analytes);
	}
	/** The unit in which values were typed, whatever is preferred now. */
	get unit(): Unit {
		const typed = unitsOf(this.analyte).find((unit) => unit === this.kept.text('unit'));
		return typed ?? unitFor(this.analyte, this.preferredUnit());
	}
	get titrantUnit() {
		return chosenOf(this.kept.all, 'titrantUnit', titrantUnits);
	}
	/** Both scatters, where both were typed. */
	get scatter(): Scatter | null {
		const [own, other] = [this.#scatterOf('scatterOwn'), this.#scatterOf('scatterOther')];
		return own !== null && other !== null ? { own, other } : null;
	}
	#scatterOf(name: string): number | null {
		const typed = typedNumber(this.kept.text(name), 'the scatter', SCATTER);
		return 'value' in typed ? typed.value : null;
	}
	problemAt(name: 'scatterOwn' | 'scatterOther'): string | undefined {
		if (!this.kept.isDue(name)) return undefined;
		const typed = typedNumber(this.kept.text(name), 'the scatter', SCATTER);
		return 'problem' in typed ? typed.problem : undefined;
	}

	set(name: string, text: string): void {
		// Values keep their meaning when another unit is preferred later.
		if (name === 'pairs' && this.#pairs === '') this.kept.set('unit', this.unit);
		this.kept.set(name, text);
	}
	/** Puts the sample that was typed in blanks at the end of the list; answers why it cannot be one. */
	add(): string | null {
		const [own = '', ownU = '', other = '', otherU = ''] = oneSample.map((name) =>
			this.kept.text(name)
		);
		if (own.trim() === '' || other.trim() === '') return 'Type both values of the sample.';
		const line = `${cellText(own, ownU)}; ${cellText(other, otherU)}`;
		const [problem] = parsePairs(line).problems;
		if (problem) return problem.problem;
		this.put([line]);
		for (const name of oneSample) this.kept.set(name, '');
		return null;
	}
	/** Puts lines at the end of the list. */
	put(lines: readonly string[]): void {
		const before = this.#pairs.trimEnd();
		this.set('pairs', [...(before === '' ? [] : [before]), ...lines].join('\n'));
	}
	/** How many of these lines stand in the list already. */
	countIn(lines: readonly string[]): number {
		const left = this.#pairs.split('\n').map((line) => line.trim());
		return lines.filter((line) => {
			const at = left.indexOf(line);
			if (at >= 0) left.splice(at, 1);
			return at >= 0;
		}).length;
	}
}
