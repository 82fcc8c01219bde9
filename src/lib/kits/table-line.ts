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

const FINEST_DECIMALS = 6;

/** Last digit that a column is printed to: 0.01 where its longest number has two decimals. */
export function lastDigitOf(numbers: readonly number[]): number {
	for (let decimals = 0; decimals < FINEST_DECIMALS; decimals++) {
		const scale = 10 ** decimals;
		const isWhole = (number: number) =>
			Math.abs(number * scale - Math.round(number * scale)) < 1e-6;
		if (numbers.every(isWhole)) return 1 / scale;
	}
	return 10 ** -FINEST_DECIMALS;
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

/** Slopes from each row to the next, by mark. */
const slopesBetween = (rows: readonly Row[]): number[] => {
	const sorted = [...rows].sort((a, b) => a.at - b.at);
	return sorted.slice(1).flatMap((row, i) => slopesOf([sorted[i] ?? row, row]));
};

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
		let [least, most] = [Infinity, -Infinity];
		for (const row of rows) {
			const rest = row.value - slope * row.at;
			if (rest < least) least = rest;
			if (rest > most) most = rest;
		}
		return most - least;
	};
	// The steepest and the flattest of all pairs are neighbours.
	const steps = slopesBetween(rows);
	let [low, high] = [Math.min(...steps), Math.max(...steps)];
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

const distanceFrom = (line: { slope: number; intercept: number }, row: Row) =>
	Math.abs(row.value - line.intercept - line.slope * row.at);

/** Whether all rows lie on one line but for the rounding of print. */
function isStraight(rows: readonly Row[], line: { slope: number; intercept: number }): boolean {
	const tolerance = toleranceOf(rows, line.slope);
	return rows.every((row) => distanceFrom(line, row) <= tolerance) || halfStrip(rows) <= tolerance;
}

/**
 * The straight line on which a table's rows lie, and which do not. Where they do not all lie on one
 * but for the rounding of print, a line goes through the medians, which a few wrong rows do not move,
 * and rows are left out, the farthest from it first, until the rest does.
 *
 * @param rows two or more at different marks, in any order
 */
export function lineOfTable(rows: readonly Row[]): TableLine {
	const whole = bestLine(rows);
	if (isStraight(rows, whole)) return { ...whole, off: [], shape: 'straight' };
	const slope = medianOf(slopesOf(rows));
	const median = { slope, intercept: medianOf(rows.map((row) => row.value - slope * row.at)) };
	const nearestFirst = rows
		.map((row, i) => ({ row, i, distance: distanceFrom(median, row) }))
		.sort((a, b) => a.distance - b.distance);
	for (let slips = 1; slips <= slipsAllowed(rows.length); slips++) {
		const kept = nearestFirst.slice(0, rows.length - slips).map(({ row }) => row);
		const line = bestLine(kept);
		if (!isStraight(kept, line)) continue;
		const off = nearestFirst.slice(rows.length - slips).map(({ i }) => i);
		return { ...line, off: off.sort((a, b) => a - b), shape: 'withSlips' };
	}
	return { ...whole, off: [], shape: 'bent' };
}
