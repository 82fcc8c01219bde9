import { cleanup, fireEvent, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { tick } from 'svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { houseDropperKit, houseKitsFor, type Kit } from '../../../../src/lib/kits';
import { preferences, type CountingWay } from '../../../../src/lib/ui/state';
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

/** A test that stands at its drops, with the filling noted. */
function atTheDrops(counting: CountingWay, kit?: Kit) {
	preferences.counting = counting;
	const run = new PlayedTank(kit ? { kit } : {});
	if (kit?.delivery.by !== 'dropper') run.goOnTo('fill').say({ type: 'titrant.drawn', sealMl: 1 });
	run.goOnTo('titrate').wait(5);
	const from = run.titration.events.length;
	return { run, said: () => saidSince(run, from) };
}
const key = (code: string, more: { repeat?: boolean } = {}) =>
	fireEvent.keyDown(document.body, { code, key: code, ...more });
const live = () => document.querySelector('.only-read[aria-live="polite"]')?.textContent;

describe('ways of counting', () => {
	it('later: nothing has to be pressed; lumps and a number are taken when they are given', async () => {
		const user = userEvent.setup();
		const { run, said } = atTheDrops('later');
		show(run);
		await user.click(button('+5 drops'));
		await user.click(button('+1 drop'));
		const field = screen.getByRole('textbox', { name: /Drops so far/ });
		await user.type(field, '4{Enter}');
		expect(field).toHaveAccessibleDescription(/6 are noted already; found 4/);
		expect(field).toHaveValue('4');
		await user.clear(field);
		// Typed and left by the next press: the number counts before the press does.
		await user.type(field, '17');
		await user.click(button(/^Flash/));
		expect(said()).toEqual([
			{ type: 'titrant.fell', drops: 5 },
			{ type: 'titrant.fell', drops: 1 },
			{ type: 'titrant.fell', drops: 11 },
			{ type: 'colour.turned' }
		]);
		await key('Space');
		expect(said()).toHaveLength(4);
	});

	it('tap: each press of the pad is a drop, and so is each key; held keys are not', async () => {
		const { run, said } = atTheDrops('tap');
		show(run);
		await fireEvent.click(button('Tap for each drop'));
		await key('Space');
		await key('Space', { repeat: true });
		await key('KeyB');
		expect(said()).toEqual([
			{ type: 'titrant.fell', drops: 1 },
			{ type: 'titrant.fell', drops: 1 }
		]);
		expect(document.querySelector('.count')).toHaveTextContent('2 drops');
	});

	it('pedal: any key is a drop, but those that belong to the page', async () => {
		const { run, said } = atTheDrops('pedal');
		show(run);
		for (const code of ['KeyB', 'F13', 'Backspace', 'Escape', 'Tab', 'PageUp', 'Digit7'])
			await key(code);
		expect(said()).toHaveLength(3);
	});

	it('beat: a drop for each tick until a press stops it, or the page is hidden', async () => {
		const { run, said } = atTheDrops('beat');
		withFakeClock(run);
		show(run);
		await fireEvent.click(button('Press to start the beat'));
		await vi.advanceTimersByTimeAsync(6100);
		expect(said()).toHaveLength(3);
		await key('Space');
		await vi.advanceTimersByTimeAsync(10_000);
		expect(said()).toHaveLength(3);
		await fireEvent.click(button('Slower'));
		await key('Space');
		await vi.advanceTimersByTimeAsync(5100);
		expect(said()).toHaveLength(5);
		vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
		document.dispatchEvent(new Event('visibilitychange'));
		await vi.advanceTimersByTimeAsync(10_000);
		expect(said()).toHaveLength(5);
	});

	it('a flash stops the beat; so does leaving', async () => {
		const { run, said } = atTheDrops('beat');
		withFakeClock(run);
		const { unmount } = show(run);
		await key('Space');
		await vi.advanceTimersByTimeAsync(2100);
		await fireEvent.click(button(/^Flash/));
		await vi.advanceTimersByTimeAsync(10_000);
		expect(said().map(({ type }) => type)).toEqual(['titrant.fell', 'colour.turned']);
		await key('Space');
		unmount();
		await vi.advanceTimersByTimeAsync(10_000);
		expect(said()).toHaveLength(2);
	});

	it('can be changed on the way, and the choice is remembered', async () => {
		const { run } = atTheDrops('later');
		show(run);
		const choice = within(document.querySelector('main') as HTMLElement);
		await fireEvent.click(choice.getByRole('radio', { name: 'by pedal' }));
		expect(button('Any key or pedal for each drop')).toBeVisible();
		expect(preferences.counting).toBe('pedal');
	});
});

describe('flash and stay', () => {
	it('after a flash the question is asked, with a clock from the last flash or drop', async () => {
		const vibrate = vi.fn();
		vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { vibrate }));
		preferences.vibration = true;
		const { run, said } = atTheDrops('tap');
		withFakeClock(run);
		show(run);
		await key('Space');
		await vi.advanceTimersByTimeAsync(4000);
		await fireEvent.click(button(/^Flash/));
		expect(instruction()).toBe('Swirl, wait 25 seconds. Does the new colour stay?');
		await vi.advanceTimersByTimeAsync(24_600);
		expect(screen.getByRole('timer')).toHaveTextContent('0:24 of 0:25');
		expect(vibrate).not.toHaveBeenCalled();
		await vi.advanceTimersByTimeAsync(1400);
		expect(vibrate).toHaveBeenCalledOnce();
		await fireEvent.click(button(/^It stays/));
		expect(said().at(-1)).toEqual({ type: 'colour.stayed', secondsSinceDrop: 26 });
		expect(document.querySelector('main')).toHaveTextContent(
			/comes back later, leave it: carbon dioxide leaves/
		);
	});

	it.each(houseKitsFor('calcium'))(
		'$name: a colour that turns back was not the end',
		async (kit) => {
			const { run } = atTheDrops('tap', kit);
			withFakeClock(run);
			show(run);
			await key('Space');
			await vi.advanceTimersByTimeAsync(4000);
			await fireEvent.click(button(/stays/));
			const page = document.querySelector('main');
			expect(page).toHaveTextContent(
				/turns back within a minute, it was not the end: one more drop/
			);
			expect(page).not.toHaveTextContent(/leave it|carbon dioxide/);
		}
	);

	it('without a drop or a flash it is timed from when it was said to stay', async () => {
		const { run } = atTheDrops('later');
		withFakeClock(run);
		show(run);
		await vi.advanceTimersByTimeAsync(60_000);
		await fireEvent.click(button(/^It stays/));
		await vi.advanceTimersByTimeAsync(7000);
		expect(screen.getByRole('timer')).toHaveTextContent('0:07 of 0:25');
		expect(document.querySelector('main')).toHaveTextContent(/Watch it so long/);
	});

	it('without a drop or a flash nothing is made up about how long it stood', async () => {
		const { run, said } = atTheDrops('later');
		show(run);
		await fireEvent.click(button(/^It stays/));
		expect(said()).toEqual([{ type: 'colour.stayed' }]);
	});

	it('the clock is right on a page that comes back', async () => {
		const { run } = atTheDrops('tap');
		run.say({ type: 'titrant.fell', drops: 1 });
		run.wait(3).say({ type: 'colour.turned' });
		run.wait(17);
		show(run);
		await tick();
		expect(screen.getByRole('timer')).toHaveTextContent('0:17 of 0:25');
	});

	it('what faded goes on; what stayed leads to the mark, and may fade after all', async () => {
		const { run, said } = atTheDrops('tap');
		show(run);
		await fireEvent.click(button(/^Flash/));
		await fireEvent.click(button(/^It faded/));
		expect(button(/^Flash/)).toBeVisible();
		await fireEvent.click(button(/^It stays/));
		await fireEvent.click(button(/^It faded/));
		await fireEvent.click(button(/^It stays/));
		await key('PageDown');
		expect(said().map(({ type }) => type)).toEqual([
			'colour.turned',
			'colour.faded',
			'colour.stayed',
			'colour.faded',
			'colour.stayed',
			'step.done'
		]);
		expect(heading()).toBe('Step 9 of 9');
	});

	it('a quick second tap on It stays does nothing: no button that goes on comes to lie under it', async () => {
		const { run, said } = atTheDrops('tap');
		show(run);
		const stays = button(/^It stays/);
		await fireEvent.click(stays);
		expect(stays).toBeDisabled();
		await fireEvent.click(stays);
		expect(said()).toEqual([{ type: 'colour.stayed' }]);
	});

	it('Undo takes back the last thing; with nothing to take back it is Back', async () => {
		const { run, said } = atTheDrops('tap');
		show(run);
		await key('Space');
		await key('Space');
		await fireEvent.click(button('Undo'));
		expect(said()).toEqual([{ type: 'titrant.fell', drops: 1 }]);
		await fireEvent.click(button('Undo'));
		expect(said()).toEqual([]);
		await fireEvent.click(button('Back'));
		expect(heading()).toBe('Step 7 of 9');
	});

	it('nothing is said aloud for a drop; a flash and a stay are said', async () => {
		const { run } = atTheDrops('tap');
		show(run);
		await tick();
		const atFirst = live();
		expect(atFirst).toMatch(/^Step 8 of 9\. /);
		for (let i = 0; i < 5; i++) await key('Space');
		expect(live()).toBe(atFirst);
		await fireEvent.click(button(/^Flash/));
		expect(live()).toMatch(/Does the new colour stay/);
		await key('Space');
		expect(live()).toMatch(/Does the new colour stay/);
		await fireEvent.click(button(/^It stays/));
		expect(live()).toBe('Noted. No more drops.');
	});
});

