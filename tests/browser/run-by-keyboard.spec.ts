import { Bench, settle } from './bench';
import { KeyboardHand } from './hands';
import { expect, test } from './house';

test('a whole case is done by keyboard alone, from the list to the debrief', async ({ page }) => {
	await settle(page);
	const hand = new KeyboardHand(page);
	const bench = new Bench(page, hand);
	await page.goto('/practise/');
	await hand.press(page.getByRole('link', { name: /^Sunday evening/ }));
	await expect(bench.heading).toHaveText('Sunday evening');
	await bench.goToBench();
	await bench.prepareSample();

	await bench.draw(0);
	const plunger = bench.button(/^Plunger/);
	await hand.goTo(plunger);
	for (let i = 0; i < 9; i++) await page.keyboard.press('PageUp');
	for (let i = 0; i < 2; i++) await page.keyboard.press('Shift+ArrowUp');
	await bench.press(/^Say it/);
	await expect(bench.words).toContainText('seal stands on the long line marked 1.');
	await bench.press('Wipe the tip');
	await bench.press('It is filled');
	await expect(bench.heading).toHaveText('Titrate');

	// The keys of the bench work wherever the focus is.
	const deeds = {
		drops: (seconds: number) => hand.holdKey('Space', () => bench.passes(seconds)),
		swirl: () => hand.holdKey('s', () => bench.passes(5)),
		look: async () => {
			await page.keyboard.press('l');
			return bench.words.innerText();
		}
	};
	expect(await deeds.look()).toMatch(/^Teal/);
	await deeds.drops(3);
	await page.keyboard.press('t');
	await deeds.swirl();
	expect(await deeds.look()).toMatch(/drops have fallen/);
	await page.keyboard.press('c');
	await expect(bench.button(/^Away with it/)).toBeVisible();
	expect(await deeds.look()).toContain('comparison vial');
	await page.keyboard.press('c');

	await bench.findTheEndByWords();
	await bench.passes(26);
	// Enter belongs to a focused button, but not to the one that lets drops form.
	await hand.goTo(bench.button(/let a drop form/));
	await page.keyboard.press('Enter');
	await expect(page.getByText('Noted.')).toBeVisible();
	await bench.press('Read it');
	const value = await bench.readAndConvert();

	await expect(bench.heading).toHaveText('Check');
	await expect(page.getByText(`Can you stand by ${value}?`)).toBeVisible();
	await bench.press(/^Do it: Quick repeat/);
	await expect(page.getByText('Made once')).toBeVisible();
	await hand.choose(page.getByRole('group', { name: 'I conclude:' }), /^The reading stands/);
	await hand.choose(page.getByRole('group', { name: 'How sure are you?' }), /^Fairly sure/);
	await bench.press('This is what I conclude');

	await expect(bench.heading).toHaveText('Debrief');
	await expect(page.getByText('You said')).not.toHaveCount(0);
	await expect(page.locator('#verdict')).toContainText(`${value}`);
	// What the scenario holds, whatever was read.
	await expect(page.locator('#verdict')).toContainText('It was 7.9.');
});
