import { typedNumber, type TypedRange } from '$lib/kits';

/** A line that cannot be read: its number from 1, its text as it stands, and what is wrong with it. */
export type LineProblem = { lineNumber: number; text: string; problem: string };
export type TypedList<Row> = {
	rows: (Row & { lineNumber: number })[];
	problems: LineProblem[];
	/** The line of column names, if there was one. */
	header: string | null;
};

/** Most lines that are read: more than one hand titrates, and few enough to be worked out at once. */
const MOST_LINES = 200;

const hasDigit = (text: string) => /\d/u.test(text);
/** 'x ± y' is one column, however its sign is typed. */
const joined = (line: string) => line.replace(/\s*(±|\+\s*\/?\s*[-−–])\s*/gu, '±').trim();

/**
 * The columns of a line: parted by tab, semicolon, bar, spaces, a comma with a space, or by commas alone
 * where the line has decimal points. Null where a comma could be either.
 */
export function columnsOf(line: string): string[] | null {
	const whole = joined(line);
	const kept = (columns: readonly string[]) =>
		columns.map((column) => column.trim()).filter((column) => column !== '');
	if (/[\t;|]/u.test(whole)) return kept(whole.split(/[\t;|]/u));
	if (/,\s/u.test(whole)) return kept(whole.split(/,\s+/u));
	const spaced = kept(whole.split(/\s+/u));
	if (spaced.length !== 1 || !whole.includes(',')) return spaced;
	return whole.includes('.') ? kept(whole.split(',')) : null;
}

/** Names of columns: letters, and no digit anywhere. */
const isHeader = (line: string) => /\p{L}/u.test(line) && !hasDigit(line);

/**
 * A list typed or pasted, one row a line. Empty lines are passed over; the first may name the columns.
 * Nothing is guessed: a line that cannot be read comes back with its number and what is wrong.
 *
 * @param rowOf a row of its columns, or what is wrong in a sentence
 */
export function readList<Row extends object>(
	text: string,
	rowOf: (columns: readonly string[]) => Row | string
): TypedList<Row> {
	const lines = text
		.split(/\r\n|\n|\r/u)
		.map((line, i) => ({ text: line, lineNumber: i + 1 }))
		.filter((line) => line.text.trim() !== '');
	const header = lines[0] && isHeader(lines[0].text) ? lines[0].text : null;
	const found: TypedList<Row> = { rows: [], problems: [], header };
	for (const { text: line, lineNumber } of header === null ? lines : lines.slice(1)) {
		const columns = columnsOf(line);
		const row =
			found.rows.length >= MOST_LINES
				? `At most ${MOST_LINES} lines are read.`
				: columns
					? rowOf(columns)
					: 'It cannot be told which comma is a decimal sign. Put a space, a tab or a semicolon between the numbers.';
		if (typeof row === 'string') found.problems.push({ lineNumber, text: line, problem: row });
		else found.rows.push({ ...row, lineNumber });
	}
	return found;
}

/** One number of a line; what is wrong with it goes to `problems`, and NaN comes back. */
export function numberIn(
	text: string,
	what: string,
	range: TypedRange,
	problems: string[]
): number {
	const typed = typedNumber(text, what, range);
	if ('value' in typed) return typed.value;
	problems.push(`${what.charAt(0).toUpperCase()}${what.slice(1)}: ${typed.problem}`);
	return Number.NaN;
}

/** Finest step of numbers as they were typed: 0.1 for one decimal. */
export function stepOf(texts: readonly string[]): number {
	const decimals = texts.map((text) => /[.,](\d+)\s*$/u.exec(text.trim())?.[1]?.length ?? 0);
	return 10 ** -Math.max(0, ...decimals);
}
