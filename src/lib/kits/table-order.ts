import type { Row } from './table-line';

/**
 * Which rows break the order that every table has: the more titrant, the higher the value. Of rows
 * that disagree, as few as possible are named.
 *
 * @param isGrowing whether the first column grows as titrant is used
 * @returns places of the rows, from 0; 'falling' when the table as a whole runs the other way
 */
export function rowsOutOfOrder(rows: readonly Row[], isGrowing: boolean): number[] | 'falling' {
	const sorted = rows.map((row, place) => ({ ...row, place }));
	sorted.sort((a, b) => (isGrowing ? a.at - b.at : b.at - a.at));
	const rising = longestRise(sorted);
	const falling = longestRise(sorted.map((row) => ({ ...row, value: -row.value })));
	if (rows.length > 1 && falling.length > rising.length) return 'falling';
	return sorted
		.flatMap(({ place }) => (rising.includes(place) ? [] : [place]))
		.sort((a, b) => a - b);
}

/** Places of the longest run of rows, in their order, in which each value is higher than the last. */
function longestRise(sorted: readonly { value: number; place: number }[]): number[] {
	const runs: { value: number; places: number[] }[] = [];
	for (const { value, place } of sorted) {
		const before = runs
			.filter((run) => run.value < value)
			.reduce<number[]>((best, run) => (run.places.length > best.length ? run.places : best), []);
		runs.push({ value, places: [...before, place] });
	}
	return runs.reduce<number[]>(
		(best, run) => (run.places.length > best.length ? run.places : best),
		[]
	);
}
