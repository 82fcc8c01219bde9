import { readFileSync } from 'node:fs';
import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import { parseScenario } from '../../../src/lib/bench';
import type { Conclusion } from '../../../src/lib/observation';
import { debriefOf } from '../../../src/lib/procedure';
import Debrief from '../../../src/lib/ui/debrief/Debrief.svelte';
import { planOf, PlayedRun } from '../played-run';

const file = 'scenarios/three-barrels.json';
const barrels = parseScenario(readFileSync(file, 'utf8'), file);

/** What the debrief says of a conclusion, after a first reading by the line of a syringe filled to the seal. */
function said(conclusion: Conclusion, isRepeated: boolean): string {
	const played = new PlayedRun(barrels, 1).titrate(planOf({ readBy: 'line' }));
	played.inquire({ type: 'result.asked', check: 'secondMethod' });
	if (isRepeated) {
		played.inquire({ type: 'check.begun', check: 'repeatFull', titration: 1 });
		played.titrate(undefined, 1);
		played.inquire({ type: 'check.done', titration: 1 });
	}
	played.conclude(conclusion);
	const debrief = debriefOf(played.run);
	if (!debrief) throw new Error('no debrief');
	render(Debrief, {
		run: played.run,
		log: played.log,
		debrief,
		listHref: '/practise/',
		onagain: () => {},
		shareLink: () => 'http://localhost/practise/three-barrels/#run=abc'
	});
	const text = screen.getByRole('region', { name: 'Your conclusion' }).textContent ?? '';
	return text.replace(/\s+/g, ' ').trim();
}

describe('a reading that slipped back to where it was, and a laboratory that found less', () => {
	test('a change of the water, concluded without a repeat, waits for that', () => {
		const text = said('waterChanged', false);
		expect(text).toContain('It was not yet earned.');
		expect(text).toContain('Repeat the reading with care first');
		expect(text).toContain('More would have been told by a careful repeat.');
		expect(text).not.toContain('spoke against');
	});
	test('with a careful repeat it was carried', () => {
		const text = said('waterChanged', true);
		expect(text).toContain('So it was.');
		expect(text).toContain('What you had collected carried it. The reading slipped.');
	});
	test('that the laboratory was off is spoken against by that repeat', () => {
		expect(said('secondMethod', true)).toContain('What you had collected spoke against it.');
	});
});
