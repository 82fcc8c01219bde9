import type { CDPSession, Locator, Page } from '@playwright/test';

/** How somebody works the page: nothing but their own device is used. */
export interface Hand {
	press(target: Locator): Promise<void>;
	/** Held down for as long as `meanwhile` lasts. */
	hold(target: Locator, meanwhile: () => Promise<unknown>): Promise<void>;
	write(target: Locator, text: string): Promise<void>;
	/** Brings a slider to the middle of its way. */
	centre(slider: Locator): Promise<void>;
}

/** The keyboard alone: Tab to what is wanted, then its keys. A pointer is never used. */
export class KeyboardHand implements Hand {
	constructor(private readonly page: Page) {}

	/** Walks the order of focus until it comes to the target; a full round without it is a barrier. */
	async goTo(target: Locator): Promise<void> {
		const isThere = () => target.evaluate((element) => element === document.activeElement);
		await target.waitFor();
		for (let presses = 0; presses < 60; presses++) {
			if (await isThere()) return;
			await this.page.keyboard.press('Tab');
		}
		throw new Error(`Tab never came to ${target.toString()}`);
	}
	async press(target: Locator): Promise<void> {
		await this.goTo(target);
		await this.page.keyboard.press('Enter');
	}
	/** A group of radio buttons has one place in the order of focus; the arrows go through it. */
	async choose(group: Locator, name: RegExp): Promise<void> {
		const wanted = group.getByRole('radio', { name });
		const radios = group.getByRole('radio');
		await this.goTo(radios.first());
		await this.page.keyboard.press('Space');
		for (let presses = await radios.count(); presses > 0; presses--) {
			if (await wanted.isChecked()) return;
			await this.page.keyboard.press('ArrowDown');
		}
		throw new Error(`the arrows never came to ${String(name)}`);
	}
	async hold(target: Locator, meanwhile: () => Promise<unknown>): Promise<void> {
		await this.goTo(target);
		await this.holdKey('Space', meanwhile);
	}
	/** A single key of the bench, held wherever the focus is. */
	async holdKey(key: string, meanwhile: () => Promise<unknown>): Promise<void> {
		await this.page.keyboard.down(key);
		await meanwhile();
		await this.page.keyboard.up(key);
	}
	async write(target: Locator, text: string): Promise<void> {
		await this.goTo(target);
		await this.page.keyboard.type(text);
	}
	async centre(slider: Locator): Promise<void> {
		await this.goTo(slider);
		for (let presses = 0; presses < 60; presses++) {
			const at = Number(await slider.inputValue());
			if (at === 0) return;
			await this.page.keyboard.press(at > 0 ? 'ArrowDown' : 'ArrowUp');
		}
		throw new Error(`the arrows never brought ${slider.toString()} to its middle`);
	}
}

/** One finger on glass: taps, and touches that last. */
export class TouchHand implements Hand {
	#session: Promise<CDPSession> | null = null;

	constructor(private readonly page: Page) {}

	/** The click that a tap becomes comes a moment after the finger has gone. */
	async press(target: Locator): Promise<void> {
		const clicked = this.page.evaluate(
			() =>
				new Promise<void>((done) => {
					addEventListener('click', () => done(), { once: true, capture: true });
				})
		);
		await target.tap();
		await clicked;
	}
	async hold(target: Locator, meanwhile: () => Promise<unknown>): Promise<void> {
		await target.scrollIntoViewIfNeeded();
		const box = await target.boundingBox();
		if (!box) throw new Error(`${target.toString()} is not to be seen`);
		const finger = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
		await this.touch('touchStart', [finger]);
		await meanwhile();
		await this.touch('touchEnd', []);
	}
	/** A finger set down at a place, moved by so much, kept still there, and lifted. */
	async drag(from: { x: number; y: number }, byY: number): Promise<void> {
		await this.touch('touchStart', [from]);
		for (let part = 1; part <= 8; part++)
			await this.touch('touchMove', [{ x: from.x, y: from.y + (byY * part) / 8 }]);
		// A finger lifted in full swing would fling, and the browser would swallow the next tap.
		const at = Date.now() / 1000;
		for (let i = 1; i <= 4; i++)
			await this.touch('touchMove', [{ x: from.x + (i % 2), y: from.y + byY }], at + i * 0.1);
		await this.touch('touchEnd', [], at + 0.5);
	}
	async write(target: Locator, text: string): Promise<void> {
		await target.tap();
		await this.page.keyboard.type(text);
	}
	centre(slider: Locator): Promise<void> {
		return slider.tap();
	}
	private async touch(
		type: 'touchStart' | 'touchMove' | 'touchEnd',
		touchPoints: { x: number; y: number }[],
		timestamp?: number
	): Promise<void> {
		this.#session ??= this.page.context().newCDPSession(this.page);
		await (await this.#session).send('Input.dispatchTouchEvent', { type, touchPoints, timestamp });
	}
}

/** A mouse or a trackpad. */
export class MouseHand implements Hand {
	constructor(private readonly page: Page) {}

	press(target: Locator): Promise<void> {
		return target.click();
	}
	async hold(target: Locator, meanwhile: () => Promise<unknown>): Promise<void> {
		await target.hover();
		await this.page.mouse.down();
		await meanwhile();
		await this.page.mouse.up();
	}
	write(target: Locator, text: string): Promise<void> {
		return target.fill(text);
	}
	centre(slider: Locator): Promise<void> {
		return slider.fill('0');
	}
}
