import { describe, expect, test } from 'vitest';
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
		expect(apartWords(group)).toMatch(/apart, and no check listed here would tell much\.$/);
	});
});
