import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberText, parseVolumePhPairs } from '../../src/lib/kits';

const values = (text: string) =>
	parseVolumePhPairs(text).pairs.map(({ addedMl, ph }) => [addedMl, ph]);
const two = [
	[0, 8.12],
	[0.25, 7.4]
];

describe('pasted pairs of volume and pH', () => {
	test.each([
		['tabs, decimal points', '0\t8.12\n0.25\t7.40'],
		['tabs, decimal commas', '0\t8,12\n0,25\t7,40'],
		['semicolons', '0;8,12\n0,25;7,40'],
		['semicolons and spaces', ' 0 ; 8,12 \n 0,25 ; 7,40 '],
		['spaces', '0 8.12\n0.25    7.40'],
		['spaces, decimal commas', '0 8,12\n0,25 7,40'],
		['no-break spaces', '0\u00a08.12\n0.25\u20097.40'],
		['commas, decimal points', '0,8.12\n0.25,7.40'],
		['commas and spaces', '0, 8.12\n0.25, 7.40'],
		['commas and spaces, decimal commas', '0,00, 8,12\n0,25, 7,40'],
		['commas for everything, four numbers', '0,00,8,12\n0,25,7,40'],
		['bars', '0 | 8.12\n0.25 | 7.40'],
		['units beside the numbers', '0 mL 8.12\n0.25 ml; pH 7.40'],
		['units hard by the numbers', '0mL 8.12\n0.25mL pH=7.40'],
		['empty lines, and none at the end', '\n0 8.12\n\n   \n0.25 7.40'],
		['line ends of other systems', '0 8.12\r\n0.25 7.40\r\n'],
		['line ends of old systems', '0 8.12\r0.25 7.40'],
		['a separator too many at the end', '0;8,12;\n0,25;7,40;'],
		['a header', 'Volume (mL); pH\n0; 8.12\n0.25; 7.40'],
		['a header of units alone', 'mL\tpH\n0\t8.12\n0.25\t7.40'],
		['a header with pH first', 'pH\tmL added\n8.12\t0\n7.40\t0.25']
	])('%s', (_, text) => {
		expect(values(text)).toEqual(two);
		expect(parseVolumePhPairs(text).problems).toEqual([]);
	});

	test('a header is kept, with its place, and tells which column is which', () => {
		const found = parseVolumePhPairs('\npH;acid mL\n8;0');
		expect(found.header).toEqual({ lineNumber: 2, text: 'pH;acid mL' });
		expect(found.isPhFirst).toBe(true);
		expect(parseVolumePhPairs('0 8').header).toBeNull();
	});

	test('a decimal point on any line makes a lone comma a separator', () => {
		expect(values('0,8\n0.25,7')).toEqual([
			[0, 8],
			[0.25, 7]
		]);
	});

	test.each([
		['0,8', 'which comma'],
		['0,05,8', 'which comma'],
		['8.12', 'Only one number'],
		['0 8.12 20', '3 columns'],
		['a;8.1', 'Volume: “a” is no number'],
		['0.1;x', 'pH: “x” is no number'],
		['0.1;', 'Only one number'],
		['-1; 8', 'between 0 and 1000 mL'],
		['0.1; 18', 'between −1 and 15'],
		['0.1; 1.234,5', 'between thousands'],
		['0.1 NaN', 'no number'],
		['0.1 1e1', 'no number']
	])('%j is a problem, told with its number and its text', (bad, why) => {
		const found = parseVolumePhPairs(`0;8,1\n\n${bad}\n0,2;7,9`);
		expect(found.pairs.map(({ lineNumber }) => lineNumber)).toEqual([1, 4]);
		expect(found.problems).toEqual([
			{ lineNumber: 3, text: bad, problem: expect.stringContaining(why) as string }
		]);
	});

	test('words further down are a problem and no header', () => {
		const found = parseVolumePhPairs('0 8.1\nthen I waited\n0.2 7.9');
		expect(found.header).toBeNull();
		expect(found.problems.map(({ lineNumber, text }) => [lineNumber, text])).toEqual([
			[2, 'then I waited']
		]);
	});

	test('nothing is nothing', () => {
		expect(parseVolumePhPairs(' \n\t\n')).toEqual({
			pairs: [],
			problems: [],
			header: null,
			isPhFirst: false
		});
	});

	const reading = fc.record({
		addedMl: fc.integer({ min: 0, max: 100_000 }).map((n) => n / 1000),
		ph: fc.integer({ min: 0, max: 14_000 }).map((n) => n / 1000)
	});

	test('whatever is written out is read back, whichever signs are used', () => {
		fc.assert(
			fc.property(
				fc.array(reading, { maxLength: 20 }),
				fc.constantFrom('.' as const, ',' as const),
				fc.constantFrom('\t', ';', ' ', '  ', ', ', ' | '),
				fc.constantFrom('\n', '\r\n'),
				(readings, sign, between, end) => {
					const text = readings
						.map(({ addedMl, ph }) => numberText(addedMl, sign) + between + numberText(ph, sign))
						.join(end);
					const { pairs, problems } = parseVolumePhPairs(text);
					expect(problems).toEqual([]);
					expect(pairs.map(({ addedMl, ph }) => ({ addedMl, ph }))).toEqual(readings);
				}
			)
		);
	});

	test('no line is lost: each that is not empty is a pair, a problem or the header', () => {
		const rubbish = fc.string({
			unit: fc.constantFrom(...'0123456789.,;\t |-+mLpHxe\n\r'),
			maxLength: 60
		});
		fc.assert(
			fc.property(rubbish, (text) => {
				const { pairs, problems, header } = parseVolumePhPairs(text);
				const found = [...pairs, ...problems, ...(header ? [header] : [])]
					.map(({ lineNumber }) => lineNumber)
					.sort((a, b) => a - b);
				const there = text
					.split(/\r\n|\n|\r/u)
					.flatMap((line, i) => (line.trim() === '' ? [] : [i + 1]));
				expect(found).toEqual(there);
				for (const { addedMl, ph } of pairs) {
					expect(addedMl).toBeGreaterThanOrEqual(-1e-9);
					expect(ph).toBeLessThanOrEqual(15 + 1e-9);
				}
			}),
			{ numRuns: 2000 }
		);
	});
});
