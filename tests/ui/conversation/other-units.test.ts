import { expect, test } from 'vitest';
import { otherUnitsOf } from '../../../src/lib/ui/conversation/other-units';

const sum = 'calcium and magnesium together';
const valueOf = (rows: ReturnType<typeof otherUnitsOf>, name: string) =>
	rows.find((each) => each.name === name)?.value;

test('64 mmol/L may be the sum: 10.48 of calcium off it leave 53.5', () => {
	// 420 mg/L over 40.078 g/mol, by hand.
	const rows = otherUnitsOf(
		{ value: 64, expandedUncertainty: 0.6, unit: 'mmol/L' },
		'mmol/L',
		'magnesium'
	);
	expect(Number(valueOf(rows, sum))).toBeCloseTo(64 - 420 / 40.078, 1);
});
test('in mg/L the calcium counts mole for mole', () => {
	const rows = otherUnitsOf(
		{ value: 1555, expandedUncertainty: 40, unit: 'mg/L' },
		'mg/L',
		'magnesium'
	);
	expect(Math.abs(Number(valueOf(rows, sum)) - (1555 - (420 * 24.305) / 40.078))).toBeLessThan(6);
});
test('nothing is taken off calcium or alkalinity, nor more than there is', () => {
	for (const [analyte, unit] of [
		['calcium', 'mg/L'],
		['alkalinity', 'dKH']
	] as const)
		expect(
			valueOf(otherUnitsOf({ value: 420, expandedUncertainty: 9, unit }, unit, analyte), sum)
		).toBeUndefined();
	expect(
		valueOf(
			otherUnitsOf({ value: 8, expandedUncertainty: 1, unit: 'mmol/L' }, 'mmol/L', 'magnesium'),
			sum
		)
	).toBeUndefined();
});
test('a number meant in another unit, by its definition: 7 meq/L are 19.6 dKH', () => {
	const rows = otherUnitsOf(
		{ value: 7, expandedUncertainty: 0.5, unit: 'dKH' },
		'dKH',
		'alkalinity'
	);
	expect(Number(valueOf(rows, 'meq/L'))).toBeCloseTo(7 * 2.804, 1);
	expect(rows.map(({ name }) => name)).not.toContain('dKH');
});
