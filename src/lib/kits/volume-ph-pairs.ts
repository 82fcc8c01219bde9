import { typedNumber } from './typed-number';

/** One reading of a pasted list. */
export type VolumePhPair = { addedMl: number; ph: number; lineNumber: number };

/** A line that could not be read: its number from 1, its text as it stands, and what is wrong with it. */
export type PairProblem = { lineNumber: number; text: string; problem: string };

export type VolumePhPairs = {
	pairs: VolumePhPair[];
	problems: PairProblem[];
	/** The line of column names, if there was one. */
	header: { lineNumber: number; text: string } | null;
	/** Whether pH stood in the first column, as the header said. */
	isPhFirst: boolean;
};

/** Whether a column could be a number at all: it has a digit in it. */
const hasDigit = (text: string) => /\d/u.test(text);
/** Units and names written beside a number. */
const BESIDE = /^(ml|ph)$|(?<=[\d.,\s])ml$|^ph\s*[:=]?\s*(?=[\d.,+-])/giu;
const stripped = (text: string) => text.trim().replace(BESIDE, '').trim();

const VOLUME = { low: 0, high: 1000, why: 'A volume lies between 0 and 1000 mL' };
const PH = { low: -1, high: 15, why: 'A pH lies between −1 and 15' };

const HOW = 'Put a tab, a semicolon or spaces between volume and pH.';

/** The columns of a line, or what keeps them from being told apart. */
function columnsOf(line: string, hasDecimalPoints: boolean): string[] | string {
	const kept = (columns: string[]) => columns.map(stripped).filter((column) => column !== '');
	if (/[\t;|]/u.test(line)) return kept(line.split(/[\t;|]/u));
	// A comma with a space after it parts columns, since no decimal sign has one.
	if (/,\s/u.test(line.trim())) return kept(line.trim().split(/,\s+/u));
	const spaced = kept(line.trim().split(/\s+/u));
	if (spaced.length !== 1) return spaced;
	const [only = ''] = spaced;
	const parts = only.split(',');
	if (parts.length === 1) return [only];
	if (parts.length === 4) return [`${parts[0]},${parts[1]}`, `${parts[2]},${parts[3]}`];
	if (parts.length === 2 && (hasDecimalPoints || only.includes('.'))) return parts;
	return `It cannot be told which comma is a decimal sign and which stands between volume and pH. ${HOW}`;
}

function pairOf(
	line: string,
	lineNumber: number,
	hasDecimalPoints: boolean,
	isPhFirst: boolean
): VolumePhPair | PairProblem {
	const problem = (text: string): PairProblem => ({ lineNumber, text: line, problem: text });
	const columns = columnsOf(line, hasDecimalPoints);
	if (typeof columns === 'string') return problem(columns);
	if (columns.length === 1) return problem(`Only one number was found, “${columns[0]}”. ${HOW}`);
	if (columns.length !== 2)
		return problem(
			columns.length === 0
				? `No number was found. ${HOW}`
				: `${columns.length} columns were found; there must be two, the volume and the pH.`
		);
	const [volumeText, phText] = isPhFirst ? [columns[1]!, columns[0]!] : [columns[0]!, columns[1]!];
	const volume = typedNumber(volumeText, 'the volume', VOLUME);
	if ('problem' in volume) return problem(`Volume: ${volume.problem}`);
	const ph = typedNumber(phText, 'the pH', PH);
	if ('problem' in ph) return problem(`pH: ${ph.problem}`);
	return { addedMl: volume.value, ph: ph.value, lineNumber };
}

/**
 * Volume of acid (mL, in all) and pH from pasted or typed lines, one reading a line. Columns may be
 * parted by tab, semicolon, bar, spaces or a comma; numbers have a decimal comma or point; 'mL' and
 * 'pH' beside a number do no harm. The first line may name the columns, in either order.
 *
 * Nothing is guessed and nothing lost: a line that cannot be read for certain comes back as a problem
 * with its number. Empty lines are passed over.
 */
export function parseVolumePhPairs(text: string): VolumePhPairs {
	const lines = text
		.split(/\r\n|\n|\r/u)
		.map((line, i) => ({ line, lineNumber: i + 1 }))
		.filter(({ line }) => line.trim() !== '');
	const [first] = lines;
	// A header names columns: letters, and no column that is a number.
	const isHeader =
		first !== undefined &&
		/\p{L}/u.test(first.line) &&
		first.line
			.split(/[\t;|]|,\s|\s+/u)
			.map(stripped)
			.every((column) => !hasDigit(column) || /^[^\d.,+-]/u.test(column));
	const header = isHeader ? { lineNumber: first.lineNumber, text: first.line } : null;
	const isPhFirst = header !== null && /^\W*ph\b/iu.test(header.text);
	const body = header ? lines.slice(1) : lines;
	const hasDecimalPoints = body.some(({ line }) => /\d\.\d/u.test(line));
	const read = body.map(({ line, lineNumber }) =>
		pairOf(line, lineNumber, hasDecimalPoints, isPhFirst)
	);
	return {
		pairs: read.filter((each) => 'ph' in each),
		problems: read.filter((each) => 'problem' in each),
		header,
		isPhFirst
	};
}
