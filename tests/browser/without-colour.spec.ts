import type { Page } from '@playwright/test';
import { Bench, settle } from './bench';
import { expect, test } from './house';
import { numeralFromWords } from './scale-words';

/** Nothing can be seen: the stage is taken away, only what is said remains. */
async function hideTheStage(page: Page): Promise<void> {
	await page.addInitScript(() => {
		addEventListener('DOMContentLoaded', () => {
			const style = new CSSStyleSheet();
			style.replaceSync('.stage > svg { visibility: hidden }');
			document.adoptedStyleSheets = [style];
		});
	});
}

test('the end is found from words alone, as near as the kit can claim', async ({ page }) => {
	await hideTheStage(page);
	await settle(page);
	const bench = await new Bench(page).open('sunday-evening');
	await bench.prepareSample();
	await bench.fillToTheSeal();
	await expect(page.locator('.stage > svg')).toBeHidden();

	await bench.findTheEndByWords();
	await bench.declareTheEnd();
	const value = await bench.readAndConvert();
	// The water of this case holds 7.9 dKH and its kit states 0.4 in careful hands.
	expect(Math.abs(value - 7.9)).toBeLessThanOrEqual(0.4);
});

test('the end of a metal kit is found from words alone: the first blue that stays', async ({
	page
}) => {
	await hideTheStage(page);
	await settle(page);
	const bench = await new Bench(page).open('purple-or-blue');
	await expect(page.locator('.stage > svg')).toBeHidden();
	await bench.add(4);
	let name = await bench.colourName();
	expect(name).toBe('wine red');
	for (let doses = 0; doses < 60 && name !== 'blue'; doses++) {
		await bench.add(0.6);
		name = await bench.colourName();
		expect(['wine red', 'purple', 'violet blue', 'blue']).toContain(name);
	}
	await bench.passes(41);
	expect(await bench.colourName()).toBe('blue');
	await bench.press(/^It stays/);
	await bench.press('Read it');
	await bench.levelTheEye();
	await bench.press('Say it in words');
	const mark = numeralFromWords(await bench.words.innerText());
	await page.getByLabel(/The seal stands at/).fill(mark.toFixed(4));
	await bench.press('That is my reading');
	// By the leaflet: 40 mmol/L for each mL of the one syringe, less 1.99.
	await page.getByLabel(/^Value/).fill((40 * (1 - mark) - 1.99).toFixed(1));
	await bench.press('That is my value');
	await expect(page.locator('#verdict')).toContainText('It was 32.2.');
	await expect(page.locator('#ledger')).not.toContainText(/Stopped short|Went on past/);
	await expect(page.locator('#next')).toContainText('Only scatter.');
});

test('a look tells what is new since the last one, and no number', async ({ page }) => {
	await settle(page);
	const bench = await new Bench(page).open('flash-or-stays');
	expect(await bench.look()).toBe('Teal.');
	await bench.add(3);
	const words = await bench.look();
	expect(words).toContain('drops have fallen');
	expect(words).not.toMatch(/\d/);
	expect(await bench.look()).toMatch(/^Same as before; no drop has fallen since the last look/);
});
