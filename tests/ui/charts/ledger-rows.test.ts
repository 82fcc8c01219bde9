import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Ledger, LedgerLine } from '../../../src/lib/bench';
import { ledgerRows } from '../../../src/lib/ui/charts/ledger-rows';

const slipLine = (kind: 'mixedMarks' | 'overshot', amount: number): LedgerLine => ({
	id: `slip-${kind}`,
	kind: 'slip',
	slip: { kind, nature: 'handling', entryId: 'e1', provisional: false },
	amount
});
const ledger = (reported: number, lines: LedgerLine[]): Ledger => ({
	reported,
	trueValue: reported - lines.reduce((sum, line) => sum + line.amount, 0),
	unit: 'dKH',
	analyte: 'alkalinity',
	lines
});
const named = (kind: string) => `name of ${kind}`;
const tenths = (value: number) => Math.round(value * 10);

describe('ledgerRows', () => {
	test('printed rows add up to the printed difference of the printed values', () => {
		fc.assert(
			fc.property(
				fc.double({ min: 2, max: 14, noNaN: true }),
				fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 4, maxLength: 4 }),
				(reported, [a = 0, b = 0, c = 0, d = 0]) => {
					const rows = ledgerRows(
						ledger(reported, [
							slipLine('mixedMarks', a),
							slipLine('overshot', b),
							{ id: 'method', kind: 'method', amount: c },
							{ id: 'unnamed', kind: 'unnamed', amount: d }
						]),
						named,
						null
					);
					const sum = rows.rows.reduce((all, row) => all + tenths(row.printed), 0);
					expect(sum).toBe(tenths(rows.printedTotal));
					expect(tenths(rows.printedReported) - tenths(rows.printedTrue)).toBe(sum);
				}
			)
		);
	});

	test('slips come first, the largest on top; what comes to less than a tenth has no bar', () => {
		const { rows, without } = ledgerRows(
			ledger(7.1, [
				{ id: 'method', kind: 'method', amount: 0.5 },
				slipLine('overshot', 0.01),
				slipLine('mixedMarks', -1.9)
			]),
			named,
			'mixedMarks'
		);
		expect(rows.map((row) => row.id)).toEqual(['slip-mixedMarks', 'method']);
		expect(rows[0]).toMatchObject({ isNext: true, label: 'name of mixedMarks', printed: -1.9 });
		expect(without).toEqual(['name of overshot']);
	});

	test('a stop away from the end says which way it was, and is never called as fine as it goes', () => {
		const rowOf = (stop: 'late' | 'early', amount: number) =>
			ledgerRows(ledger(8, [{ id: 'eye', kind: 'eye', stop, amount }]), named, null).rows[0];
		expect(rowOf('late', 1.2)).toMatchObject({ label: 'Went on past the end', group: 'your eyes' });
		expect(rowOf('early', -1.2)?.label).toBe('Stopped short of the end');
		const fine = ledgerRows(
			ledger(8, [{ id: 'resolution', kind: 'resolution', amount: 0.2 }]),
			named,
			null
		);
		expect(fine.rows[0]?.group).toBe('as fine as it goes');
	});

	test('bars stay inside the picture, negative ones left of zero', () => {
		const { rows, zero } = ledgerRows(
			ledger(7, [slipLine('mixedMarks', -1.9), slipLine('overshot', 0.4)]),
			named,
			null
		);
		const [low, high] = rows;
		expect(low?.to).toBeCloseTo(zero, 9);
		expect(low?.from).toBeGreaterThanOrEqual(0);
		expect(high?.from).toBeCloseTo(zero, 9);
		expect(high?.to).toBeLessThanOrEqual(1 + 1e-9);
	});

	test('a tenth of a degree does not fill the picture', () => {
		const { rows } = ledgerRows(ledger(8, [slipLine('overshot', 0.1)]), named, null);
		expect((rows[0]?.to ?? 1) - (rows[0]?.from ?? 0)).toBeCloseTo(0.1, 6);
	});
});
