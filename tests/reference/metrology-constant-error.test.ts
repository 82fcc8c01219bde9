import { describe, expect, it } from 'vitest';
import {
	jointLineTest,
	linearRegression,
	recoveryOfAddition,
	standardAdditionLine,
	testOfDifferences,
	youdenLine
} from '../../src/lib/metrology';

// Source: Cardone's data as in Harvey, Analytical Chemistry 2.1, section 5.5, tables 5.3 and 5.4: line
// 0.009844 W + 0.185, contents to four decimals (sample weights from memory; they give each entry).
describe('total Youden blank of the textbook', () => {
	const weights = [62.4746, 82.7915, 103.1085];
	const signals = [0.8, 1.0, 1.2];
	const line = youdenLine(
		weights.map((sampleVolume, i) => ({ sampleVolume, titrantVolume: signals[i] ?? 0 }))
	);
	it('slope and blank are the printed ones', () => {
		expect(line.slope.toFixed(6)).toBe('0.009844');
		expect(line.totalBlank.toFixed(3)).toBe('0.185');
		expect(line.slope).toBeCloseTo(0.009843997254, 10);
		expect(line.totalBlank).toBeCloseTo(0.1850003733, 8);
	});
	it.each([
		{ corrected: 'nothing', blank: 0, printed: ['0.1707', '0.1610', '0.1552'] },
		{
			corrected: 'the total blank',
			blank: line.totalBlank,
			printed: ['0.1313', '0.1313', '0.1313']
		}
	])('contents after taking off $corrected', ({ blank, printed }) => {
		const contents = weights.map((w, i) => ((signals[i] ?? 0) - blank) / (0.075 * w));
		expect(contents.map((each) => each.toFixed(4))).toEqual(printed);
	});
	it('the blank is clear, and weighs most on the smallest sample', () => {
		expect(line.isConstantErrorClear).toBe(true);
		expect(line.shareOfSmallest).toBeCloseTo(0.185 / 0.8, 3);
		expect(line.shareOfLargest).toBeCloseTo(0.185 / 1.2, 3);
	});
});

// Source: Harvey, Modern Analytical Chemistry, tables 4.5 and 4.6: samples of 0.2 to 1.0 g of 50.0 %: a
// constant error of +0.010 g reads 55.0, 52.5, 51.7, 51.2, 51.0 %; one of +1 %, 50.5 % each time.
describe('constant against proportional error, the textbook’s tables', () => {
	const masses = [0.2, 0.4, 0.6, 0.8, 1.0];
	const found = (constant: number, share: number) =>
		masses.map((mass) => ({
			sampleVolume: mass,
			titrantVolume: mass * 0.5 * (1 + share) + constant
		}));
	it('a constant error is the intercept, and leaves the slope alone', () => {
		const points = found(0.01, 0);
		// 51.25 is printed 51.2.
		const percents = points.map((each) => (100 * each.titrantVolume) / each.sampleVolume);
		expect(percents.map((each) => each.toFixed(2))).toEqual([
			'55.00',
			'52.50',
			'51.67',
			'51.25',
			'51.00'
		]);
		const line = youdenLine(points);
		expect(line.totalBlank).toBeCloseTo(0.01, 12);
		expect(line.slope).toBeCloseTo(0.5, 12);
	});
	it('a proportional one is in the slope, where nobody can tell it from the content', () => {
		const line = youdenLine(found(0, 0.01));
		expect(line.totalBlank).toBeCloseTo(0, 12);
		expect(line.slope).toBeCloseTo(0.505, 12);
	});
});

