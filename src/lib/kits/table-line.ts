/** A row of a leaflet's table. */
export type Row = { at: number; value: number };

export type TableLine = {
	slope: number;
	intercept: number;
	/** Rows that do not lie on it though the rest does, by their place from 0. */
	off: number[];
	/**
	 * 'straight': every row lies on one line, but for the rounding of print. 'withSlips': all but a
	 * few do, which are then likely typed or printed wrong. 'bent': no straight line holds them.
	 */
	shape: 'straight' | 'withSlips' | 'bent';
};

/** Last digit that a column is printed to: 0.01 where its longest number has two decimals. */
export function lastDigitOf(numbers: readonly number[]): number {
	const decimals = numbers.map((number) => {
		const [, part = ''] = String(Number(number.toFixed(6))).split('.');
		return part.length;
	});
	return 10 ** -Math.max(0, ...decimals);
}

const medianOf = (numbers: readonly number[]): number => {
	const sorted = [...numbers].sort((a, b) => a - b);
	const middle = Math.floor(sorted.length / 2);
	return sorted.length % 2 === 1
		? (sorted[middle] ?? Number.NaN)
		: ((sorted[middle - 1] ?? Number.NaN) + (sorted[middle] ?? Number.NaN)) / 2;
};

/** Whether most steps of a column are alike: then it was chosen, and the other one is rounded. */
function isEven(numbers: readonly number[]): boolean {
	const sorted = [...numbers].sort((a, b) => a - b);
	const steps = sorted.slice(1).map((number, i) => number - (sorted[i] ?? 0));
	const usual = medianOf(steps);
	return steps.filter((step) => Math.abs(step - usual) < 1e-9).length * 2 > steps.length;
}

/**
 * How far a row may lie from a line by the rounding of print alone: half of the last digit of its
 * value, and as much as half of the last digit of its mark makes where the marks are not the even
 * steps that somebody chose.
 */
function toleranceOf(rows: readonly Row[], slope: number): number {
	const marks = rows.map((row) => row.at);
	const markHalf = isEven(marks) ? 0 : lastDigitOf(marks) / 2;
	const valueHalf = lastDigitOf(rows.map((row) => row.value)) / 2;
	return (valueHalf + Math.abs(slope) * markHalf) * (1 + 1e-6) + 1e-9;
}

/** Slopes between all pairs of rows; their median is that of Theil (1950) and Sen (1968). */
const slopesOf = (rows: readonly Row[]): number[] =>
	rows.flatMap((a, i) =>
		rows.slice(i + 1).flatMap((b) => (a.at === b.at ? [] : [(b.value - a.value) / (b.at - a.at)]))
	);

/** Straight line of least squares. */
function bestLine(rows: readonly Row[]): { slope: number; intercept: number } {
	const meanAt = rows.reduce((sum, row) => sum + row.at, 0) / rows.length;
	const meanValue = rows.reduce((sum, row) => sum + row.value, 0) / rows.length;
	const sxx = rows.reduce((sum, row) => sum + (row.at - meanAt) ** 2, 0);
	const sxy = rows.reduce((sum, row) => sum + (row.at - meanAt) * (row.value - meanValue), 0);
	return { slope: sxy / sxx, intercept: meanValue - (sxy / sxx) * meanAt };
}

/** Half-width of the narrowest straight strip that holds all rows, measured along the value. */
function halfStrip(rows: readonly Row[]): number {
	const widthAt = (slope: number) => {
		const rests = rows.map((row) => row.value - slope * row.at);
		return Math.max(...rests) - Math.min(...rests);
	};
	const pairs = slopesOf(rows);
	let [low, high] = [Math.min(...pairs), Math.max(...pairs)];
	// The width has one lowest place: close in on it from both sides.
	for (let i = 0; i < 80; i++) {
		const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
		if (widthAt(a) <= widthAt(b)) high = b;
		else low = a;
	}
	return widthAt((low + high) / 2) / 2;
}

/** Of three rows any may be the wrong one; of four or more, a quarter may be. */
const slipsAllowed = (rows: number) => (rows < 4 ? 0 : Math.max(1, Math.floor(rows / 4)));

/**
 * The straight line on which a table's rows lie, and which do not. A first line goes through the
 * medians, which a few wrong rows do not move; rows are left out, the farthest from it first, until
 * the rest lies in a strip no wider than the rounding of print. The line is then the best of the rest.
 *
 * @param rows two or more at different marks, in any order
 */
export function lineOfTable(rows: readonly Row[]): TableLine {
	const slope = medianOf(slopesOf(rows));
	const intercept = medianOf(rows.map((row) => row.value - slope * row.at));
	const tolerance = toleranceOf(rows, slope);
	const nearestFirst = rows
		.map((row, i) => ({ row, i, distance: Math.abs(row.value - intercept - slope * row.at) }))
		.sort((a, b) => a.distance - b.distance);
	for (let slips = 0; slips <= slipsAllowed(rows.length); slips++) {
		const kept = nearestFirst.slice(0, rows.length - slips).map(({ row }) => row);
		if (halfStrip(kept) > tolerance) continue;
		const off = nearestFirst.slice(rows.length - slips).map(({ i }) => i);
		off.sort((a, b) => a - b);
		return { ...bestLine(kept), off, shape: slips === 0 ? 'straight' : 'withSlips' };
	}
	return { ...bestLine(rows), off: [], shape: 'bent' };
}
