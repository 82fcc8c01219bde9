import { numberIn, readList, stepOf, type LineProblem } from './typed-list';

/** One sample measured both ways, in one unit. */
export type MeasuredPair = {
	own: number;
	other: number;
	/** What each claims, about 19 times in 20; absent where nothing was said. */
	ownU?: number;
	otherU?: number;
	lineNumber: number;
};
export type PairsTyped = {
	pairs: MeasuredPair[];
	problems: LineProblem[];
	/** Finest step of the values of each as typed. */
	ownStep: number;
	otherStep: number;
};

const VALUE = { low: 0, high: 10_000, why: 'A value lies between 0 and 10 000' };
const PLUS_MINUS = { low: 1e-6, high: 10_000, why: 'A ± lies above 0' };
const TWO = 'Put two values in a line: your kit, then the other method.';
const FOUR =
	'In four columns both values stand first and both ± behind them, like 7.4 7.9 0.4 0.3. Or write 7.4 ± 0.4; 7.9 ± 0.3.';

type Cell = { value: string; plusMinus: string | undefined };
function cellOf(text: string): Cell {
	const [value = '', plusMinus] = text.split('±');
	return { value, plusMinus };
}

/** Both values with their ±, as texts; or what is wrong with the columns. */
function cellsOf(columns: readonly string[]): [own: Cell, other: Cell] | string {
	const cells = columns.map(cellOf);
	const [own, other, third, fourth] = cells;
	if (!own || !other)
		return columns.length === 0 ? TWO : `Only one value was found, “${columns[0]}”. ${TWO}`;
	if (cells.length === 2) return [own, other];
	if (!third || !fourth || cells.length > 4)
		return `${cells.length} columns were found. ${cells.length === 3 ? FOUR : TWO}`;
	if (cells.some(({ plusMinus }) => plusMinus !== undefined)) return FOUR;
	return [
		{ ...own, plusMinus: third.value },
		{ ...other, plusMinus: fourth.value }
	];
}

function pairOf(columns: readonly string[]) {
	const cells = cellsOf(columns);
	if (typeof cells === 'string') return cells;
	const problems: string[] = [];
	const read = ({ value, plusMinus }: Cell, of: string) => ({
		value: numberIn(value, of, VALUE, problems),
		u: plusMinus === undefined ? undefined : numberIn(plusMinus, `± of ${of}`, PLUS_MINUS, problems)
	});
	const own = read(cells[0], 'your kit');
	const other = read(cells[1], 'the other');
	if (problems[0] !== undefined) return problems[0];
	// Four columns in another order would be read without a word: a ± is hardly ever half of its value.
	const isOdd = ({ value, u }: { value: number; u: number | undefined }) => (u ?? 0) > value / 2;
	if (columns.length === 4 && (isOdd(own) || isOdd(other))) return FOUR;
	return {
		own: own.value,
		other: other.value,
		...(own.u === undefined ? {} : { ownU: own.u }),
		...(other.u === undefined ? {} : { otherU: other.u }),
		texts: [cells[0].value, cells[1].value] as const
	};
}

/** Samples measured both ways, one a line: two values, each with its ± where that is known. */
export function parsePairs(text: string): PairsTyped {
	const { rows, problems } = readList(text, pairOf);
	return {
		pairs: rows.map(({ texts: _texts, ...pair }) => pair),
		problems,
		ownStep: stepOf(rows.map(({ texts }) => texts[0])),
		otherStep: stepOf(rows.map(({ texts }) => texts[1]))
	};
}

/** A value as it stands in a line of the list. */
export const cellText = (value: string, plusMinus: string): string =>
	plusMinus.trim() === '' ? value.trim() : `${value.trim()} ± ${plusMinus.trim()}`;
