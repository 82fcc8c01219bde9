import { cleanup, fireEvent, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { tick } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { houseDropperKit, houseSyringeKit, type Kit } from '../../../../src/lib/kits';
import { preferences } from '../../../../src/lib/ui/state';
import { PlayedTank } from '../../played-tank.svelte';
import {
	button,
	freshPreferences,
	giveTheDomDialogs,
	heading,
	instruction,
	saidSince,
	show,
	withFakeClock
} from './walk-dom';

beforeEach(() => {
	freshPreferences();
	giveTheDomDialogs();
});
afterEach(() => {
	cleanup();
	vi.useRealTimers();
	vi.unstubAllGlobals();
	vi.restoreAllMocks();
});

/** A leaflet with a wait in it. */
const waitingKit: Kit = {
	...houseDropperKit,
	reagents: houseDropperKit.reagents.map((each) => ({ ...each, waitSeconds: 60 }))
};

describe('the way to the filling', () => {
	it('is one big button a step, each said as what happened', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank().goOnTo('choose');
		show(run);
		expect(heading()).toBe('Step 1 of 9');
		await user.click(screen.getByRole('radio', { name: 'Fine, 10 mL' }));
		await user.click(button('Take 10 mL'));
		await user.click(button('Rinsed'));
		await user.click(button('Not done'));
		expect(instruction()).toContain('10 mL');
		await user.click(button('It is in the vial'));
		await user.click(button('Added'));
		expect(saidSince(run, 0)).toEqual([
			{ type: 'sample.chosen', volumeId: 'fine' },
			{ type: 'step.done', stepId: 'choose' },
			{ type: 'vial.rinsed', ware: 'sampler', with: 'sample' },
			{ type: 'step.done', stepId: 'rinse-sampler' },
			{ type: 'step.skipped', stepId: 'rinse-vial' },
			{ type: 'sample.measured', volumeMl: 10 },
			{ type: 'step.done', stepId: 'measure' },
			{ type: 'reagent.added', reagentId: 'indicator', amount: 3 },
			{ type: 'step.done', stepId: 'dose-indicator' }
		]);
		expect(heading()).toBe('Step 6 of 9');
	});

	it('one press of Back takes back all that one press said', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank().goOnTo('rinse').wait(5);
		show(run);
		const before = run.titration.events.length;
		await user.click(button('Rinsed'));
		expect(run.titration.events).toHaveLength(before + 2);
		await user.click(button('Back'));
		expect(run.titration.events).toHaveLength(before);
		expect(heading()).toBe('Step 2 of 9');
	});

	it('a repeat offers the sample that was taken before', () => {
		const run = new PlayedTank();
		run.goOnTo('choose').say({ type: 'sample.chosen', volumeId: 'fine' });
		run.walkThrough({ sealMl: 0.4 }).begin('repeat');
		show(run);
		expect(screen.getByRole('radio', { name: 'Fine, 10 mL' })).toBeChecked();
	});

	it('another amount of reagent is noted; one that cannot be read holds the step and stays written', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank().goOnTo('dose');
		show(run);
		const before = run.titration.events.length;
		const field = screen.getByRole('textbox', { name: 'What went in' });
		await user.type(field, 'four');
		await user.click(button('Added'));
		expect(run.titration.events).toHaveLength(before);
		expect(field).toHaveValue('four');
		expect(field).toHaveAccessibleDescription(/“four” is no number/);
		await user.clear(field);
		await user.type(field, '4,5');
		await user.click(button('Added'));
		expect(saidSince(run, before)[0]).toEqual({
			type: 'reagent.added',
			reagentId: 'indicator',
			amount: 4.5
		});
	});

	it('has no more than fourteen words to a step, and says each once to those who listen', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank({ kit: houseDropperKit }).goOnTo('rinse');
		show(run);
		const live = document.querySelector('[aria-live="polite"]');
		expect(live).toHaveTextContent(`Step 1 of 6. ${instruction()}`);
		for (const name of ['Rinsed', 'It stands at the line', 'Added']) {
			await user.click(button(name));
			expect(instruction()?.split(' ').length).toBeLessThanOrEqual(14);
			expect(live?.textContent).toContain(instruction());
		}
	});
});

