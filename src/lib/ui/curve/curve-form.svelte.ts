import { parseVolumePhPairs, type Unit } from '$lib/kits';
import { KeptBlanks, type KeptTexts } from '../fields/kept-blanks.svelte';
import { curveInput } from './curve-input';
import { curveResult } from './curve-result';

/** The blank that holds the readings, line by line, as they were typed or pasted. */
export const READINGS = 'readings';

/** A titration with a pH probe being typed in. */
export class CurveForm {
	readonly kept = new KeptBlanks('halfdrop.ph-curve');
	// Texts are equal where nothing changed in them: a letter elsewhere must not fit the curve anew.
	readonly #list = $derived.by(() => this.kept.text(READINGS));
	readonly #others = $derived.by(() => {
		const { [READINGS]: _list, volume: _volume, ph: _ph, ...others } = this.kept.all;
		return JSON.stringify(others);
	});
	readonly pairs = $derived.by(() => parseVolumePhPairs(this.#list));
	readonly input = $derived.by(() =>
		curveInput(JSON.parse(this.#others) as KeptTexts, this.preferredUnit())
	);
	readonly result = $derived.by(() => {
		const { options, unit } = this.input;
		return options && this.pairs.pairs.length > 0
			? curveResult(this.pairs.pairs, options, unit)
			: null;
	});

	/** @param preferredUnit of values until one has been typed */
	constructor(private readonly preferredUnit: () => Unit) {}

	problemAt(name: string): string | undefined {
		return this.kept.isDue(name) ? this.input.problems[name] : undefined;
	}
	set(name: string, text: string): void {
		// A content keeps its meaning when another unit is preferred later.
		if (name === 'known' && this.kept.text('unit') === '') this.kept.set('unit', this.input.unit);
		this.kept.set(name, text);
	}

	/** Puts one reading at the end of the list, as it was typed; answers why it cannot be one. */
	add(volume: string, ph: string): string | null {
		const row = this.pairs.isPhFirst
			? `${ph.trim()}\t${volume.trim()}`
			: `${volume.trim()}\t${ph.trim()}`;
		const [problem] = parseVolumePhPairs(`${this.pairs.header?.text ?? ''}\n${row}`).problems;
		if (problem) return problem.problem;
		const before = this.kept.text(READINGS).trimEnd();
		this.kept.set(READINGS, before === '' ? row : `${before}\n${row}`);
		return null;
	}
	/** Takes a line out of the list; the others keep their words. */
	takeOut(lineNumber: number): void {
		const lines = this.kept.text(READINGS).split(/\r\n|\n|\r/u);
		this.kept.set(READINGS, lines.filter((_, i) => i + 1 !== lineNumber).join('\n'));
	}
}
