import { cleanup, render, screen } from '@testing-library/svelte';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { debriefOf } from '../../../src/lib/procedure';
import Debrief from '../../../src/lib/ui/debrief/Debrief.svelte';
import { madeUpScenario, planOf, PlayedRun } from '../played-run';

afterEach(cleanup);

/** The debrief of a whole run; of magnesium, what is left of both when calcium is taken off. */
function show(kitId: string, more: Record<string, unknown> = {}) {
	const scenario = madeUpScenario({
		kitId,
		truth: { water: { alkalinityDkh: 8, calciumMgPerL: 420, magnesiumMgPerL: 1300 } },
		...more
	});
	const played = new PlayedRun(scenario).titrate(planOf()).conclude('stands');
	const debrief = debriefOf(played.run);
	if (!debrief) throw new Error('no debrief');
	render(Debrief, {
		run: played.run,
		log: played.log,
		debrief,
		listHref: '/practise/',
		onagain: vi.fn(),
		shareLink: () => ''
	});
	const words = (document.body.textContent ?? '').replace(/\s+/g, ' ');
	return { debrief, words };
}
const takenOff = {
	of: 'calcium',
	label: 'your test of the same evening',
	value: 430,
	unit: 'mg/L',
	expandedUncertainty: 150
};

describe('what is left of both', () => {
	test('is written to the tens where its ± is a hundred or more', () => {
		const { debrief, words } = show('house-hardness', { takenOff });
		const left = debrief.difference;
		expect(left?.expandedUncertainty).toBeGreaterThan(100);
		const tens = (value = Number.NaN) => (Math.round(value / 10) * 10).toFixed(0);
		expect(words).toContain(`magnesium ${tens(left?.value)} ± ${tens(left?.expandedUncertainty)}.`);
	});
});

describe('the curve', () => {
	test('of a titration with EDTA explains both of its names', () => {
		show('house-hardness', { takenOff });
		const curve = screen.getByRole('region', { name: 'The titration' });
		expect(curve).toHaveTextContent(/EDTA is what is dripped in/);
		expect(curve).toHaveTextContent(/pM tells how little of them is still free/);
	});
	test('of one with acid does not', () => {
		show('house-syringe');
		const curve = screen.getByRole('region', { name: 'The titration' });
		expect(curve).not.toHaveTextContent(/EDTA|pM/);
	});
});