describe('times', () => {
	it('a swirl runs by the clock and says how long it was', async () => {
		const run = new PlayedTank().goOnTo('mix');
		withFakeClock(run);
		show(run);
		await vi.advanceTimersByTimeAsync(3000);
		expect(screen.getByRole('timer')).toHaveTextContent(/^0:02/);
		await vi.advanceTimersByTimeAsync(4000);
		expect(screen.getByRole('timer')).toHaveTextContent(/^0:00.*long enough 0:02 ago/);
		const before = run.titration.events.length;
		await fireEvent.click(button('Swirled'));
		expect(saidSince(run, before)[0]).toEqual({ type: 'vial.swirled', seconds: 7 });
	});

	it('a time that was left for a day says nothing about the swirl', async () => {
		const run = new PlayedTank().goOnTo('mix').wait(86_400);
		show(run);
		const before = run.titration.events.length;
		expect(screen.getByRole('timer')).toHaveTextContent('long enough 24 hours ago');
		await fireEvent.click(button('Swirled'));
		expect(saidSince(run, before)[0]).toEqual({ type: 'vial.swirled' });
	});

	it('a wait holds its button until it is over, buzzes once, and is then said to be over', async () => {
		const vibrate = vi.fn();
		vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { vibrate }));
		preferences.vibration = true;
		const run = new PlayedTank({ kit: waitingKit }).goOnTo('wait');
		withFakeClock(run);
		show(run);
		const before = run.titration.events.length;
		await vi.advanceTimersByTimeAsync(59_000);
		await fireEvent.click(button('Go on'));
		expect(run.titration.events).toHaveLength(before);
		expect(button('Go on')).toHaveAttribute('aria-disabled', 'true');
		expect(vibrate).not.toHaveBeenCalled();
		await vi.advanceTimersByTimeAsync(2000);
		expect(vibrate).toHaveBeenCalledOnce();
		expect(screen.queryByRole('button', { name: 'Skip the wait' })).toBeNull();
		await fireEvent.click(button('Go on'));
		expect(saidSince(run, before)).toEqual([
			{ type: 'wait.over' },
			{ type: 'step.done', stepId: 'wait-indicator' }
		]);
	});

	it('a wait can be skipped, and that is what is noted', async () => {
		const run = new PlayedTank({ kit: waitingKit }).goOnTo('wait');
		show(run);
		const before = run.titration.events.length;
		await fireEvent.click(button('Skip the wait'));
		expect(saidSince(run, before)).toEqual([{ type: 'step.skipped', stepId: 'wait-indicator' }]);
	});

	it('a wait that ran out while nobody was here says by how long, and does not buzz for it', async () => {
		const vibrate = vi.fn();
		vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { vibrate }));
		preferences.vibration = true;
		const run = new PlayedTank({ kit: waitingKit }).goOnTo('wait').wait(60 + 130);
		withFakeClock(run);
		show(run);
		await vi.advanceTimersByTimeAsync(1000);
		expect(screen.getByRole('timer')).toHaveTextContent('over 2:11 ago');
		expect(vibrate).not.toHaveBeenCalled();
	});
});

describe('marks', () => {
	const lineOnly = { type: 'titrant.drawn', sealMl: 1.17, lineMl: 1 } as const;

	it('once noted, are not praised for the air that is warned of', async () => {
		const run = new PlayedTank().goOnTo('fill');
		show(run);
		expect(document.querySelector('main')).toHaveTextContent(
			/Air between seal and liquid is right/
		);
		run.say(lineOnly);
		await tick();
		expect(document.querySelector('main')).not.toHaveTextContent(/is right/);
		expect(screen.getByText('The line stands at full, the seal does not')).toBeVisible();
	});

	it('of a filling are taken though a reagent was left out, which is said before and after', async () => {
		const run = new PlayedTank().goOnTo('dose');
		run.say({ type: 'step.skipped', stepId: 'dose-indicator' });
		run.goOnTo('fill');
		show(run);
		expect(screen.getByText(/No indicator went in/)).toBeVisible();
		await fireEvent.click(button('Seal at 1.00, tip on'));
		expect(heading()).toBe('Step 8 of 9');
		expect(screen.getByText(/No indicator went in/)).toBeVisible();
	});

	it('are asked for by the line where it was promised at the filling', async () => {
		const run = new PlayedTank().goOnTo('fill');
		run.say(lineOnly);
		run.goOnTo('read');
		show(run);
		expect(screen.getByText(/read the line at the end as well/)).toBeVisible();
	});

	it('that one filling will not reach are said before it is filled', () => {
		const run = new PlayedTank({ expected: 15.5 }).goOnTo('fill');
		show(run);
		expect(screen.getByText(/takes about 2 fillings/)).toBeVisible();
	});
});

describe('less water, where one filling may not do', () => {
	it('is chosen already when the test begins anew', async () => {
		const run = new PlayedTank({ expected: 14 }).goOnTo('choose');
		show(run);
		await fireEvent.click(screen.getByRole('radio', { name: 'Fine, 10 mL' }));
		await fireEvent.click(button('Take 10 mL'));
		await fireEvent.click(button('Take less water'));
		await tick();
		expect(heading()).toBe('Step 1 of 9');
		expect(await screen.findByRole('radio', { name: 'Normal, 6 mL' })).toBeChecked();
		await fireEvent.click(button('Take 6 mL'));
		expect(screen.queryByText(/one filling may not do/)).toBeNull();
	});
});