describe('a vial that stood', () => {
	const question = () => screen.queryByRole('heading', { level: 3, name: /since the last drop/ });

	it('is asked about when one comes back late; going on asks no more', async () => {
		const { run, said } = atTheDrops('tap');
		run.say({ type: 'titrant.fell', drops: 1 });
		run.wait(12 * 60);
		show(run);
		await tick();
		expect(question()).toHaveTextContent('About 12 minutes since the last drop.');
		await fireEvent.click(button('Go on'));
		expect(question()).toBeNull();
		expect(said()).toHaveLength(1);
	});

	it('a fresh sample begins the walk anew', async () => {
		const { run } = atTheDrops('tap');
		run.say({ type: 'titrant.fell', drops: 1 });
		run.wait(6 * 60);
		show(run);
		await tick();
		await fireEvent.click(button('Fresh sample'));
		expect(run.titration).toMatchObject({ number: 1, purpose: 'freshSample' });
		expect(heading()).toBe('Step 1 of 9');
	});

	it.each([
		['a short absence', 'tap' as const, 4 * 60],
		['five minutes of dripping uncounted', 'later' as const, 20 * 60]
	])('is not asked about after %s', async (_name, counting, seconds) => {
		const { run } = atTheDrops(counting);
		if (counting === 'tap') run.say({ type: 'titrant.fell', drops: 1 });
		withFakeClock(run);
		show(run);
		await vi.advanceTimersByTimeAsync(seconds * 1000);
		// A glance at another page on the way.
		const sight = vi.spyOn(document, 'visibilityState', 'get');
		for (const state of ['hidden', 'visible'] as const) {
			sight.mockReturnValue(state);
			document.dispatchEvent(new Event('visibilitychange'));
			await vi.advanceTimersByTimeAsync(2000);
		}
		expect(screen.queryByRole('heading', { level: 3 })).toBeNull();
	});

	it('is asked about with the page in sight, where each drop is counted', async () => {
		const { run } = atTheDrops('tap');
		withFakeClock(run);
		show(run);
		await key('Space');
		await vi.advanceTimersByTimeAsync(5 * 60_000 + 11_000);
		expect(question()).toHaveTextContent('About 5 minutes since the last drop.');
	});
});

