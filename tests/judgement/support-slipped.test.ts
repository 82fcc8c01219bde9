import { describe, expect, it } from 'vitest';
import { PlanSchema } from '../../src/lib/bench';
import { supportOf } from '../../src/lib/judgement';
import { methodFiguresOf } from '../../src/lib/metrology';
import type { Conclusion, PracticeCheckId } from '../../src/lib/observation';
import { evidenceOf, readingInQuestion, relatedValues } from '../../src/lib/procedure';
import { cases } from '../scenarios/house';
import { PlayedRun } from '../ui/played-run';

const { scenario } = cases.find((each) => each.scenario.id === 'three-barrels')!;
/** Titrations, drop by drop, on a machine that may be busy. */
const SLOW_MS = 60_000;

/** Three barrels with a first reading by hands that fill to the seal and read by the line; all else with care. */
function slippedRun(
	seed: number,
	checks: readonly ('secondMethod' | 'repeatQuick' | 'repeatFull' | 'reference')[]
) {
	const played = new PlayedRun(scenario, seed).titrate(PlanSchema.parse({ readBy: 'line' }));
	let titration = 1;
	for (const check of checks) {
		if (check === 'secondMethod' || check === 'repeatQuick') {
			played.inquire({ type: 'result.asked', check });
			continue;
		}
		played.inquire({ type: 'check.begun', check, titration });
		played.titrate(undefined, titration);
		played.inquire({ type: 'check.done', titration });
		titration++;
	}
	const { run } = played;
	const reading = readingInQuestion(run);
	if (!reading) throw new Error('there is no reading in question');
	const { takenOff } = scenario;
	return {
		reading,
		support: (conclusion: Conclusion, offered?: readonly PracticeCheckId[]) =>
			supportOf({
				reading,
				evidence: evidenceOf(run),
				conclusion,
				method: methodFiguresOf(run.kit),
				beside: { related: relatedValues(run), ...(takenOff ? { takenOff } : {}) },
				...(offered ? { offered } : {})
			}),
		earlier: evidenceOf(run).flatMap((each) => (each.kind === 'earlier' ? [each.reading] : []))
	};
}

describe('three barrels of other water, and a reading that slipped back to where it was', () => {
	it(
		'shows no change beyond what it and the one before allow',
		() => {
			const { reading, earlier } = slippedRun(1, []);
			const [then] = earlier;
			expect(Math.abs(reading.value - then!.value)).toBeLessThan(
				Math.hypot(reading.expandedUncertainty, then!.expandedUncertainty)
			);
		},
		SLOW_MS
	);
	it(
		'with the laboratory alone, the water is not spoken against: to repeat comes first',
		() => {
			for (const seed of [1, 2]) {
				const { support } = slippedRun(seed, ['secondMethod']);
				const changed = support('waterChanged', ['reference', 'repeatFull']);
				expect(changed.verdict).toBe('notYet');
				expect(changed.wouldTellMore).toBe('repeatFull');
				expect(support('secondMethod').verdict).toBe('notYet');
			}
		},
		SLOW_MS
	);
	it(
		'a quick repeat makes the same slip again: it confirms nothing, and a careful one still comes first',
		() => {
			const { support } = slippedRun(1, ['secondMethod', 'repeatQuick']);
			const changed = support('waterChanged', ['reference', 'repeatQuick', 'repeatFull']);
			expect(changed.verdict).toBe('notYet');
			expect(changed.wouldTellMore).toBe('repeatFull');
			expect(support('secondMethod').verdict).toBe('notYet');
		},
		SLOW_MS
	);
	it(
		'with the laboratory and a careful repeat, that the water changed is earned, beside technique',
		() => {
			const { support } = slippedRun(1, ['secondMethod', 'repeatFull']);
			expect(support('waterChanged').verdict).toBe('earned');
			expect(support('technique').verdict).toBe('earned');
			expect(support('secondMethod').verdict).toBe('against');
			expect(support('stands').verdict).toBe('against');
		},
		SLOW_MS
	);
	it(
		'with a known solution too, under other chance',
		() => {
			for (const seed of [3, 4]) {
				const { support } = slippedRun(seed, ['secondMethod', 'repeatFull', 'reference']);
				expect(support('waterChanged').verdict).toBe('earned');
			}
		},
		SLOW_MS
	);
	it(
		'without the laboratory, a repeat and a known solution leave it open',
		() => {
			const { support } = slippedRun(1, ['repeatFull', 'reference']);
			expect(support('waterChanged').verdict).toBe('notYet');
		},
		SLOW_MS
	);
});
