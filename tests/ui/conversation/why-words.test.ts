import { describe, expect, test } from 'vitest';
import { agreeingPlaces } from '../../../src/lib/ui/conversation/agreeing';
import type { ExplanationRow } from '../../../src/lib/ui/conversation/explanation-rows';
import { apartWords, whyWords } from '../../../src/lib/ui/conversation/why-words';

const row: ExplanationRow = {
	id: 'strong',
	title: 'Titrant grown stronger',
	isGroup: false,
	members: [],
	splitBy: null,
	probability: 0.5,
	trueValue: { mean: 8, standardUncertainty: 0.2 },
	faults: ['strong'],
	remedies: [],
	explanations: ['strong']
};
const titles = ['First', 'Bottle B', 'Photometer', 'Repeat'];
/** Even odds with every piece; without each, as probable as said. */
const why = (...without: number[]) =>
	whyWords(
		row,
		without.map((probability, i) => ({ at: i + 1, probabilities: { strong: probability } })),
		titles
	);

describe('why an explanation stands where it stands', () => {
	test('pieces that speak clearly are named on their side', () => {
		expect(why(0.2, 0.8)).toBe('For it: 2 (Bottle B). Against it: 3 (Photometer).');
	});
	test('two that pull against each other are both named, though neither decides it', () => {
		expect(why(0.44, 0.56)).toBe(
			'No piece decides it alone: 2 (Bottle B) pulls a little for it, 3 (Photometer) a little against it.'
		);
	});
	test('where none speaks clearly, the weightiest is named', () => {
		expect(why(0.49, 0.44)).toMatch(/The weightiest: 3 \(Photometer\), a little for it\.$/);
		expect(why(0.52, 0.56)).toMatch(/The weightiest: 3 \(Photometer\), a little against it\.$/);
	});
	test('where none changes anything, that is said, and nothing before it was worked out', () => {
		expect(why(0.5, 0.501)).toBe('No single piece of what is known changes how likely it is.');
		expect(whyWords(row, null, titles)).toBe('');
	});
	test('never a clause that ends before it has named anything', () => {
		for (const said of [why(), why(0.5), why(0.45), why(0.2, 0.8), why(0.44, 0.56)])
			expect(said).toMatch(/\S\.$/);
	});
	test('a row for several causes names its pieces as well', () => {
		const group = { ...row, isGroup: true };
		const of = (probability: number) =>
			whyWords(group, [{ at: 1, probabilities: { strong: probability } }], titles);
		expect(of(0.2)).toBe('For it: 2 (Bottle B).');
		expect(of(0.45)).toBe(
			'No piece decides it alone. The weightiest: 2 (Bottle B), a little for it.'
		);
		expect(of(0.5)).toBe('No single piece of what is known changes how likely it is.');
	});
	test('what agrees within its ± is never said to speak against nothing being wrong', () => {
		const none = { ...row, id: 'none', explanations: ['none'] };
		const said = (agreeing: ReadonlySet<number>) =>
			whyWords(none, [{ at: 1, probabilities: { none: 0.8 } }], titles, { agreeing });
		expect(said(new Set())).toBe('Against it: 2 (Bottle B).');
		expect(said(new Set([1]))).toBe('Chance and the usual spread of kits and hands would do.');
	});
	test('a second method agrees within the ± of both, a known solution with what it holds', () => {
		const reading = (id: string, value: number, expandedUncertainty: number) => ({
			...{ id, label: id, value, expandedUncertainty },
			unit: 'dKH' as const
		});
		const places = (second: number, solution: number) =>
			agreeingPlaces(
				[
					{ kind: 'test', from: 'first', reading: reading('a', 7.6, 0.5) },
					{ kind: 'secondMethod', reading: reading('b', second, 0.4) },
					{
						kind: 'reference',
						reading: reading('c', solution, 0.5),
						nominal: 8,
						nominalExpandedUncertainty: 0.2,
						matrix: 'seawater'
					},
					{ kind: 'earlier', daysAgo: 1, reading: reading('d', 7.6, 0.5) }
				],
				'dKH',
				'alkalinity'
			);
		// √(0.5² + 0.4²) is 0.64, √(0.5² + 0.2²) is 0.54.
		expect([...places(8.2, 7.5)]).toEqual([1, 2]);
		expect([...places(8.3, 7.4)]).toEqual([]);
	});
	test('a piece that speaks clearly for it and for others as well is not called a little', () => {
		const said = (nothingWrong: number) =>
			whyWords(row, [{ at: 1, probabilities: { strong: 0.45, none: 0.4 } }], titles, {
				nothingWrong
			});
		// Against nothing wrong: from 0.45 to 0.4 to 0.5 to 0.05, nine times as much.
		expect(said(0.05)).toBe('For it, and as much for others that come to the same: 2 (Bottle B).');
		expect(said(0.4)).toMatch(/a little for it\.$/);
	});
	test('what speaks against the one that a group names first is said, though it speaks for the others', () => {
		const group: ExplanationRow = {
			...row,
			isGroup: true,
			explanations: ['strong', 'large'],
			leading: { explanation: 'strong', probability: 0.3 }
		};
		const said = (strong: number, large: number) =>
			whyWords(group, [{ at: 1, probabilities: { strong, large } }], titles);
		// Of the two together 0.5 with it and without it; of the first 0.3 from 0.45, odds times 0.52.
		expect(said(0.45, 0.05)).toBe('Against the first of these: 2 (Bottle B).');
		// Odds times 0.83: too little to speak of.
		expect(said(0.34, 0.16)).toBe('No single piece of what is known changes how likely it is.');
		// It speaks against both: said once.
		expect(said(0.45, 0.35)).toBe('Against it: 2 (Bottle B).');
	});
	test('and says which check would tell them apart, or that none would', () => {
		const group = { ...row, isGroup: true };
		expect(apartWords({ ...group, splitBy: 'freshLot' })).toMatch(
			/tells these apart\. What would: \S.*\.$/
		);
		expect(apartWords({ ...group, splitBy: 'probeTitration' })).toMatch(
			/ What would: titrate with a pH probe\.$/
		);
		const asked = { ...group, askFirst: 'Which unit stands beside the number?' };
		expect(apartWords({ ...asked, splitBy: 'freshLot' })).toMatch(
			/ What may: the question “Which unit stands beside the number\?” After that: test with a fresh bottle\.$/
		);
		expect(apartWords(asked)).toMatch(/beside the number\?”$/);
		expect(apartWords(group)).toMatch(/apart, and no check listed here would tell much\.$/);
	});
});
