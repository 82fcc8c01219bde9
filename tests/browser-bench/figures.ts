/** A value below which so much of all values lies. @param share from 0 to 1 */
export function quantile(values: readonly number[], share: number): number {
	const sorted = [...values].sort((a, b) => a - b);
	const at = (sorted.length - 1) * share;
	const below = sorted[Math.floor(at)] ?? Number.NaN;
	const above = sorted[Math.ceil(at)] ?? Number.NaN;
	return below + (above - below) * (at - Math.floor(at));
}
export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Prints rows under their headings; the first column holds words, the others figures. */
export function printTable(title: string, headings: readonly string[], rows: string[][]): void {
	const all = [[...headings], ...rows];
	const widths = headings.map((_, i) => Math.max(...all.map((row) => row[i]?.length ?? 0)));
	const lines = all.map((row) =>
		row
			.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
			.join('  ')
	);
	console.log(`\n${title}\n${lines.join('\n')}\n`);
}
