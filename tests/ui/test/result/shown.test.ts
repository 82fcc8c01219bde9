import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shownIn } from '../../../../src/lib/ui/test/result/shown';

const inDkh = (expandedUncertainty: number) =>
	shownIn('dKH', 'dKH', expandedUncertainty, 'alkalinity');

describe('how values of a test are written', () => {
	it('the interval is that of the printed value and the printed ±, and not below nothing', () => {
		const shown = inDkh(0.52);
		expect(shown.both(7.54, 0.52)).toBe('7.5 ± 0.5');
		expect(shown.ends(7.54, 0.52)).toEqual(['7.0', '8.0']);
		expect(shown.ends(0.21, 0.52)).toEqual(['0.0', '0.7']);
	});

	it('whatever the value and its ±', () => {
		const value = fc.double({ min: 0, max: 30, noNaN: true });
		const expanded = fc.double({ min: 0.02, max: 9, noNaN: true });
		fc.assert(
			fc.property(value, expanded, (v, u) => {
				const shown = inDkh(u);
				const [low, high] = shown.ends(v, u).map((end) => Number(end.replace('−', '-')));
				const [printed, band] = shown.both(v, u).split(' ± ').map(Number);
				// No water holds less than nothing.
				expect(low).toBeCloseTo(Math.max(0, (printed ?? NaN) - (band ?? NaN)), 9);
				expect(high).toBeCloseTo((printed ?? NaN) + (band ?? NaN), 9);
			})
		);
	});

	it.each([
		[0.54, '0.54'],
		[0.0996, '0.10'],
		[0.996, '1.0'],
		[2.64, '2.6'],
		[13.4, '13']
	])('a ± of %f has two figures where it is taken apart: %s', (expanded, text) => {
		expect(inDkh(expanded).fine(expanded)).toBe(text);
	});

	it('two ± that are compared are told apart where they can be', () => {
		expect(inDkh(1.04).apart(0.96, 1.04)).toEqual(['0.96', '1.04']);
		expect(inDkh(1.04).apart(0.84, 1.04)).toEqual(['0.8', '1.0']);
		expect(inDkh(0.54).apart(0.47, 0.54)).toEqual(['0.47', '0.54']);
		expect(inDkh(0.54).apart(0.54, 0.54)).toEqual(['0.54', '0.54']);
	});

	it('one titration is never coarser than its unit is customarily written', () => {
		const wide = inDkh(2.6);
		expect(wide.value(9.62)).toBe('10');
		expect(wide.single(9.62)).toBe('9.6');
		expect(shownIn('dKH', 'meq/L', 2.6, 'alkalinity').single(9.62)).toBe('3.43');
	});
});
