import { extent } from 'd3-array';
import { scaleLinear } from 'd3-scale';

/** One reading of the picture. */
export type LineReading = {
	id: string;
	label: string;
	value: number;
	/** Half-width of the band, about 95 %; null for a value taken as exact. */
	expandedUncertainty: number | null;
	/** Circle: a drop titration; square: another method; cross: what it was. */
	shape: 'circle' | 'square' | 'cross';
	/** Drawn hollow: nothing vouches for it yet. */
	isUncertain: boolean;
	/** What the solution is said to hold, where the reading is of a known one. */
	nominal?: { value: number; expandedUncertainty: number };
};

export type ReadingRow = LineReading & {
	/** Places across, px. */
	x: number;
	low: number;
	high: number;
	nominalX: number | null;
	nominalLow: number;
	nominalHigh: number;
};

export type ReadingsLine = {
	rows: ReadingRow[];
	ticks: { value: number; x: number }[];
	/** Place of any other value on the axis, px. */
	xOf: (value: number) => number;
};

/**
 * Lays out readings on one axis that covers every band. The axis follows the readings alone, so it
 * tells nothing of what is not among them.
 *
 * @param width of the axis, px
 * @param inset kept free at both ends for marks, px
 * @param leastSpan the axis is at least so wide: a difference of a last digit must not fill the page
 */
export function readingsLine(
	readings: readonly LineReading[],
	width: number,
	inset = 12,
	leastSpan = 1
): ReadingsLine {
	const ends = readings.flatMap(({ value, expandedUncertainty, nominal }) => [
		value - (expandedUncertainty ?? 0),
		value + (expandedUncertainty ?? 0),
		...(nominal
			? [nominal.value - nominal.expandedUncertainty, nominal.value + nominal.expandedUncertainty]
			: [])
	]);
	const [low = 0, high = 1] = extent(ends);
	const spare = Math.max(0, leastSpan - (high - low)) / 2;
	const x = scaleLinear()
		.domain([low - spare, high + spare])
		.nice(5)
		.range([inset, Math.max(inset + 1, width - inset)]);
	const rows = readings.map((reading): ReadingRow => {
		const { value, nominal } = reading;
		const band = reading.expandedUncertainty ?? 0;
		return {
			...reading,
			x: x(value),
			low: x(value - band),
			high: x(value + band),
			nominalX: nominal ? x(nominal.value) : null,
			nominalLow: nominal ? x(nominal.value - nominal.expandedUncertainty) : 0,
			nominalHigh: nominal ? x(nominal.value + nominal.expandedUncertainty) : 0
		};
	});
	const count = Math.max(2, Math.min(7, Math.floor(width / 64)));
	return { rows, ticks: x.ticks(count).map((value) => ({ value, x: x(value) })), xOf: x };
}
