import { render, screen } from '@testing-library/svelte';
import { vi } from 'vitest';
import { preferences } from '../../../../src/lib/ui/state';
import WalkScreen from '../../../../src/lib/ui/test/walk/WalkScreen.svelte';
import type { WalkEvent } from '../../../../src/lib/observation';
import type { PlayedTank } from '../../played-tank.svelte';

export const show = (run: PlayedTank, more: { notice?: string } = {}) =>
	render(WalkScreen, { run, leaveTo: '/', ...more });
export const button = (name: string | RegExp) => screen.getByRole('button', { name });
export const heading = () => screen.getByRole('heading', { level: 1 }).textContent;
export const instruction = () => screen.getAllByRole('heading', { level: 2 })[0]?.textContent;

/** What was said on the present titration since a number of events, without ids and times. */
export const saidSince = (run: PlayedTank, from: number): WalkEvent[] =>
	run.titration.events.slice(from).map(({ event }) => event);

/** As the settings are in a browser that nobody has used. */
export function freshPreferences(): void {
	Object.assign(preferences, {
		unit: 'dKH',
		sound: false,
		vibration: false,
		spoken: false,
		counting: 'later',
		leftHanded: false,
		keysOn: true
	});
	localStorage.clear();
}

/** jsdom has dialogs that neither open nor close. */
export function giveTheDomDialogs(): void {
	HTMLDialogElement.prototype.showModal ??= function (this: HTMLDialogElement) {
		this.open = true;
	};
	HTMLDialogElement.prototype.close ??= function (this: HTMLDialogElement) {
		this.open = false;
	};
}

/** Lets the standing clock of a run follow vitest's. */
export function withFakeClock(run: PlayedTank): void {
	vi.useFakeTimers({ now: run.now() });
	run.clock = () => Date.now();
}
