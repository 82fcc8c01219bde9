import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lastDigitOf, lineOfTable } from '../../src/lib/kits/table-line';
import { rowsOutOfOrder } from '../../src/lib/kits/table-order';

const round = (value: number, decimals: number) => Number(value.toFixed(decimals));
/** Ten rows of a made-up table, 16 per mL less 0.3, printed to so many decimals. */
const table = (decimals: number) =>
	[0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9].map((at) => ({
		at,
		value: round(15.7 - 16 * at, decimals)
	}));

describe('the line of a table', () => {
	it('goes through all rows of a straight one, and gives its slope', () => {
		const line = lineOfTable(table(2));
		expect(line).toMatchObject({ shape: 'straight', off: [] });
		expect(line.slope).toBeCloseTo(-16, 9);
		expect(line.intercept).toBeCloseTo(15.7, 9);
	});

	it('takes the rounding of print for no slip, however the values fall', () => {
		const straight = fc.record({
			slope: fc.double({ min: 1, max: 40, noNaN: true }),
			intercept: fc.double({ min: -1, max: 1, noNaN: true }),
			decimals: fc.integer({ min: 0, max: 2 }),
			rows: fc.integer({ min: 3, max: 30 })
		});
		fc.assert(
			fc.property(straight, ({ slope, intercept, decimals, rows }) => {
				const printed = Array.from({ length: rows }, (_, i) => ({
					at: round(i / 20, 2),
					value: round(intercept + slope * (i / 20), decimals)
				}));
				expect(lineOfTable(printed).shape).toBe('straight');
			}),
			{ numRuns: 300 }
		);
	});

	it('takes marks that were rounded for round values as rounded', () => {
		// 16 per mL, a row for each whole value; the mark to two decimals.
		const rows = [1, 2, 3, 4, 5, 6, 7, 8].map((value) => ({ at: round(1 - value / 16, 2), value }));
		expect(lineOfTable(rows).shape).toBe('straight');
	});

	it('names the one row, wherever it is, that says something else by two last digits or more', () => {
		fc.assert(
			fc.property(
				fc.nat({ max: 9 }),
				fc.integer({ min: 2, max: 200 }),
				fc.boolean(),
				(place, digits, isMore) => {
					const rows = table(1).map((row, i) =>
						i === place ? { ...row, value: row.value + (isMore ? 1 : -1) * digits * 0.1 } : row
					);
					const line = lineOfTable(rows);
					expect(line).toMatchObject({ shape: 'withSlips', off: [place] });
					expect(line.slope).toBeCloseTo(-16, 1);
				}
			)
		);
	});

	it('names two of nine, and a mark that was mistyped as well', () => {
		const rows = table(2).map((row, i) =>
			i === 2 ? { ...row, value: 21.5 } : i === 6 ? { ...row, at: 0.66 } : row
		);
		expect(lineOfTable(rows)).toMatchObject({ shape: 'withSlips', off: [2, 6] });
	});

	it('calls a bend a bend, and blames no one of three', () => {
		const bent = [0, 0.2, 0.4, 0.6, 0.8, 1].map((at) => ({ at, value: round(20 * at * at, 1) }));
		expect(lineOfTable(bent)).toMatchObject({ shape: 'bent', off: [] });
		const three = [0, 0.5, 1].map((at, i) => ({ at, value: [0, 6, 16][i] ?? 0 }));
		expect(lineOfTable(three)).toMatchObject({ shape: 'bent', off: [] });
	});

	it('is the same in whatever order the rows stand', () => {
		fc.assert(
			fc.property(fc.shuffledSubarray(table(1), { minLength: 10 }), (rows) => {
				expect(lineOfTable(rows).slope).toBeCloseTo(lineOfTable(table(1)).slope, 9);
			})
		);
	});

	it('knows the last digit that is printed', () => {
		expect(lastDigitOf([1, 0.5, 0.25])).toBe(0.01);
		expect(lastDigitOf([15.7, 3, 4.6])).toBe(0.1);
		expect(lastDigitOf([10, 20])).toBe(1);
		expect(lastDigitOf([1 / 3])).toBe(1e-6);
	});
});

describe('the order of a table', () => {
	const rising = [1, 2, 3, 4].map((at) => ({ at, value: 2 * at }));
	it('holds when the value grows with what is used', () => {
		expect(rowsOutOfOrder(rising, true)).toEqual([]);
		expect(rowsOutOfOrder([...rising].reverse(), true)).toEqual([]);
	});
	it('is told as falling when the column runs the other way', () => {
		expect(rowsOutOfOrder(rising, false)).toBe('falling');
	});
	it('names as few rows as break it, by their place', () => {
		const rows = [
			{ at: 3, value: 60 },
			{ at: 1, value: 2 },
			{ at: 2, value: 4 },
			{ at: 4, value: 8 },
			{ at: 5, value: 10 }
		];
		expect(rowsOutOfOrder(rows, true)).toEqual([0]);
	});
	it('does not hold where two rows say the same', () => {
		expect(rowsOutOfOrder([...rising, { at: 5, value: 8 }], true)).toHaveLength(1);
	});
});
