import { expect, test } from 'vitest';
import { plain, signed, withUncertainty } from '../../../src/lib/ui/charts/numbers';

test.each([
	[7.14, '7.1'],
	[-1.83, '−1.8'],
	[-0.04, '0.0'],
	[0, '0.0']
])('%d is printed as %s', (value, text) => expect(plain(value)).toBe(text));

test.each([
	[0.2, '+0.2'],
	[-1.83, '−1.8'],
	[0.04, '0.0'],
	[-0.04, '0.0']
])('the difference %d is printed as %s', (value, text) => expect(signed(value)).toBe(text));

test('a value is printed with what it claims', () => {
	expect(withUncertainty(7.14, 0.38)).toBe('7.1 ± 0.4');
});
