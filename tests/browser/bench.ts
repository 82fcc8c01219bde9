import type { Locator, Page } from '@playwright/test';
import { expect } from './house';
import { MouseHand, type Hand } from './hands';
import { numeralFromWords } from './scale-words';

/** When all runs of the tests take place. */
const START = new Date('2026-03-01T10:00:00Z');

/**
 * Gives the page a clock that stands still until it is moved, and one chance for every run, so that
 * half a minute of waiting takes no time and two runs meet the same drops.
 */
export async function settle(page: Page, seed = 7): Promise<void> {
	await page.clock.install({ time: START });
	await page.addInitScript((chance) => {
		const real = crypto.getRandomValues.bind(crypto);
		crypto.getRandomValues = ((array: ArrayBufferView<ArrayBuffer>) => {
			if (array instanceof Uint32Array && array.length === 1) array[0] = chance;
			else real(array);
			return array;
		}) as typeof crypto.getRandomValues;
	}, seed);
}

/** One bench on a page, in the hands of somebody. */
export class Bench {
	readonly hand: Hand;

	constructor(
		readonly page: Page,
		hand?: Hand
	) {
		this.hand = hand ?? new MouseHand(page);
	}

	get heading(): Locator {
		return this.page.getByRole('heading', { level: 1 });
	}
	button(name: string | RegExp): Locator {
		return this.page.getByRole('button', { name });
	}
	get words(): Locator {
		return this.page.getByRole('group', { name: 'What is said' }).getByRole('status');
	}
	press(name: string | RegExp): Promise<void> {
		return this.hand.press(this.button(name));
	}
	/** Bench time passes. */
	passes(seconds: number): Promise<void> {
		return this.page.clock.fastForward(Math.round(seconds * 1000));
	}

	/** Opens a run by its address and goes to the bench. */
	async open(id: string): Promise<this> {
		await this.page.goto(`/practise/${id}/`);
		await this.goToBench();
		return this;
	}
	async goToBench(): Promise<void> {
		await this.press('To the bench');
		await expect(this.page.getByRole('list', { name: 'Steps of the test' })).toBeVisible();
		await this.standStill();
	}
	/** From here on time passes only when it is told to. */
	async standStill(): Promise<void> {
		const now = await this.page.evaluate(() => Date.now());
		await this.page.clock.pauseAt(now + 1000);
	}

	/** Sample, indicator and mixing, as the leaflet asks for them. */
	async prepareSample(): Promise<void> {
		await expect(this.heading).toHaveText('Sample size');
		await this.press('Next');
		for (const ware of ['Rinse the syringe', 'Rinse the vial']) {
			await expect(this.heading).toHaveText(ware);
			await this.press('tank water');
			await this.press('Next');
		}
		await this.measure(6);
		await this.doseIndicator(3);
		await this.mix();
	}
	/** Draws whole millilitres; a stretch of the sample syringe is one. */
	async measure(volumeMl: number): Promise<void> {
		await expect(this.heading).toHaveText('Measure');
		for (let drawn = 0; drawn < volumeMl; drawn++) await this.press('Draw a stretch');
		await this.press('Empty into the vial');
		await this.press('Next');
	}
	async doseIndicator(drops: number): Promise<void> {
		await expect(this.heading).toHaveText('Indicator');
		for (let fallen = 0; fallen < drops; fallen++) {
			await this.press(/Let a drop fall/);
			await this.passes(1);
		}
		await this.press('Next');
	}
	async mix(): Promise<void> {
		await expect(this.heading).toHaveText('Mix');
		await this.hand.hold(this.button(/Hold to swirl/), () => this.passes(6));
		await this.press('Next');
	}

	/** An eye above or below the mark reads it too high or too low. */
	async levelTheEye(): Promise<void> {
		const eye = this.page.getByRole('slider', { name: 'Height of your eye' });
		await this.hand.centre(eye);
		await expect(eye).toHaveAttribute('aria-valuetext', 'straight at it');
	}
	/** Tip on, and the plunger drawn in the bottle by so many tenths and hundredths of a millilitre. */
	async draw(tenths: number, hundredths = 0): Promise<void> {
		await expect(this.heading).toHaveText('Fill');
		await this.levelTheEye();
		await this.press('Push the tip on');
		await this.press('Dip in titrant');
		for (let i = 0; i < tenths; i++) await this.press('Draw a stretch');
		for (let i = 0; i < hundredths; i++) await this.press('Draw a hair');
	}
	/** Filled so that the leading edge of the seal stands at full. */
	async fillToTheSeal(): Promise<void> {
		await this.draw(10);
		await this.press('Wipe the tip');
		await this.press('It is filled');
		await expect(this.heading).toHaveText('Titrate');
	}

