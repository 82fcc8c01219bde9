import { describe, expect, test } from 'vitest';
import { pastedRows } from '../../../src/lib/ui/kits/pasted-rows';

const rows = [
	{ at: '1,0', value: '0,5' },
	{ at: '0,5', value: '8,2' }
];

describe('two columns pasted from a text', () => {
	test.each([
		['tabs', '1,0\t0,5\n0,5\t8,2'],
		['semicolons', '1,0;0,5\r\n0,5 ; 8,2\r\n'],
		['spaces', '  1,0   0,5\n0,5 8,2  '],
		['bars', '1,0 | 0,5\n\n0,5 | 8,2'],
		['a comma and a space', '1,0, 0,5\n0,5, 8,2']
	])('parted by %s, with commas as decimals', (_, text) => {
		expect(pastedRows(text)).toEqual({ rows, leftOver: [] });
	});
	test('a comma parts where points are the decimals', () => {
		expect(pastedRows('1.0,0.5\n0,7.5\n0.5,8').rows).toEqual([
			{ at: '1.0', value: '0.5' },
			{ at: '0', value: '7.5' },
			{ at: '0.5', value: '8' }
		]);
	});
	test('a heading, a unit and a third column do not get in the way, and what is left over is told', () => {
		expect(pastedRows('mark mL\tdKH\n1,0\t0,5\t9\n0,5\t8,2\n0,3')).toEqual({
			rows,
			leftOver: ['mark mL\tdKH', '0,3']
		});
	});
	test('minus signs of every kind stay', () => {
		expect(pastedRows('1 -0,3\n0,9 −0,1').rows.map((row) => row.value)).toEqual(['-0,3', '−0,1']);
	});
});
