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

/** What was measured is one choice; everything else that is typed belongs to it and to its unit. */
const CHOSEN = 'analyte';
/** All that was typed before each analyte had its own. */
const ownNames = [
	'pairs',
	'unit',
	'own',
	'ownU',
	'other',
	'otherU',
	'scatterOwn',
	'scatterOther',
	'portions',
	'titrantUnit',
	'repeats',
	'usualSd'
] as const;

/** The blanks in which one sample is typed. */
export const oneSample = ['own', 'ownU', 'other', 'otherU'] as const;

/** Values that stand in the unit. */
const inUnit: readonly string[] = [
	'pairs',
	...oneSample,
	'scatterOwn',
	'scatterOther',
	'repeats',
	'usualSd'
];

const SCATTER = { low: 1e-6, high: 10_000, why: 'A scatter lies above 0' };

/** Samples measured two ways, being typed in. */
export class CompareForm {
	readonly kept = new KeptBlanks('halfdrop.compare');
	// Texts are equal where nothing changed in them: a letter elsewhere must not work it all out anew.
	readonly #pairs = $derived.by(() => this.text('pairs'));
	readonly #portions = $derived.by(() => this.text('portions'));
	readonly typed = $derived.by(() => parsePairs(this.#pairs));
	readonly portions = $derived.by(() => parsePortions(this.#portions));
	readonly blank = $derived.by(() => blankOf(this.portions));
	readonly comparison = $derived.by(() => comparisonOf(this.typed, this.scatter));
	readonly repeats = $derived.by(() => readRepeats(this.text('repeats'), this.text('usualSd')));

	/** @param preferredUnit of alkalinity */
	constructor(private readonly preferredUnit: () => Unit) {
		this.#sortOldOnes();
	}
	/** What was kept under its bare name goes to the analyte in whose unit it was typed. */
	#sortOldOnes(): void {
		const old = ownNames.filter((name) => this.kept.text(name) !== '');
		const unit = this.kept.text('unit');
		const candidates = [this.analyte, ...(Object.keys(analytes) as Analyte[])];
		const owner = candidates.find((each) => unitsOf(each).some((own) => own === unit));
		for (const name of old) {
			this.kept.set(`${owner ?? this.analyte}.${name}`, this.kept.text(name));
			this.kept.leave(`${owner ?? this.analyte}.${name}`);
			this.kept.set(name, '');
		}
	}

	get analyte(): Analyte {
		return chosenOf(this.kept.all, 'analyte', analytes);
	}
	/** The unit in which values were typed, whatever is preferred now. */
	get unit(): Unit {
		const typed = unitsOf(this.analyte).find((unit) => unit === this.text('unit'));
		return typed ?? unitFor(this.analyte, this.preferredUnit());
	}
	get titrantUnit() {
		return chosenOf(this.kept.all, this.#place('titrantUnit'), titrantUnits);
	}
	/** Both scatters, where both were typed. */
	get scatter(): Scatter | null {
		const [own, other] = [this.#scatterOf('scatterOwn'), this.#scatterOf('scatterOther')];
		return own !== null && other !== null ? { own, other } : null;
	}
	#scatterOf(name: string): number | null {
		const typed = typedNumber(this.text(name), 'the scatter', SCATTER);
		return 'value' in typed ? typed.value : null;
	}
	problemAt(name: 'scatterOwn' | 'scatterOther'): string | undefined {
		if (!this.isDue(name)) return undefined;
		const typed = typedNumber(this.text(name), 'the scatter', SCATTER);
		return 'problem' in typed ? typed.problem : undefined;
	}

	/** Where something is kept: each analyte has its own of everything, so that none is read as another's. */
	#place(name: string): string {
		return name === CHOSEN ? name : `${this.analyte}.${name}`;
	}
	text(name: string): string {
		return this.kept.text(this.#place(name));
	}
	set(name: string, text: string): void {
		// Values keep their meaning when another unit is preferred later.
		if (inUnit.includes(name) && !inUnit.some((each) => this.text(each) !== ''))
			this.kept.set(this.#place('unit'), this.unit);
		this.kept.set(this.#place(name), text);
	}
	leave(name: string): void {
		this.kept.leave(this.#place(name));
	}
	isDue(name: string): boolean {
		return this.kept.isDue(this.#place(name));
	}
	/** Puts the sample that was typed in blanks at the end of the list; answers why it cannot be one. */
	add(): string | null {
		const [own = '', ownU = '', other = '', otherU = ''] = oneSample.map((name) => this.text(name));
		if (own.trim() === '' || other.trim() === '') return 'Type both values of the sample.';
		const line = `${cellText(own, ownU)}; ${cellText(other, otherU)}`;
		const [problem] = parsePairs(line).problems;
		if (problem) return problem.problem;
		this.put([line]);
		for (const name of oneSample) this.set(name, '');
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
