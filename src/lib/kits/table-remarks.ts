import type { Conversion, Delivery, Kit } from './kit';
import type { LeafletRemark } from './leaflet-remark';
import { columnFromUsed, growsWithUse, usedFromColumn, type Column } from './table-column';
import { lastDigitOf, lineOfTable, type Row, type TableLine } from './table-line';
import { rowsOutOfOrder } from './table-order';
import { numberText } from './typed-number';
import { plausibleRange, unitOf } from './units';

type Table = Extract<Conversion, { kind: 'rows' }>;
type Remark = Omit<LeafletRemark, 'about'>;

const columnWords: Record<Column, string> = {
	mark: 'mark',
	usedMl: 'mL used',
	leftMl: 'mL left',
	drops: 'drops'
};

/** 'row 5 (mark 0.6)', so that a row is found by its number and by what stands in it. */
const rowWords = (column: Column, rows: readonly Row[], i: number) =>
	`row ${i + 1} (${columnWords[column]} ${numberText(rows[i]?.at ?? 0)})`;

const listed = (words: readonly string[]) =>
	words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

function twice({ rows, column }: Table): Remark[] {
	const again = rows.flatMap((row, i) =>
		rows.findIndex((other) => other.at === row.at) < i ? [i] : []
	);
	if (again.length === 0) return [];
	const words = listed(again.map((i) => rowWords(column, rows, i)));
	return [
		{
			id: 'twice',
			tone: 'warn',
			text: `${capital(words)} ${again.length > 1 ? 'repeat marks' : 'repeats a mark'} that stands in the table already.`,
			rows: again.map((i) => i + 1)
		}
	];
}

function order({ rows, column }: Table, delivery: Delivery): Remark[] {
	const wrong = rowsOutOfOrder(rows, growsWithUse(delivery, column));
	if (wrong === 'falling')
		return [
			{
				id: 'falling',
				tone: 'warn',
				text: 'By this table the value falls as more titrant is used: check what its first column counts, and at which end the 0 stands.'
			}
		];
	if (wrong.length === 0) return [];
	const words = listed(wrong.map((i) => rowWords(column, rows, i)));
	return [
		{
			id: 'outOfOrder',
			tone: 'warn',
			text: `The value must grow with the titrant used; in ${words} it does not.`,
			rows: wrong.map((i) => i + 1)
		}
	];
}

function shape({ rows, column }: Table, line: TableLine): Remark[] {
	if (line.shape === 'bent')
		return [
			{
				id: 'bends',
				tone: 'say',
				text: 'The rows lie on no one straight line. If the leaflet bends so, it is read between its rows; if not, look for a slip.'
			}
		];
	if (line.shape === 'straight')
		return rows.length < 3
			? []
			: [{ id: 'line', tone: 'say', text: `All ${rows.length} rows lie on one straight line.` }];
	const decimals = Math.round(-Math.log10(lastDigitOf(rows.map(({ value }) => value))));
	return line.off.map((i): Remark => {
		const { at, value } = rows[i] ?? { at: 0, value: 0 };
		const there = numberText(Number((line.intercept + line.slope * at).toFixed(decimals)));
		return {
			id: 'rowOff',
			tone: 'warn',
			text: `${capital(rowWords(column, rows, i))} says ${numberText(value)}; the other rows put ${there} there.`,
			rows: [i + 1]
		};
	});
}

/** A table that ends while the scale goes on. */
function end({ rows, column }: Table, delivery: Delivery, line: TableLine): Remark[] {
	if (delivery.by === 'dropper') return [];
	const lastUsedMl = Math.max(...rows.map(({ at }) => usedFromColumn(delivery, column, at)));
	if (lastUsedMl > delivery.capacityMl - delivery.graduationMl) return [];
	const at = numberText(Number(columnFromUsed(delivery, column, lastUsedMl).toPrecision(6)));
	return [
		{
			id: 'tableEnds',
			tone: 'say',
			text: `The table ends at ${columnWords[column]} ${at}, before the ${delivery.by} does. ${
				line.shape === 'bent'
					? 'As it bends, a mark beyond has no value.'
					: 'Beyond, the value goes on as straight as the table.'
			}`
		}
	];
}

/** What the line makes of no titrant at all. */
function start(kit: Kit, { column }: Table, line: TableLine): Remark[] {
	const { name, decimals } = unitOf(kit.unit, kit.analyte);
	const value = line.intercept + line.slope * columnFromUsed(kit.delivery, column, 0);
	if (Math.abs(value) <= plausibleRange(kit.unit, kit.analyte).low / 2) return [];
	return [
		{
			id: 'startValue',
			tone: 'warn',
			text: `By this table no titrant at all would mean ${numberText(Number(value.toFixed(decimals)))} ${name}: check what its first column counts, and the capacity.`
		}
	];
}

/** What is to be said of a leaflet's table; nothing when it has none. */
export function tableRemarks(kit: Kit): LeafletRemark[] {
	const { conversion, delivery } = kit;
	if (conversion.kind !== 'rows') return [];
	const about = (remarks: readonly Remark[]): LeafletRemark[] =>
		remarks.map((remark) => ({ ...remark, about: 'conversion' }));
	const wrong = [...twice(conversion), ...order(conversion, delivery)];
	const marks = new Set(conversion.rows.map(({ at }) => at));
	if (marks.size < 2 || wrong.some(({ id }) => id === 'falling')) return about(wrong);
	const line = lineOfTable(conversion.rows);
	return about([
		...wrong,
		...shape(conversion, line),
		...end(conversion, delivery, line),
		...start(kit, conversion, line)
	]);
}
