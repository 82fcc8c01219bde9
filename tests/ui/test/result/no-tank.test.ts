import { cleanup, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import {
	houseCalciumKit,
	houseHardnessKit,
	houseSyringeKit,
	type Kit,
	type Unit
} from '../../../../src/lib/kits';
import MarksStep from '../../../../src/lib/ui/test/marks/MarksStep.svelte';
import { PlayedTank } from '../../played-tank.svelte';
import { button, showResult, words } from './result-dom';

afterEach(cleanup);

/**
 * A kit, its full mark, the mark of a value that no tank holds and that of an ordinary one. Surface seawater has
 * about 2.3 meq/L of alkalinity (6.5 dKH), 412 mg/L of calcium and 1284 mg/L of magnesium, 63 mmol/L of both
 * (reference composition, Millero et al. 2008, at salinity 35 and 1.023 kg/L).
 */
const kits: [Kit, { fullMl: number; lowMl: number; soundMl: number; refilledMl: number }][] = [
	[houseCalciumKit, { fullMl: 2, lowMl: 1.9, soundMl: 0.58, refilledMl: 0 }],
	[houseHardnessKit, { fullMl: 1, lowMl: 0.36, soundMl: 0.36, refilledMl: 1 }],
	[houseSyringeKit, { fullMl: 1, lowMl: 0.85, soundMl: 0.52, refilledMl: 0 }]
];

/** Filled, filled again where it is said, and standing at the reading. */
function atReading(kit: Kit, fullMl: number, refilledMl = 0): PlayedTank {
	const run = new PlayedTank({ kit });
	run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: fullMl });
	if (refilledMl > 0) {
		run.goOnTo('titrate').say({
			type: 'titrant.drawn',
			sealMl: fullMl,
			before: { sealMl: fullMl - refilledMl },
			drawnAgainMl: refilledMl
		});
	}
	return run.goOnTo('read');
}
function readAt(run: PlayedTank, sealMl: number): PlayedTank {
	run.say({ type: 'marks.read', marks: { sealMl } });
	run.say({ type: 'step.done', stepId: 'read' });
	return run;
}
const shown = (run: PlayedTank) =>
	showResult(run, { unit: run.kit.unit as Unit, checkHref: '/check/' });

describe.each(kits)('a value that no tank of seawater holds: $name', (kit, marks) => {
	it('is said at the reading, and the mark can be read again', async () => {
		const run = atReading(kit, marks.fullMl);
		render(MarksStep, { run, kind: 'read' });
		await userEvent.type(
			screen.getByRole('textbox', { name: 'Seal stands at' }),
			String(marks.lowMl)
		);
		await userEvent.click(button('That is my reading'));
		expect(words()).toContain('No tank of seawater is likely to hold so little.');
		expect(button('Read it again')).toBeVisible();
		// The walk waits for an answer.
		expect(run.state.phase).toBe('walk');
	});

	it('is said beside the result, which leads to the mark and to a check before it is done', () => {
		shown(readAt(atReading(kit, marks.fullMl), marks.lowMl));
		expect(words()).toContain(
			'Check before acting. No tank of seawater is likely to hold so little.'
		);
		expect(screen.getByRole('link', { name: 'Read it again' })).toHaveAttribute(
			'href',
			'#titrations'
		);
		const primary = document.querySelector('a.primary');
		expect(primary).toHaveTextContent('Check it');
	});

	it('is not said of an ordinary one', () => {
		shown(readAt(atReading(kit, marks.fullMl, marks.refilledMl), marks.soundMl));
		expect(words()).not.toContain('No tank of seawater');
		expect(screen.queryByRole('link', { name: 'Read it again' })).toBeNull();
	});

	it('is not said of water that is no tank’s', () => {
		const run = new PlayedTank({ kit });
		run.noteCircumstances({ water: 'topOff' });
		run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: marks.fullMl });
		shown(readAt(run.goOnTo('read'), marks.lowMl));
		expect(words()).not.toContain('No tank of seawater');
	});
});

it('a refill is asked about where the leaflet has one, and not elsewhere', () => {
	shown(readAt(atReading(houseHardnessKit, 1), 0.36));
	expect(words()).toContain('Was it filled again on the way?');
	cleanup();
	shown(readAt(atReading(houseCalciumKit, 2), 1.9));
	expect(words()).not.toContain('Was it filled again');
	expect(words()).toContain('Read the mark again before you take it.');
});

it('so much is told as well', () => {
	const kit: Kit = {
		...houseCalciumKit,
		conversion: { kind: 'perMl', valuePerMl: 900, offset: 0 }
	};
	shown(readAt(atReading(kit, 2), 0.5));
	expect(words()).toContain('No tank of seawater is likely to hold so much.');
});
