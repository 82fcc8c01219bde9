import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readingsLine, type LineReading } from '../../../src/lib/ui/charts/readings-line';

const reading = (value: number, expandedUncertainty: number | null, id = 'a'): LineReading => ({
	id,
	label: 'Test',
	value,
	expandedUncertainty,
	shape: 'circle',
	isUncertain: false
});

describe('readingsLine', () => {
	test('every band lies on the axis, for any readings', () => {
		fc.assert(
			fc.property(
				fc.array(
					fc.record({
						value: fc.double({ min: -2, max: 40, noNaN: true }),
						band: fc.double({ min: 0, max: 5, noNaN: true })
					}),
					{ minLength: 1, maxLength: 8 }
				),
				fc.integer({ min: 120, max: 800 }),
				(readings, width) => {
					const { rows } = readingsLine(
						readings.map(({ value, band }, i) => reading(value, band, String(i))),
						width
					);
					for (const row of rows) {
						expect(row.low).toBeGreaterThanOrEqual(0);
						expect(row.high).toBeLessThanOrEqual(width);
						expect(row.low).toBeLessThanOrEqual(row.x);
						expect(row.x).toBeLessThanOrEqual(row.high);
					}
				}
			)
		);
	});

	test('a difference of a tenth does not fill the page: the axis is at least one unit wide', () => {
		const { rows } = readingsLine([reading(8, 0, 'a'), reading(8.1, 0, 'b')], 300, 0);
		const [a, b] = rows;
		expect((b?.x ?? 0) - (a?.x ?? 0)).toBeLessThanOrEqual(30 + 1e-6);
		expect((b?.x ?? 0) - (a?.x ?? 0)).toBeGreaterThan(0);
	});

	test('what a solution is said to hold is on the axis as well', () => {
		const known = { ...reading(7.8, 0.3), nominal: { value: 9.5, expandedUncertainty: 0.2 } };
		const { rows, xOf } = readingsLine([known], 300);
		expect(rows[0]?.nominalX).toBeCloseTo(xOf(9.5), 9);
		expect(rows[0]?.nominalHigh).toBeLessThanOrEqual(300);
	});

	test('no readings give an empty picture', () => {
		expect(readingsLine([], 300).rows).toEqual([]);
	});
});
