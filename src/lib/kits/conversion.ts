import type { Conversion, Kit } from './kit';
import { columnFromUsed } from './table-column';
import { lastDigitOf, lineOfTable, type Row } from './table-line';

type Table = Extract<Conversion, { kind: 'rows' }>;

const byMark = (rows: readonly Row[]): Row[] => [...rows].sort((a, b) => a.at - b.at);

/** The two rows between which a mark lies; at an end, the two last. */
function rowsAround(sorted: readonly Row[], at: number): [Row, Row] {
	const found = sorted.findIndex((row) => row.at >= at - 1e-9);
	const upper = Math.max(1, found < 0 ? sorted.length - 1 : found);
	const [a, b] = [sorted[upper - 1], sorted[upper]];
	if (!a || !b) throw new RangeError(`conversion.rows must hold two rows; found ${sorted.length}`);
	return [a, b];
}

/**
 * Value by a table: on a straight line between the two rows on either side. Beyond its last row a
 * straight table goes on as straight as it was, from that row; one that bends tells nothing there.
 */
function byTable(rows: readonly Row[], at: number): { value: number; isBeyondTable: boolean } {
	const sorted = byMark(rows);
	const [a, b] = rowsAround(sorted, at);
	const isBeyondTable = at < Math.min(a.at, b.at) - 1e-9 || at > Math.max(a.at, b.at) + 1e-9;
	if (!isBeyondTable) {
		if (a.at === b.at) return { value: (a.value + b.value) / 2, isBeyondTable };
		return { value: a.value + ((b.value - a.value) * (at - a.at)) / (b.at - a.at), isBeyondTable };
	}
	const line = lineOfTable(rows);
	if (line.shape === 'bent') {
		const [first, last] = [sorted[0]?.at, sorted.at(-1)?.at];
		throw new RangeError(
			`the mark must lie in the leaflet's table, ${first} to ${last}, which bends and tells nothing beyond; found ${Number(at.toFixed(4))}`
		);
	}
	const end = at < a.at ? a : b;
	return { value: end.value + line.slope * (at - end.at), isBeyondTable };
}

/** Value for the nominal sample, in the kit's unit, of so much titrant. */
export function convertUsed(kit: Kit, usedMl: number): { value: number; isBeyondTable: boolean } {
	const { conversion, delivery } = kit;
	if (conversion.kind === 'perMl')
		return { value: usedMl * conversion.valuePerMl + conversion.offset, isBeyondTable: false };
	if (conversion.kind === 'perDrop') {
		const drops = usedMl / delivery.dropMl;
		return { value: drops * conversion.valuePerDrop + conversion.offset, isBeyondTable: false };
	}
	return byTable(conversion.rows, columnFromUsed(delivery, conversion.column, usedMl));
}

/** What one mL of titrant is worth about there, for the nominal sample. */
export function valuePerMlAt(kit: Kit, usedMl: number): number {
	const { conversion, delivery } = kit;
	if (conversion.kind === 'perMl') return conversion.valuePerMl;
	if (conversion.kind === 'perDrop') return conversion.valuePerDrop / delivery.dropMl;
	const perMl =
		columnFromUsed(delivery, conversion.column, 1) - columnFromUsed(delivery, conversion.column, 0);
	const at = columnFromUsed(delivery, conversion.column, usedMl);
	return slopeOfTable(conversion, at) * perMl;
}

/**
 * Slope of a table about a mark. Of a straight one, that of its line: between two neighbours the
 * rounding of print can be as large as their difference. Of one that bends, between the nearest rows
 * that lie at least five last digits apart.
 */
function slopeOfTable({ rows }: Table, at: number): number {
	const line = lineOfTable(rows);
	if (line.shape !== 'bent') return line.slope;
	const sorted = byMark(rows);
	const [a] = rowsAround(sorted, at);
	const enough = 5 * lastDigitOf(rows.map((row) => row.value)) - 1e-9;
	let from = sorted.indexOf(a);
	let to = from + 1;
	const riseOf = () => (sorted[to]?.value ?? 0) - (sorted[from]?.value ?? 0);
	while (Math.abs(riseOf()) < enough && (from > 0 || to < sorted.length - 1)) {
		from = Math.max(0, from - 1);
		to = Math.min(sorted.length - 1, to + 1);
	}
	return riseOf() / ((sorted[to]?.at ?? 0) - (sorted[from]?.at ?? 0));
}
