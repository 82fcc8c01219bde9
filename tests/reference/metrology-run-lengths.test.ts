import { describe, expect, it } from 'vitest';
import {
	cusumChart,
	ewmaChart,
	individualsChart,
	mean,
	runRules,
	standardDeviation,
	type RunRule
} from '../../src/lib/metrology';
import { chanceOf } from '../studies/chance';

type SignalAt = (values: readonly number[]) => number | undefined;

/** Values until the first signal, of a series whose mean has moved by `shift` standard deviations. */
function runLength(signalAt: SignalAt, shift: number, normal: () => number): number {
	const values: number[] = [];
	for (let wanted = 32; ; wanted *= 2) {
		while (values.length < wanted) values.push(shift + normal());
		const index = signalAt(values);
		if (index !== undefined) return index + 1;
	}
}

/** Mean run length of a chart against the published one: within four standard errors, and those small. */
function expectMeanRunLength(signalAt: SignalAt, shift: number, published: number, runs: number) {
	const { normal } = chanceOf(1954);
	const lengths = Array.from({ length: runs }, () => runLength(signalAt, shift, normal));
	const standardError = standardDeviation(lengths) / Math.sqrt(runs);
	expect(standardError / published).toBeLessThan(0.03);
	expect(Math.abs(mean(lengths) - published)).toBeLessThan(4 * standardError);
}

const known = { target: 0, sigma: 1 };

// Source: Montgomery, Introduction to Statistical Quality Control, table 9.3 (465, 10.4 and 8.38 seen, the
// rest from memory; recomputed with another program).
describe('mean run length of the CUSUM, k = 0.5', () => {
	it.each([
		{ h: 4, shift: 0, published: 168, runs: 1500 },
		{ h: 4, shift: 1, published: 8.38, runs: 4000 },
		{ h: 4, shift: 2, published: 3.34, runs: 4000 },
		{ h: 5, shift: 0, published: 465, runs: 1300 },
		{ h: 5, shift: 0.5, published: 38.0, runs: 3000 },
		{ h: 5, shift: 1, published: 10.4, runs: 4000 }
	])('h = $h, shift $shift: $published', ({ h, shift, published, runs }) => {
		const signalAt: SignalAt = (values) => cusumChart(values, { ...known, h }).firstSignal?.index;
		expectMeanRunLength(signalAt, shift, published, runs);
	});
});

// Source: Lucas and Saccucci 1990 (designs from memory; run lengths recomputed with another program).
describe('mean run length of the EWMA with steady limits', () => {
	it.each([
		{ lambda: 0.2, width: 2.962, shift: 0, published: 499.7, runs: 1300 },
		{ lambda: 0.2, width: 2.962, shift: 1, published: 10.54, runs: 4000 },
		{ lambda: 0.1, width: 2.814, shift: 0.5, published: 31.3, runs: 3000 },
		{ lambda: 0.1, width: 2.7, shift: 1, published: 9.73, runs: 4000 }
	])('λ = $lambda, L = $width, shift $shift: $published', (design) => {
		const { lambda, width, shift, published, runs } = design;
		const signalAt: SignalAt = (values) =>
			ewmaChart(values, { ...known, lambda, width, limits: 'steady' }).firstSignal?.index;
		expectMeanRunLength(signalAt, shift, published, runs);
	});
});

// Source: 370.4, 43.9 and 6.3 for '1 beyond 3s' (any textbook); the other rules by an exact Markov chain,
// all together by another simulation.
describe('mean run length of the run rules', () => {
	it.each<{ rules: readonly RunRule[]; shift: number; published: number; runs: number }>([
		{ rules: ['1 beyond 3s'], shift: 0, published: 370.4, runs: 1500 },
		{ rules: ['1 beyond 3s'], shift: 1, published: 43.9, runs: 3000 },
		{ rules: ['1 beyond 3s'], shift: 2, published: 6.3, runs: 4000 },
		{ rules: ['2 of 2 beyond 2s'], shift: 0, published: 988.03, runs: 1200 },
		{ rules: ['2 of 2 beyond 2s'], shift: 1, published: 46.03, runs: 3000 },
		{ rules: ['2 of 2 beyond 2s, opposite sides'], shift: 0, published: 988.03, runs: 1200 },
		{ rules: ['4 of 4 beyond 1s'], shift: 0, published: 937.35, runs: 1400 },
		{ rules: ['4 of 4 beyond 1s'], shift: 1, published: 30.0, runs: 3000 },
		{ rules: ['10 on one side'], shift: 0, published: 1023, runs: 1400 },
		{ rules: ['10 on one side'], shift: 1, published: 29.16, runs: 3000 },
		{ rules: runRules, shift: 0, published: 158.27, runs: 1500 },
		{ rules: runRules, shift: 1, published: 12.97, runs: 4000 }
	])('$rules, shift $shift: $published', ({ rules, shift, published, runs }) => {
		const signalAt: SignalAt = (values) =>
			individualsChart(values, { ...known, rules }).firstSignal?.index;
		expectMeanRunLength(signalAt, shift, published, runs);
	});
	it('a warning beyond 2s comes once in 22 values', () => {
		const signalAt: SignalAt = (values) =>
			individualsChart(values, known).points.find(({ isWarning }) => isWarning)?.index;
		expectMeanRunLength(signalAt, 0, 21.98, 3000);
	});
});