describe('keys', () => {
	it('go on, from anywhere but a field or another button', async () => {
		const run = new PlayedTank().goOnTo('rinse').wait(5);
		show(run);
		await tick();
		const key = (target: Element, code: string, repeat = false) =>
			fireEvent.keyDown(target, { code, key: code, repeat });
		await key(document.body, 'PageDown');
		expect(heading()).toBe('Step 3 of 9');
		await key(document.body, 'Space', true);
		await key(button('Back'), 'Enter');
		await key(document.body, 'Backspace');
		await key(document.body, 'Escape');
		expect(heading()).toBe('Step 3 of 9');
		preferences.keysOn = false;
		await key(document.body, 'PageDown');
		expect(heading()).toBe('Step 3 of 9');
	});

	it('say at the filling what its button says, and leave the marks read at the end to be typed', async () => {
		const run = new PlayedTank({ kit: houseSyringeKit }).goOnTo('fill').wait(5);
		show(run);
		const before = run.titration.events.length;
		const key = (target: Element, code: string) => fireEvent.keyDown(target, { code, key: code });
		// A handle has keys of its own.
		await key(screen.getByRole('slider', { name: /^Seal/ }), 'Space');
		await key(screen.getByRole('textbox', { name: 'Seal stands at' }), 'Space');
		expect(run.titration.events).toHaveLength(before);
		await key(document.body, 'PageDown');
		expect(saidSince(run, before)).toEqual([
			{ type: 'titrant.drawn', sealMl: 1 },
			{ type: 'filling.done' },
			{ type: 'step.done', stepId: 'fill' }
		]);
		run.goOnTo('read');
		await tick();
		const atReading = run.titration.events.length;
		await key(document.body, 'PageDown');
		expect(run.titration.events).toHaveLength(atReading);
	});

	it('of any kind go on for a pedal, whose keys nobody knows', async () => {
		preferences.counting = 'pedal';
		const run = new PlayedTank().goOnTo('rinse').wait(5);
		show(run);
		await fireEvent.keyDown(document.body, { code: 'KeyB', key: 'b' });
		expect(heading()).toBe('Step 3 of 9');
	});

	it('on the big button itself press it once', async () => {
		const user = userEvent.setup();
		const run = new PlayedTank().goOnTo('rinse').wait(5);
		show(run);
		button('Rinsed').focus();
		await user.keyboard('{Enter}');
		expect(heading()).toBe('Step 3 of 9');
		// The button of the next step is the same one: the focus stays on it.
		expect(button('Rinsed')).toHaveFocus();
		await user.keyboard(' ');
		expect(heading()).toBe('Step 4 of 9');
	});
});

describe('voice, pause and settings', () => {
	it('says a step once, when that is wanted, and stops when the screen is left', async () => {
		const spoken: string[] = [];
		const cancel = vi.fn();
		vi.stubGlobal(
			'SpeechSynthesisUtterance',
			class {
				constructor(readonly text: string) {}
			}
		);
		vi.stubGlobal('speechSynthesis', {
			cancel,
			speak: ({ text }: { text: string }) => spoken.push(text)
		});
		preferences.spoken = true;
		const run = new PlayedTank().goOnTo('measure').wait(5);
		const { unmount } = show(run);
		await tick();
		expect(spoken).toEqual(['Draw 6 millilitres of the water and empty it into the vial.']);
		await fireEvent.click(button('It is in the vial'));
		expect(spoken).toHaveLength(2);
		cancel.mockClear();
		unmount();
		expect(cancel).toHaveBeenCalled();
	});

	it('a pause says that the test is kept, or that it is not', async () => {
		const run = new PlayedTank({ kit: houseSyringeKit }).goOnTo('rinse');
		show(run, { notice: 'Something to know.' });
		expect(screen.getByText('Something to know.')).toBeVisible();
		await fireEvent.click(button('Pause'));
		const sheet = screen.getByRole('dialog', { name: 'Pause' });
		expect(sheet).toHaveTextContent('Kept. Go on where you left off.');
		run.storage = 'memory';
		await tick();
		expect(sheet).toHaveTextContent('This browser keeps nothing');
		// Keys belong to the sheet while it is open.
		await fireEvent.keyDown(document.body, { code: 'PageDown' });
		expect(heading()).toBe('Step 2 of 9');
	});

	it('switches say where the browser cannot, and are remembered', async () => {
		const run = new PlayedTank().goOnTo('rinse');
		show(run);
		await fireEvent.click(button('Settings'));
		// jsdom has no voice and no vibration.
		expect(screen.getByRole('checkbox', { name: /Spoken/ })).toBeDisabled();
		expect(
			screen.getByRole('checkbox', { name: 'Vibration. This browser cannot.' })
		).toBeDisabled();
		await fireEvent.click(screen.getByRole('checkbox', { name: /Keys and pedals/ }));
		await fireEvent.click(screen.getByRole('radio', { name: 'by tap' }));
		expect([preferences.keysOn, preferences.counting]).toEqual([false, 'tap']);
		expect(localStorage.getItem('halfdrop.preferences')).toContain('"counting":"tap"');
		expect(screen.getByText(/cannot keep the screen on/)).toBeVisible();
	});
});
