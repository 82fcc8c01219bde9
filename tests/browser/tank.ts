import type { Locator, Page } from '@playwright/test';
import { expect } from './house';
import { MouseHand, type Hand } from './hands';

const START = new Date('2026-03-14T18:10:00Z');

/** Gives the page a clock that can be moved on, so that half a minute of waiting takes no time. */
export async function startClock(page: Page): Promise<void> {
	await page.clock.install({ time: START });
}

/** One test beside the tank on a page, in the hands of somebody. */
export class Tank {
	readonly hand: Hand;

	constructor(
		readonly page: Page,
		hand?: Hand
	) {
		this.hand = hand ?? new MouseHand(page);
	}

	/** 'Step 5 of 9' on the walk, the page's name elsewhere. */
	get heading(): Locator {
		return this.page.getByRole('heading', { level: 1 });
	}
	/** The one big button of a step. */
	get main(): Locator {
		return this.page.locator('[data-main]');
	}
	button(name: string | RegExp): Locator {
		return this.page.getByRole('button', { name });
	}
	press(name: string | RegExp): Promise<void> {
		return this.hand.press(this.button(name));
	}
	passes(seconds: number): Promise<void> {
		return this.page.clock.fastForward(Math.round(seconds * 1000));
	}

	/** From the choice of a kit to the first step. */
	async begin(kitName: string): Promise<this> {
		await this.page.goto('/test/');
		await this.chooseKit(kitName);
		return this;
	}
	async chooseKit(kitName: string): Promise<void> {
		await this.press(new RegExp(`^${kitName}`));
		await this.press('Skip all this');
		await expect(this.heading).toHaveText(/^Step 1 of/);
	}

	/** Does what each step asks until this one, and no step twice. */
	async goToStep(n: number): Promise<void> {
		for (;;) {
			const name = await this.heading.innerText();
			if (name.startsWith(`Step ${n} of`)) return;
			await this.doStep();
			await expect(this.heading).not.toHaveText(name);
		}
	}
	/** The step's own button, whatever is said on it; a time that is asked for passes first. */
	async doStep(): Promise<void> {
		const asked = await this.page.getByRole('heading', { level: 2 }).first().innerText();
		const seconds = /(\d+) seconds/.exec(asked)?.[1];
		if (seconds) await this.passes(Number(seconds) + 1);
		await this.hand.press(this.main);
	}

	/** The colour stays for the kit's time, and is said to. */
	async declareTheEnd(holdsSeconds = 25): Promise<void> {
		await this.press(/^Flash/);
		await this.passes(holdsSeconds + 1);
		await this.press(/^It stays/);
	}

	/** '7.4 ± 0.6 dKH', as the result says it. */
	get value(): Locator {
		return this.page.locator('.value').first();
	}
}
