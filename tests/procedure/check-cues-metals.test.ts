import { describe, expect, it } from 'vitest';
import { cues } from '$lib/judgement';
import { houseCalciumKit, stepsOf, type Kit } from '$lib/kits';
import type { Evidence, TestEvent } from '$lib/observation';
import { evidenceOfTest } from '$lib/procedure';
import { slipAnswers, variantAnswers } from '../../src/lib/procedure/check-cues';
import { logOf, onWalk, passed, walkOf } from './tank';

const baseId = houseCalciumKit.reagents.find(({ role }) => role === 'base')?.id ?? '';

/** A test of calcium in which so many drops of base went in. */
function answersWith(drops: number, kit: Kit = houseCalciumKit): Record<string, string> {
	const walk = walkOf(kit, {
		filled: [{ type: 'titrant.drawn', sealMl: 1 }],
		read: [{ type: 'marks.read', marks: { sealMl: 0.2 } }]
	}).map((event) =>
		event.type === 'reagent.added' && event.reagentId === baseId
			? { ...event, amount: drops }
			: event
	);
	const events: TestEvent[] = [passed, ...onWalk(0, ...walk)];
	const all: Evidence[] = evidenceOfTest(logOf(kit, events));
	return Object.fromEntries(
		all.flatMap((each) => (each.kind === 'cue' ? [[each.cue, each.answer]] : []))
	);
}
const dose = stepsOf(houseCalciumKit).find(
	(step) => step.kind === 'dose' && step.reagentId === baseId
);
const asked = dose?.kind === 'dose' ? dose.amount : Number.NaN;

describe('questions that the notes of a test of metals answer', () => {
	it('fewer drops of base than the leaflet asks', () => {
		expect(answersWith(asked - 5)['baseCounted']).toBe('fewer');
	});
	it('nothing, where the number was that of the leaflet, or more', () => {
		expect(answersWith(asked)['baseCounted']).toBeUndefined();
		expect(answersWith(asked + 3)['baseCounted']).toBeUndefined();
	});
	it('are known to the catalogue, by question and answer', () => {
		const given = [
			...Object.values(slipAnswers),
			...Object.values(variantAnswers).flatMap((each) => Object.values(each))
		];
		for (const { cue, answer } of given) {
			const known = cues.find(({ id }) => id === cue);
			expect(
				known?.answers.map(({ id }) => id),
				cue
			).toContain(answer);
		}
	});
});
