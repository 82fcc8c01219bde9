import {
	convertValue,
	decimalsFor,
	plausibleRange,
	typedNumber,
	unitName,
	unitsLikely,
	unitsOf,
	type TypedRange,
	type Unit
} from '$lib/kits';
import type { Reading } from '$lib/observation';
import { plain } from '../../charts/numbers';
import { ownUncertainty, type Blanks, type FormContext, type Part } from './form';

/** A value may be so many times the highest that tanks have, to leave room for what is odd. */
const ROOM = 10;
const WORDS_MOST = 200;

/** Reads blanks one by one and gathers what is wrong with them. */
export class BlankReader {
	readonly problems: Record<string, string> = {};

	constructor(
		private readonly blanks: Blanks,
		private readonly context: FormContext
	) {}

	text(name: string): string {
		return (this.blanks[name] ?? '').trim().slice(0, WORDS_MOST);
	}

	/** What stands there, or what an empty blank is taken for. */
	words(name: string, otherwise: string): string {
		return this.text(name) || otherwise;
	}

	/** NaN after a problem: a value that is not used. */
	number(name: string, what: string, range: TypedRange): number {
		const typed = typedNumber(this.text(name), what, range);
		if ('value' in typed) return typed.value;
		this.problems[name] = typed.problem;
		return Number.NaN;
	}

	/** Undefined where the blank is empty. */
	optional(name: string, what: string, range: TypedRange): number | undefined {
		return this.text(name) === '' ? undefined : this.number(name, what, range);
	}

	oneOf<Key extends string>(name: string, allowed: readonly Key[], otherwise: Key): Key {
		return allowed.find((each) => each === this.text(name)) ?? otherwise;
	}

	get unit(): Unit {
		const { analyte, unit } = this.context;
		return this.oneOf('unit', unitsOf(analyte), unit);
	}

	/** A value in the unit of the sentence, from nothing to far more than tanks have. */
	value(name: string, what: string): number {
		const { high, reach } = this.#reach;
		return this.number(name, what, { low: 0, high, why: `${reach} from 0 to ${plain(high, 0)}` });
	}
	/** A content or a ±: more than nothing. */
	content(name: string, what: string): number {
		const { high, reach } = this.#reach;
		const why = `${reach} more than 0 and up to ${plain(high, 0)}`;
		return this.number(name, what, { low: high / 1e5, high, why });
	}
	/** What was dosed or used up over days: undefined where the blank is empty. */
	amount(name: string, what: string): number | undefined {
		return this.text(name) === '' ? undefined : this.value(name, what);
	}
	get #reach() {
		const high = plausibleRange(this.unit, this.context.analyte).high * ROOM;
		return { high, reach: `In ${this.unitName} that is` };
	}
	get unitName(): string {
		return unitName(this.unit, this.context.analyte);
	}

	/** The ± of the sentence; what the kit in question has where it is left empty. */
	uncertainty(name = 'u'): number {
		const own = ownUncertainty(this.context, this.unit);
		if (this.text(name) === '' && own !== null) return own;
		return this.content(name, 'the ±: about 19 in 20 such intervals hold the true value');
	}

	/** The reading of the sentence. */
	reading(label: string, repeatabilitySd?: number): Reading {
		return {
			id: this.context.id,
			label,
			value: this.value('value', 'the value'),
			expandedUncertainty: this.uncertainty(),
			...(this.text('u') === '' ? { isUncertaintyTaken: true } : {}),
			unit: this.unit,
			...(repeatabilitySd === undefined ? {} : { repeatabilitySd })
		};
	}

	/** Of the same hands, ware and bottles as the test in question: so is its scatter. */
	ownReading(label: string): Reading {
		const { first, analyte } = this.context;
		const sd =
			first?.repeatabilitySd === undefined
				? undefined
				: convertValue(first.repeatabilitySd, first.unit, this.unit, analyte);
		return this.reading(label, sd);
	}

	get isSound(): boolean {
		return Object.keys(this.problems).length === 0;
	}
}

/** '[7.4] ± [0.4] [dKH]'. What ends with a choice has no full stop: it would stand alone beside its box. */
export function valueParts(
	blanks: Blanks,
	context: FormContext,
	said: { value: string; after?: string; taken?: number | null } = { value: 'The value' }
): Part[] {
	const reader = new BlankReader(blanks, context);
	const { unit } = reader;
	const own = said.taken === undefined ? ownUncertainty(context, unit) : said.taken;
	const taken =
		own === null ? undefined : plain(own, Math.max(1, decimalsFor(unit, own, context.analyte)));
	return [
		{ blank: 'value', label: said.value },
		'±',
		{
			blank: 'u',
			label: `Its ±${taken === undefined ? '' : `; left empty it is taken as ${taken}`}`,
			...(taken === undefined ? {} : { taken })
		},
		{
			choice: 'unit',
			label: 'Unit',
			options: unitsOf(context.analyte).map((each) => ({
				value: each,
				words: unitName(each, context.analyte)
			})),
			...(said.after === undefined ? {} : { after: said.after })
		}
	];
}

/** A value that no tank has may have been in another unit, or be a slip; so may its ±. */
export function unitRemark(
	blanks: Blanks,
	context: FormContext,
	{ isTank = true }: { isTank?: boolean } = {}
): string | null {
	const reader = new BlankReader(blanks, context);
	const { unit } = reader;
	const { analyte } = context;
	const typed = (name: string) => {
		const found = typedNumber(reader.text(name), '', { low: 0, high: 1e6, why: '' });
		return 'value' in found ? found.value : null;
	};
	const value = typed('value');
	if (value === null) return null;
	const [likely] = value > 0 ? unitsLikely(value, unit, analyte) : [];
	if (likely) return `Is that the unit? ${likely.sentence}`;
	const { low, high } = plausibleRange(unit, analyte);
	if (isTank && (value < low / 2 || value > high))
		return `Hardly any tank holds ${reader.text('value')} ${reader.unitName}. Look at it once more.`;
	if ((typed('u') ?? 0) >= value)
		return 'A ± as large as the value says almost nothing. Is it that large?';
	return null;
}