// Constructed; computed with another program.
it('drops against sample volume: a constant error of nearly one drop', () => {
	const drops = [4.9, 8.9, 11.1, 17.0, 21.1];
	const points = [2, 4, 5, 8, 10].map((sampleVolume, i) => ({
		sampleVolume,
		titrantVolume: drops[i] ?? Number.NaN
	}));
	const line = youdenLine(points);
	expect(Math.abs(line.totalBlank - 0.8720588235)).toBeLessThan(1e-6);
	expect(Math.abs(line.totalBlankStandardError - 0.082947492)).toBeLessThan(1e-6);
	expect(Math.abs(line.slope - 2.022058824)).toBeLessThan(1e-6);
	expect(Math.abs(line.slopeStandardError - 0.01282965915)).toBeLessThan(1e-6);
	expect(Math.abs(line.residualSd - 0.08194929087)).toBeLessThan(1e-6);
	expect(Math.abs(line.totalBlankInterval.low - 0.6080828841)).toBeLessThan(1e-6);
	expect(Math.abs(line.totalBlankInterval.high - 1.136034763)).toBeLessThan(1e-6);
	expect(Math.abs(line.slopeInterval.low - 1.981229122)).toBeLessThan(1e-6);
	expect(Math.abs(line.slopeInterval.high - 2.062888525)).toBeLessThan(1e-6);
	expect(line.isConstantErrorClear).toBe(true);
});

// Constructed; computed with another program. Neither number alone is odd, both together are.
it('found against true on five standards: only the joint test sees it', () => {
	const truths = [4, 6, 8, 10, 12];
	const found = [4.5, 6.6, 8.4, 10.7, 12.6];
	const fit = linearRegression(truths.map((x, i) => ({ x, y: found[i] ?? Number.NaN })));
	expect(Math.abs(fit.intercept - 0.44)).toBeLessThan(1e-6);
	expect(Math.abs(fit.slope - 1.015)).toBeLessThan(1e-6);
	expect(fit.interceptInterval.low).toBeLessThan(0);
	expect(fit.slopeInterval.low).toBeLessThan(1);
	const joint = jointLineTest(fit, { intercept: 0, slope: 1 });
	expect(Math.abs(joint.statistic - 55.01162791)).toBeLessThan(1e-6);
	expect(Math.abs(joint.critical - 9.552094496)).toBeLessThan(1e-6);
	expect(Math.abs(joint.p - 0.004324442845)).toBeLessThan(1e-8);
	expect(joint.isRejected).toBe(true);
	const bias = testOfDifferences(truths.map((truth, i) => (found[i] ?? 0) - truth));
	expect(Math.abs(bias.meanDifference - 0.56)).toBeLessThan(1e-6);
	expect(Math.abs(bias.t - 10.98250357)).toBeLessThan(1e-6);
	// F with 2 and 3 degrees, 95 %: 9.55 in printed tables.
	expect(joint.critical.toFixed(2)).toBe('9.55');
});

// Source: Miller and Miller, Statistics and Chemometrics for Analytical Chemistry, silver by standard
// additions: 17.3 µg/mL, s 0.749, 17.3 ± 1.9 (data and answer from memory). The book rounds on the way:
// unrounded s is 0.7479 (another program).
it('standard additions of the textbook', () => {
	const signals = [0.32, 0.41, 0.52, 0.6, 0.7, 0.77, 0.89];
	const line = standardAdditionLine(signals.map((signal, i) => ({ added: 5 * i, signal })));
	expect(line.content.toFixed(1)).toBe('17.3');
	expect(Math.abs(line.contentStandardError - 0.749)).toBeLessThan(0.002);
	expect((line.contentInterval.high - line.content).toFixed(1)).toBe('1.9');
	expect(Math.abs(line.content - 17.2605364)).toBeLessThan(1e-5);
	expect(Math.abs(line.contentStandardError - 0.747870636)).toBeLessThan(1e-6);
	expect(Math.abs(line.contentInterval.high - line.content - 1.922462673)).toBeLessThan(1e-5);
});

// By hand: (9.9 − 7.2)/2.8 = 0.9643; √(0.15² + 0.15² + (0.9643 · 0.03)²)/2.8 = 0.0765.
it('recovery of a known addition', () => {
	const { recovery, standardUncertainty, isOff } = recoveryOfAddition({
		withAddition: 9.9,
		without: 7.2,
		added: 2.8,
		withAdditionStandardUncertainty: 0.15,
		withoutStandardUncertainty: 0.15,
		addedStandardUncertainty: 0.03
	});
	expect(Math.abs(recovery - 0.9642857143)).toBeLessThan(1e-9);
	expect(Math.abs(standardUncertainty - 0.07646266116)).toBeLessThan(1e-9);
	expect(isOff).toBe(false);
});
