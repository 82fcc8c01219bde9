import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** Rows of tables, each run of them by itself. */
function tablesOf(text: string): string[][] {
	const tables: string[][] = [];
	let isIn = false;
	for (const line of text.split('\n')) {
		if (!line.startsWith('|')) isIn = false;
		else if (isIn) tables.at(-1)!.push(line);
		else {
			tables.push([line]);
			isIn = true;
		}
	}
	return tables;
}
const cellsOf = (row: string) => row.split(/(?<!\\)\|/).length;

describe('tables', () => {
	it('of the README have as many cells in every row as in the head', () => {
		const tables = tablesOf(readFileSync('README.md', 'utf8'));
		expect(tables.length).toBeGreaterThan(0);
		for (const [head = '', ...rows] of tables)
			for (const row of rows) expect(`${cellsOf(row)}: ${row}`).toBe(`${cellsOf(head)}: ${row}`);
	});
});
