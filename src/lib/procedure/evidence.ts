import { normalAt, trueValueOf, type CheckOffer } from '../bench';
import { convertValue } from '../kits';
import type { BenchEvidence, PracticeCheckId, Reading } from '../observation';
import { carbonateDkhOf } from './carbonate-only';
import {
	asWritten,
	earlierReadings,
	quickRepeat,
	quickRepeatLabel,
	readingOfTitration
} from './readings';
import type { RunState } from './run';

type SecondOffer = Extract<CheckOffer, { check: 'secondMethod' }>;

/** What a second method says of the tank: its own offset and scatter, as finely as the unit is written. */
function secondMethod(run: RunState, offer: SecondOffer, n: number): Reading {
	const { kit } = run;
	const { water } = run.scenario.truth;
	const content = offer.carbonateOnly
		? convertValue(carbonateDkhOf(water), 'dKH', kit.unit)
		: trueValueOf(water, kit);
	const value = content + offer.offset + offer.sd * normalAt(run.seed, 'secondMethod', n);
	return {
		id: `second-${n}`,
		label: offer.label,
		value: asWritten(kit, value),
		expandedUncertainty: offer.expandedUncertainty,
		unit: kit.unit
	};
}

/** Everything a learner has collected, in the order in which it came. */
export function evidenceOf(run: RunState): BenchEvidence[] {
	const { scenario } = run;
	const evidence: BenchEvidence[] = earlierReadings(run).map(({ reading, daysAgo }) => ({
		kind: 'earlier',
		reading,
		daysAgo
	}));
	const first = run.titrations[0] && readingOfTitration(run.titrations[0]);
	if (first) evidence.push({ kind: 'test', reading: first, from: 'first' });
	const counts = new Map<PracticeCheckId, number>();
	for (const { check, titration, isDone } of run.inquiry.context.checks) {
		const n = counts.get(check) ?? 0;
		counts.set(check, n + 1);
		if (!isDone) continue;
		const offer = scenario.checks.find((each) => each.check === check);
		if (check === 'repeatQuick') {
			const reading = quickRepeat(run, n);
			if (reading) evidence.push({ kind: 'test', reading, from: check });
		} else if (check === 'secondMethod' && offer?.check === 'secondMethod') {
			evidence.push({ kind: 'secondMethod', reading: secondMethod(run, offer, n) });
		} else {
			const done = run.titrations.find((each) => each.number === titration);
			const reading = done && readingOfTitration(done);
			if (!reading) continue;
			if (check === 'reference' && offer?.check === 'reference')
				evidence.push({
					kind: 'reference',
					reading: { ...reading, label: offer.label },
					nominal: offer.nominal,
					nominalExpandedUncertainty: offer.nominalExpandedUncertainty,
					matrix: offer.water.matrix
				});
			else evidence.push({ kind: 'test', reading, from: done.purpose });
		}
	}
	return evidence;
}

/** Quick repeats of which nothing could be read, by name: their colour never came to its end. */
export function repeatsWithoutEnd(run: RunState): string[] {
	const made = run.inquiry.context.checks.filter(({ check }) => check === 'repeatQuick');
	return made.flatMap((_, n) => (quickRepeat(run, n) ? [] : [quickRepeatLabel(n)]));
}

/** The reading that the run is about: the learner's own, or the last one from before. */
export function readingInQuestion(run: RunState): Reading | null {
	if (run.scenario.inQuestion === 'earlier') {
		const all = earlierReadings(run);
		return all[all.length - 1]?.reading ?? null;
	}
	return run.titrations[0] ? readingOfTitration(run.titrations[0]) : null;
}
