import { Bench, settle } from './bench';
import { expect, test } from './house';

test('the end is found from words alone, as near as the kit can claim', async ({ page }) => {
	// Nothing can be seen: the stage is taken away, only what is said remains.
	await page.addInitScript(() => {
		addEventListener('DOMContentLoaded', () => {
			const style = new CSSStyleSheet();
			style.replaceSync('.stage > svg { visibility: hidden }');
			document.adoptedStyleSheets = [style];
		});
	});
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
