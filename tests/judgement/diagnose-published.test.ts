import { describe, expect, it } from 'vitest';
import { diagnose, type Cue } from '../../src/lib/judgement';
import { fault, only, second, test } from './diagnosed';

/** A cause that leaves no trace in a reading, and a question that tells of it. */
const cause = fault('cause', {
	target: 'endPoint',
	scope: 'oneTest',
	prior: 0.01,
	sizes: [{ weight: 1, mean: 0, sd: 1e-9, of: 'customaryUnit' }]
});
const question = (ifThere: number, ifNot: number): Cue => ({
	id: 'sign',
	question: 'Is the sign there?',
	because: 'made up for a test',
	answers: [
		{ id: 'yes', words: 'Yes' },
		{ id: 'no', words: 'No' }
	],
	likelihoods: {
		otherwise: { yes: ifNot, no: 1 - ifNot },
		byFault: { cause: { yes: ifThere, no: 1 - ifThere } }
	},
	seconds: 5,
	origin: 'made up for a test'
});
const afterYes = (prior: number, ifThere: number, ifNot: number) =>
	diagnose(
		[test('a', 8), { kind: 'cue', cue: 'sign', answer: 'yes' }],
		only([cause], { priors: { cause: prior }, cues: [question(ifThere, ifNot)] })
	).faults['cause'] ?? Number.NaN;

describe('Bayes’ theorem on published examples', () => {
	// Eddy 1982, as told by Gigerenzer: prior 1 %, sensitivity 80 %, false positives 9.6 %; 0.078 (from memory).
	it('a screening test: 0.078', () => {
		expect(Math.abs(afterYes(0.01, 0.8, 0.096) - 0.078)).toBeLessThan(0.0005);
	});

	// Kruschke, Doing Bayesian Data Analysis: prior 1 %, 97 % detection, 5 % false alarms; about 16 %.
	it('a rare disease: 0.16', () => {
		expect(Math.abs(afterYes(0.01, 0.97, 0.05) - 0.16)).toBeLessThan(0.005);
	});

	// Lippman, Math in Society: prior 2 %, 10 % false negatives, 1 % false positives; 180/278 = 0.647.
	// No answer is believed to be that telling here: false positives below 2 % count as 2 %, which
	// makes 18 of 37.6.
	it('an answer surer than 2 in 100 is not believed', () => {
		expect(afterYes(0.02, 0.9, 0.02)).toBeCloseTo(18 / 37.6, 4);
		expect(afterYes(0.02, 0.9, 0.01)).toBeCloseTo(18 / 37.6, 4);
	});
});

// Normal prior and normal reading, textbook: 8.0 ± 0.5 and 7.1 ± 0.3 make 7.338235 ± 0.257248.
it('a prior and a reading make their weighted mean', () => {
	// Portions of one tank differ by 0.04, which is part of the 0.3.
	const expandedUncertainty = 2 * Math.sqrt(0.3 ** 2 - 0.04 ** 2);
	const { trueValue } = diagnose(
		[second('s', 7.1, expandedUncertainty)],
		only([], { priorValue: { mean: 8, standardDeviation: 0.5, unit: 'dKH' } })
	);
	expect(trueValue.mean).toBeCloseTo(7.338235, 5);
	expect(trueValue.standardDeviation).toBeCloseTo(0.257248, 5);
	expect(Math.abs(trueValue.median - 7.338235)).toBeLessThan(1e-4);
	const [low, high] = trueValue.interval95;
	expect(Math.abs(low - (7.338235 - 1.959964 * 0.257248))).toBeLessThan(1e-4);
	expect(Math.abs(high - (7.338235 + 1.959964 * 0.257248))).toBeLessThan(1e-4);
});

// The same uncertainty, stated with another k: 0.6 with k = 2 is 0.9 with k = 3 and 0.3 with k = 1.
it.each([
	[1, 0.3],
	[3, 0.9]
])('a ± with k = %d is taken as it was meant', (coverageFactor, expandedUncertainty) => {
	const usual = diagnose([test('a', 8), second('s', 7.1, 0.6)]);
	const other = diagnose([test('a', 8), second('s', 7.1, expandedUncertainty, { coverageFactor })]);
	expect(other.trueValue.mean).toBeCloseTo(usual.trueValue.mean, 9);
	expect(other.classes.secondMethod).toBeCloseTo(usual.classes.secondMethod, 9);
});