describe('filling on the way', () => {
	it('is reached in two presses, with the marks asked for, and can be left', async () => {
		const { run, said } = atTheDrops('tap');
		show(run);
		await key('Space');
		await fireEvent.click(button('Refill'));
		await fireEvent.click(button('The syringe ran empty'));
		expect(said().at(-1)).toEqual({ type: 'titrant.spent' });
		expect(screen.getByRole('heading', { name: /Where did it stand/ })).toBeVisible();
		await fireEvent.click(button('Do not fill'));
		expect(button('Tap for each drop')).toBeVisible();
	});

	it('comes back to the drops when both marks are noted', async () => {
		const user = userEvent.setup();
		const { run, said } = atTheDrops('tap');
		show(run);
		await key('Space');
		await user.click(button('Refill'));
		await user.click(button('Not empty, but not enough'));
		await user.type(screen.getByRole('textbox', { name: /before refilling/ }), '0,12');
		await user.type(screen.getByRole('textbox', { name: /Stands at, refilled/ }), '1');
		await user.click(button('Noted, back to the drops'));
		expect(said().at(-1)).toMatchObject({
			type: 'titrant.drawn',
			sealMl: 1,
			before: { sealMl: 0.12 }
		});
		expect(button('Tap for each drop')).toBeVisible();
	});

	it('stands open again after the page was gone, until it is noted or left', async () => {
		const user = userEvent.setup();
		const { run } = atTheDrops('tap');
		show(run);
		await key('Space');
		await user.click(button('Refill'));
		await user.click(button('The syringe ran empty'));
		await user.type(screen.getByRole('textbox', { name: /before refilling/ }), '0');
		cleanup();
		show(run);
		expect(await screen.findByRole('textbox', { name: /before refilling/ })).toHaveValue('0');
		await user.click(button('Do not fill'));
		cleanup();
		show(run);
		expect(await screen.findByRole('button', { name: 'Tap for each drop' })).toBeVisible();
		expect(screen.queryByRole('textbox', { name: /before refilling/ })).toBeNull();
	});

	it('is no matter for a bottle that drips', () => {
		const { run } = atTheDrops('tap', houseDropperKit);
		show(run);
		expect(screen.queryByRole('button', { name: 'Refill' })).toBeNull();
	});
});
