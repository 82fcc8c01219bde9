import type { Locator, Page } from '@playwright/test';
import { expect } from './house';
import { MouseHand, type Hand } from './hands';

/** What is written into the blanks of a sentence, by the label of each, and chosen in its choices. */
export type Told = { blanks?: Record<string, string>; choices?: Record<string, string> };

/** One check of a reading on a page, in the hands of somebody. */
export class Check {
	readonly hand: Hand;

	constructor(
		readonly page: Page,
		hand?: Hand
	) {
		this.hand = hand ?? new MouseHand(page);
	}

	get known(): Locator {
		return this.page.getByRole('list', { name: 'What we know' });
	}
	get explanations(): Locator {
		return this.page.getByRole('list', { name: /^What could explain it/ });
	}
	get next(): Locator {
		return this.page.getByRole('region', { name: 'What would tell most' });
	}
	/** What the water holds, in words. */
	get trueValue(): Locator {
		return this.page.locator('figcaption');
	}
	/** What stands over the decision. */
	get verdict(): Locator {
		return this.page.getByRole('heading', { level: 2 }).first();
	}

	/** A reading is typed in, with the kit that read it. */
	async begin(kitName: string | null, value: string, more: Told = {}): Promise<this> {
		await this.page.goto('/check/');
		const kit = this.page.getByLabel('Which kit read it?');
		await kit.selectOption(kitName === null ? '' : { label: kitName });
		const form = this.page.getByRole('form', { name: 'The reading in question' });
		await this.hand.write(form.getByLabel('What the test said'), value);
		await this.#fill(form, more);
		await this.hand.press(this.page.getByRole('button', { name: 'Check this reading' }));
		await this.isWeighed();
		return this;
	}

	/** The answer to all that was said is there. */
	async isWeighed(): Promise<void> {
		await expect(this.page.locator('#next-check')).toHaveAttribute('aria-busy', 'false', {
			timeout: 60_000
		});
		await expect(this.explanations).toHaveAttribute('aria-busy', 'false', { timeout: 60_000 });
	}

	/** The title of what is asked for first. */
	get best(): Locator {
		return this.next.locator('.best').first();
	}

	/** Questions come before anything that has to be done, as long as they tell more: none is known here. */
	async untilSomethingToDo(): Promise<void> {
		const cannot = this.next.getByRole('button', { name: /^I cannot/ });
		for (let asked = 0; asked < 8 && !(await cannot.isVisible()); asked++) {
			const question = await this.best.innerText();
			await this.hand.press(this.next.getByRole('button', { name: 'I don’t know' }).first());
			await expect(this.best).not.toHaveText(question);
			await this.isWeighed();
		}
		await expect(cannot).toBeVisible();
	}

	/** Something else that is known, by the name of its sentence. */
	async add(kind: string, told: Told): Promise<void> {
		const before = await this.known.getByRole('listitem').count();
		const opener = this.page.getByRole('button', { name: kind, exact: true });
		if (!(await opener.isVisible()))
			await this.hand.press(this.page.getByText('Add what else you know'));
		await this.hand.press(opener);
		const form = this.page.getByRole('form', { name: kind, exact: true });
		await this.#fill(form, told);
		await this.#send(form);
		await expect(this.known.getByRole('listitem')).toHaveCount(before + 1);
		await this.isWeighed();
	}
	async #fill(form: Locator, { blanks = {}, choices = {} }: Told): Promise<void> {
		for (const [label, choice] of Object.entries(choices))
			await form.getByLabel(label, { exact: true }).selectOption({ label: choice });
		for (const [label, text] of Object.entries(blanks))
			await this.hand.write(form.getByLabel(label), text);
	}
	/** By the button of the sentence or, on a phone, by that of the page. */
	async #send(form: Locator): Promise<void> {
		const own = form.getByRole('button', { name: 'Add it' });
		const foot = this.page.getByRole('button', { name: 'Add it' }).last();
		await this.hand.press((await own.isVisible()) ? own : foot);
	}

	/** Picks a question, or a check, among all that are offered. */
	async pick(title: string | RegExp): Promise<void> {
		const heading = this.next.locator('.best').filter({ hasText: title });
		if (await heading.isVisible()) return;
		const other = this.next.getByRole('button', { name: title });
		if (!(await other.first().isVisible()))
			await this.hand.press(this.page.getByText('Something else', { exact: true }));
		await this.hand.press(other.first());
		await expect(heading).toBeVisible();
	}
	async answer(question: string | RegExp, answer: string | RegExp): Promise<void> {
		const before = await this.known.getByRole('listitem').count();
		await this.pick(question);
		await this.hand.press(this.next.getByRole('button', { name: answer }));
		await expect(this.known.getByRole('listitem')).toHaveCount(before + 1);
		await this.isWeighed();
	}

	/** Titles of the bars, the most likely first, with what is said of their chance. */
	async bars(): Promise<{ title: string; chance: string; words: string }[]> {
		const rows = this.explanations.locator(':scope > li');
		return Promise.all(
			(await rows.all()).map(async (row) => ({
				title: await row.locator('.title').innerText(),
				chance: await row.locator('.chance').innerText(),
				words: (await row.innerText()).replace(/\s+/g, ' ')
			}))
		);
	}

	async takeBack(line: RegExp): Promise<void> {
		const before = await this.known.getByRole('listitem').count();
		await this.hand.press(this.page.getByRole('button', { name: line }));
		await expect(this.known.getByRole('listitem')).toHaveCount(before - 1);
		await this.isWeighed();
	}

	async decide(): Promise<void> {
		await this.hand.press(
			this.page
				.getByRole('link', { name: /^See what to do/ })
				.filter({ visible: true })
				.first()
		);
		await expect(this.page).toHaveURL(/\/check\/decision\/?#check=/);
	}
}
