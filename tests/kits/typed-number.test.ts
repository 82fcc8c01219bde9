import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberText, typedNumber } from '../../src/lib/kits';

const range = { low: -5, high: 1.24, why: 'The scale runs from −5 to 1.24' };
const anything = { low: -Infinity, high: Infinity, why: 'Any number' };

describe('a typed number', () => {
	test.each([
		['0.42', 0.42],
		['0,42', 0.42],
		[' 1 ', 1],
		['.5', 0.5],
		[',5', 0.5],
		['1,', 1],
		['0', 0],
		['+0,3', 0.3],
		['-0.3', -0.3],
		['−0,3', -0.3],
		['− 0.3', -0.3],
		['\u00a00,42\u202f', 0.42],
		['\u2009-\u20090.42', -0.42],
		['1,234', 1.234]
	])('%j is %f', (text, value) => {
		expect(typedNumber(text, 'the numeral', range)).toEqual({ value });
	});

	test('never is minus nought', () => {
		expect(typedNumber('-0', 'the numeral', range)).toEqual({ value: 0 });
	});

	test.each(['', '  ', 'abc', '1e3', '−', '+', ',', '.', '1.3', '-5.01', 'NaN', 'Infinity', '--1'])(
		'%j is refused, and what is wrong is said',
		(text) => {
			const typed = typedNumber(text, 'the numeral', range);
			expect('problem' in typed && typed.problem.length).toBeGreaterThan(10);
		}
	);

	test.each([
		'1.234,5',
		'1,234.5',
		'1 234',
		'1\u202f234,5',
		'1\u00a0234',
		"1'234.5",
		'1,234,567',
		'0.4.2'
	])('%j parts its thousands: refused, never guessed', (text) => {
		expect(typedNumber(text, 'the value', anything)).toEqual({
			problem: expect.stringContaining('between thousands') as string
		});
	});

	test('out of range is answered with the reason and what was found, as it was typed', () => {
		expect(typedNumber(' 1,3 ', 'the numeral', range)).toEqual({
			problem: 'The scale runs from −5 to 1.24; found 1,3.'
		});
		expect(typedNumber('', 'the numeral', range)).toEqual({ problem: 'Type the numeral here.' });
	});

	test('both ends belong to the range', () => {
		expect(typedNumber('1,24', 'the numeral', range)).toEqual({ value: 1.24 });
		expect(typedNumber('-5', 'the numeral', range)).toEqual({ value: -5 });
	});
});

const finite = fc.double({ noNaN: true, noDefaultInfinity: true }).map((n) => (n === 0 ? 0 : n));

describe('any text and any number', () => {
	test('a number written out is read back the same, with comma or point', () => {
		fc.assert(
			fc.property(finite, fc.constantFrom('.' as const, ',' as const), (value, sign) => {
				expect(typedNumber(numberText(value, sign), 'it', anything)).toEqual({ value });
			})
		);
	});

	test('written out it has no exponent and at most one decimal sign', () => {
		expect(numberText(1e-7)).toBe('0.0000001');
		expect(numberText(-1.25e21, ',')).toBe('−1250000000000000000000');
		expect(numberText(0.1 + 0.2, ',')).toBe('0,30000000000000004');
		fc.assert(
			fc.property(finite, (value) => {
				expect(numberText(value)).toMatch(/^−?\d+(\.\d+)?$/u);
			})
		);
	});

	test('whatever is typed: a finite number in the range, or a message', () => {
		const nearly = fc.string({
			unit: fc.constantFrom(...'0123456789.,+-− \u00a0eExX∞'),
			maxLength: 9
		});
		fc.assert(
			fc.property(fc.oneof(nearly, fc.string({ unit: 'grapheme' })), (text) => {
				const typed = typedNumber(text, 'it', range);
				if ('problem' in typed) expect(typed.problem).toMatch(/\S.{8,}\.$/su);
				else {
					expect(typed.value).toBeGreaterThanOrEqual(-5 - 1e-9);
					expect(typed.value).toBeLessThanOrEqual(1.24 + 1e-9);
				}
			}),
			{ numRuns: 1000 }
		);
	});

	test('a number that is none has no text', () => {
		expect(() => numberText(Number.NaN)).toThrow('value must be a number; found NaN');
	});
});
