import { describe, expect, it } from 'vitest';
import { earnedConclusions } from '../../src/lib/judgement';
import { methodFiguresOf } from '../../src/lib/metrology';
import type { Conclusion, PracticeCheckId } from '../../src/lib/observation';
import { evidenceOf, readingInQuestion, relatedValues } from '../../src/lib/procedure';
import { trueValueOf, type Scenario } from '../../src/lib/bench';
import { houseKitOf, type Analyte } from '../../src/lib/kits';
import { cases, workedCase } from './house';

/** Chance of the drops, of the second method, of the eye: every case is worked under each of these. */
const seeds = [1, 2, 3];

/** A plain-water solution reads so much low with a sound kit at 8 dKH: tests of the bench show it. */
const matrixEffects: Partial<Record<Analyte, { purified: number }>> = {
	alkalinity: { purified: -0.2 }
};

/** Dozens of titrations, drop by drop, on a machine that may be busy. */
const SLOW_MS = 30_000;

/**
 * Conclusions that are true beside the verdict: a reading that shows a change, or shows the other
 * method to be off, is one to act on.
 */
const trueBeside: Partial<Record<Conclusion, Conclusion[]>> = {
	waterChanged: ['stands'],
	secondMethod: ['stands'],
	salinity: ['waterChanged', 'stands']
};

/** The reading in question, the evidence, and the conclusions that it earns. */
function carried(scenario: Scenario, seed: number, checks?: readonly PracticeCheckId[]) {
	const { run } = workedCase(scenario, seed, checks);
	const reading = readingInQuestion(run);
	if (!reading) throw new Error('there is no reading in question');
	const evidence = evidenceOf(run);
	const method = methodFiguresOf(run.kit);
	const matrixEffect = matrixEffects[run.kit.analyte] ?? {};
	const { takenOff } = scenario;
	const beside = { related: relatedValues(run), ...(takenOff ? { takenOff } : {}) };
	const earned = earnedConclusions({ reading, evidence, matrixEffect, method, beside });
	return { reading, evidence, earned };
}

describe.each(cases)('$file', ({ scenario }) => {
	const { verdict = 'stands' } = scenario;

	it(
		'worked by careful hands through all its checks, earns its verdict and no other',
		() => {
			for (const seed of seeds) {
				const { earned } = carried(scenario, seed);
				expect(earned, `seed ${seed}`).toContain(verdict);
				for (const each of earned)
					expect([verdict, ...(trueBeside[verdict] ?? [])], `seed ${seed}`).toContain(each);
			}
		},
		SLOW_MS
	);

	it(
		'is not decided before anything was checked, and its reading lies where its story says',
		() => {
			const { reading, earned } = carried(scenario, 1, []);
			expect(earned).toEqual(['cantTellYet']);
			const { water } = scenario.truth;
			const content = trueValueOf(water, houseKitOf(scenario.kitId));
			const isOff = Math.abs(reading.value - content) > reading.expandedUncertainty;
			// A sample that was not the tank is read rightly, or with its grains.
			const isOtherWater = scenario.checks.some(({ check }) => check === 'freshSample');
			if (verdict === 'technique' || verdict === 'reagent')
				expect(isOff || isOtherWater).toBe(true);
			else expect(isOff).toBe(false);
		},
		SLOW_MS
	);

	it(
		'gives the same evidence under the same chance',
		() => {
			const checks = scenario.checks.map((offer) => offer.check).slice(0, 2);
			expect(carried(scenario, 7, checks)).toEqual(carried(scenario, 7, checks));
		},
		SLOW_MS
	);
});