	/** Lets titrant out for so long, touches off what hangs, and swirls it in. */
	async add(seconds: number): Promise<void> {
		await this.hand.hold(this.button(/let a drop form/), () => this.passes(seconds));
		await this.press(/^Touch off/);
		await this.swirl();
	}
	async swirl(seconds = 5): Promise<void> {
		await this.hand.hold(this.button(/^Swirl/), () => this.passes(seconds));
	}
	async look(): Promise<string> {
		await this.press(/^Look/);
		return this.words.innerText();
	}
	/** The colour by its name: it is said when the lamp has changed since the last look. */
	async colourName(): Promise<string> {
		await this.press('Red');
		await this.look();
		await this.press('White');
		return (await this.look()).replace(/[;.].*$/s, '').toLowerCase();
	}
	/**
	 * Adds drops until the colour is one of the end by its name alone and has kept it for half a
	 * minute: fast while it is teal, then single drops.
	 */
	async findTheEndByWords(): Promise<void> {
		const isEnd = (name: string) => name === 'mauve' || name === 'rose';
		await this.add(3);
		for (let doses = 0; doses < 45; doses++) {
			const name = await this.colourName();
			if (isEnd(name)) {
				await this.passes(26);
				if (isEnd(await this.colourName())) return;
			}
			await this.add(name === 'teal' ? 1 : 0.6);
		}
		throw new Error('the words never told an end colour');
	}
	/** Looks for half a minute, says that it stays, and goes to the scale. */
	async declareTheEnd(): Promise<void> {
		await this.passes(26);
		await this.press(/^It stays/);
		await this.press('Read it');
		await expect(this.heading).toHaveText('Read');
	}

	/** The mark as the page tells it in words, written down to the nearest half division. */
	async readTheSeal(): Promise<number> {
		await this.levelTheEye();
		await this.press('Say it in words');
		const mark = Math.round(numeralFromWords(await this.words.innerText()) * 100) / 100;
		await this.hand.write(this.page.getByLabel(/The seal stands at/), String(mark));
		await this.press('That is my reading');
		return mark;
	}
	/** The value of a mark by the table on the page, between two of its columns on a straight line. */
	async valueByTheTable(mark: number): Promise<number> {
		const table = this.page.getByRole('table', { name: 'Table of the leaflet' });
		const rows = await table.getByRole('row').all();
		const pairs: { at: number; value: number }[] = [];
		for (let i = 0; i + 1 < rows.length; i += 2) {
			const [ats, values] = await Promise.all(
				[rows[i], rows[i + 1]].map((row) => row?.getByRole('cell').allInnerTexts())
			);
			ats?.forEach((at, j) =>
				pairs.push({ at: Number(at), value: Number(values?.[j]?.replace('−', '-')) })
			);
		}
		pairs.sort((a, b) => a.at - b.at);
		const next = pairs.findIndex(({ at }) => at >= mark);
		const [low, high] = [pairs[next - 1], pairs[next]];
		if (!low || !high) throw new RangeError(`the mark must be in the table; found ${mark}`);
		const share = (mark - low.at) / (high.at - low.at);
		return Math.round((low.value + share * (high.value - low.value)) * 10) / 10;
	}
	async giveValue(value: number): Promise<void> {
		await this.hand.write(this.page.getByLabel(/Value, dKH/), String(value));
		await this.press('That is my value');
	}
	/** Through the form of the check stage, to the debrief. */
	async conclude(conclusion: RegExp, sure: RegExp): Promise<void> {
		for (const name of [conclusion, sure]) await this.page.getByRole('radio', { name }).check();
		await this.press('This is what I conclude');
		await expect(this.heading).toHaveText('Debrief');
	}
	/** Scale, table, value. */
	async readAndConvert(): Promise<number> {
		const value = await this.valueByTheTable(await this.readTheSeal());
		await this.giveValue(value);
		return value;
	}
}
