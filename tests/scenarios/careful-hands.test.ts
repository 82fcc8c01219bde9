import { describe, expect, it } from 'vitest';
import { conclusions, type Conclusion } from '../../src/lib/observation';
import { debriefOf, evidenceOf, readingInQuestion } from '../../src/lib/procedure';
import { cases, workedCase } from './house';

/** Chance of the drops, of the second method, of the eye: every case is worked under each of these. */
const seeds = [1, 2, 3];

/**
 * Conclusions that are true beside the verdict: a reading that shows a change, or shows the other
 * method to be off, is one to act on.
 */
const trueBeside: Partial<Record<Conclusion, Conclusion[]>> = {
	waterChanged: ['stands'],
	secondMethod: ['stands']
};

/** What a run says of each conclusion, were it the one given. */
const judgedIn = (run: ReturnType<typeof workedCase>['run']) =>
	conclusions.map((conclusion) => {
		const inquiry = {
			...run.inquiry,
			context: { ...run.inquiry.context, conclusion: { conclusion, sure: 80 } }
		};
		const judged = debriefOf({ ...run, inquiry } as typeof run)?.conclusion;
		if (!judged) throw new Error(`no debrief of ${conclusion}`);
		return { conclusion, ...judged };
	});

describe.each(cases)('$file', ({ scenario }) => {
	it('worked by careful hands through all its checks, earns its verdict and no other', () => {
		for (const seed of seeds) {
			const earned = judgedIn(workedCase(scenario, seed).run)
				.filter(({ support }) => support.verdict === 'earned')
				.map(({ conclusion }) => conclusion);
			const { verdict = 'stands' } = scenario;
			expect(earned, `seed ${seed}`).toContain(verdict);
			for (const each of earned)
				expect([verdict, ...(trueBeside[verdict] ?? [])], `seed ${seed}`).toContain(each);
		}
	});

	it('is not decided before anything was checked', () => {
		const { run } = workedCase(scenario, 1, []);
		const earned = judgedIn(run).filter(({ support }) => support.verdict === 'earned');
		expect(earned.map((each) => each.conclusion)).toEqual(['cantTellYet']);
	});

	it('is seen alike in its evidence under the same chance', () => {
		const check = scenario.checks.map((offer) => offer.check).slice(0, 2);
		expect(evidenceOf(workedCase(scenario, 7, check).run)).toEqual(
			evidenceOf(workedCase(scenario, 7, check).run)
		);
	});

	it('has a reading in question that lies where its story says', () => {
		const reading = readingInQuestion(workedCase(scenario, 1, []).run);
		const { alkalinityDkh } = scenario.truth.water;
		const off = (reading?.value ?? Number.NaN) - alkalinityDkh;
		const claimed = reading?.expandedUncertainty ?? Number.NaN;
		if (scenario.verdict === 'technique' || scenario.verdict === 'reagent')
			expect(isOffBy(off, claimed) || scenario.checks.some(isOtherWater)).toBe(true);
		else expect(Math.abs(off)).toBeLessThanOrEqual(claimed);
	});
});

const isOffBy = (off: number, claimed: number) => Math.abs(off) > claimed;
/** The reading told the truth about a cup that was not the tank. */
const isOtherWater = ({ check }: { check: string }) => check === 'freshSample';
