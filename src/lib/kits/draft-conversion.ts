import { asked, type Asked, type BlankReader } from './draft-blanks';
import type { Conversion, Delivery } from './kit';
import type { KitDraft } from './kit-draft';
import { growsWithUse, type Column } from './table-column';
import { rowsOutOfOrder } from './table-order';
import { lastDigitOf, type Row } from './table-line';
import { numberText } from './typed-number';
import { plausibleRange, unitName } from './units';

const fewest = (value: number) => numberText(Number(value.toPrecision(4)));

/** A row that holds something, and its place in the draft. */
type PlacedRow = Row & { place: number };

/** What the first column of a table can hold. */
function askedOfColumn(column: Column, delivery: Delivery): Asked {
	if (column === 'drops')
		return { what: 'the number of drops', low: 0, high: 400, why: 'A count goes from 0 to 400' };
	const what = column === 'mark' ? 'the mark' : column === 'leftMl' ? 'the mL left' : 'the mL used';
	if (delivery.by === 'dropper')
		return { what, low: 0, high: 100, why: 'Between 0 and 100 mL are used' };
	// While the capacity is not known, that is said at its own blank.
	if (Number.isNaN(delivery.capacityMl))
		return { what, low: 0, high: 200, why: 'No scale goes beyond 200 mL' };
	// Some leaflets go on into further fillings; what is left or marked cannot.
	const fillings = column !== 'usedMl' ? 1 : delivery.refilled ? 6 : 2;
	const high = delivery.capacityMl * fillings;
	const why =
		column === 'usedMl'
			? `${fillings === 2 ? 'Two' : 'Six'} fillings give between 0 and ${fewest(high)} mL`
			: `The scale runs from 0 to ${fewest(high)} mL`;
	return { what, low: 0, high, why };
}

/** Rows of the table that hold something. */
function rowsOfDraft(draft: KitDraft, delivery: Delivery, blanks: BlankReader) {
	const { low, high } = plausibleRange(draft.unit, draft.analyte);
	const name = unitName(draft.unit, draft.analyte);
	const value: Asked = {
		what: 'the value of this row',
		low: -low,
		high: 10 * high,
		why: `A leaflet’s values lie between ${fewest(-low)} and ${fewest(10 * high)} ${name}`
	};
	return draft.rows.flatMap((row, place): PlacedRow[] => {
		if (row.at.trim() === '' && row.value.trim() === '') return [];
		return [
			{
				place,
				at: blanks.number(`rows.${place}.at`, row.at, askedOfColumn(draft.column, delivery)),
				value: blanks.number(`rows.${place}.value`, row.value, value)
			}
		];
	});
}

/** A table needs two rows, and each mark once. */
function checkMarks(rows: readonly PlacedRow[], blanks: BlankReader): void {
	if (rows.length < 2)
		blanks.say(
			'rows',
			`A table needs two rows at least, so that values between can be found; found ${rows.length}.`
		);
	for (const [i, { place, at }] of rows.entries())
		if (rows.slice(0, i).some((other) => other.at === at))
			blanks.say(`rows.${place}.at`, `Another row stands at ${numberText(at)} already.`);
}

/** The more titrant, the higher the value; silent while a number or mark is wrong. */
function checkOrder(rows: readonly PlacedRow[], isGrowing: boolean, blanks: BlankReader): void {
	if (!rows.every(({ at, value }) => Number.isFinite(at) && Number.isFinite(value))) return;
	if (new Set(rows.map(({ at }) => at)).size < rows.length) return;
	const wrong = rowsOutOfOrder(rows, isGrowing);
	if (wrong === 'falling')
		blanks.say(
			'column',
			'By this the value falls as more titrant is used. Look what the first column counts, and where the 0 of the scale stands.'
		);
	else
		for (const i of wrong)
			blanks.say(
				`rows.${rows[i]?.place}.value`,
				'The value must grow as more titrant is used, and here it does not.'
			);
}

/** What the leaflet adds or takes off once: half a drop, a colour, never a good part of the value. */
function offsetOfDraft(draft: KitDraft, blanks: BlankReader): number {
	const most = plausibleRange(draft.unit, draft.analyte).low / 2;
	return blanks.number('offset', draft.offset, {
		what: 'what is added at the end',
		low: -most,
		high: most,
		why: `A leaflet adds or takes off ${fewest(most)} ${unitName(draft.unit, draft.analyte)} at most`
	});
}

/** How titrant becomes a value, from the blanks; what is wrong is noted with them. */
export function conversionOfDraft(
	draft: KitDraft,
	delivery: Delivery,
	blanks: BlankReader
): Conversion {
	const isDropper = draft.by === 'dropper';
	if (draft.kind === 'perMl') {
		if (isDropper)
			blanks.say('kind', 'A dropper has no scale: choose a value for each drop, or a table.');
		const valuePerMl = blanks.number('valuePerMl', draft.valuePerMl, asked.perMl);
		return { kind: 'perMl', valuePerMl, offset: offsetOfDraft(draft, blanks) };
	}
	if (draft.kind === 'perDrop') {
		const valuePerDrop = blanks.number('valuePerDrop', draft.valuePerDrop, asked.perDrop);
		return { kind: 'perDrop', valuePerDrop, offset: offsetOfDraft(draft, blanks) };
	}
	const { column } = draft;
	if (isDropper && (column === 'mark' || column === 'leftMl'))
		blanks.say('column', 'A dropper has no scale: choose drops or mL used.');
	const rows = rowsOfDraft(draft, delivery, blanks);
	checkMarks(rows, blanks);
	// Which way marks run is not known before somebody has looked at the scale.
	if (draft.by !== 'syringe' || draft.scale !== '' || column !== 'mark')
		checkOrder(rows, growsWithUse(delivery, column), blanks);
	const table = rows.map(({ at, value }) => ({ at, value }));
	const valueDecimals = decimalsTyped(rows.map(({ place }) => draft.rows[place]?.value ?? ''));
	const isSeen = 10 ** -valueDecimals > lastDigitOf(table.map(({ value }) => value)) - 1e-9;
	return { kind: 'rows', column, rows: table, ...(isSeen ? {} : { valueDecimals }) };
}

/** The most decimals in which any of these was typed, zeros and all. */
const decimalsTyped = (texts: readonly string[]): number =>
	Math.min(6, Math.max(0, ...texts.map((text) => /[.,](\d+)\s*$/.exec(text)?.[1]?.length ?? 0)));
