import { Bench, settle } from './bench';
import { TouchHand } from './hands';
import { numeralFromWords } from './scale-words';
import { expect, expectNoSidewaysScroll, test } from './house';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

test('a whole case is done by touch on a phone, from the list to the debrief', async ({ page }) => {
	await settle(page);
	const hand = new TouchHand(page);
	const bench = new Bench(page, hand);
	await page.goto('/practise/');
	await hand.press(page.getByRole('link', { name: /^Sunday evening/ }));
	await bench.goToBench();
	await bench.prepareSample();

	// The finger draws the plunger in its bottle, and the buttons do what a finger is too broad for.
	await bench.draw(0);
	const box = await bench.button(/^Plunger/).boundingBox();
	if (!box) throw new Error('there is no plunger to take hold of');
	await hand.drag({ x: box.x + box.width / 2, y: box.y + box.height * 0.8 }, -120);
	await bench.press(/^Say it/);
	const drawnMl = numeralFromWords(await bench.words.innerText());
	expect(drawnMl).toBeGreaterThan(0.3);
	await expect(bench.words).toContainText('The liquid line stands');
	await hand.drag({ x: box.x + box.width / 2, y: box.y + 20 }, box.height);
	for (let i = 0; i < 10; i++) await bench.press('Draw a stretch');
	await bench.press(/^Say it/);
	await expect(bench.words).toContainText('seal stands on the long line marked 1.');
	await bench.press('Wipe the tip');
	await bench.press('It is filled');

	await bench.findTheEndByWords();
	await bench.declareTheEnd();
	const value = await bench.readAndConvert();
	await expect(page.getByText(`Can you stand by ${value}?`)).toBeVisible();
	await expectNoSidewaysScroll(page);
	for (const name of [/^The reading stands/, /^Leaning yes/])
		await hand.press(page.getByRole('radio', { name }));
	await bench.press('This is what I conclude');
	await expect(bench.heading).toHaveText('Debrief');
	await expect(page.locator('#verdict')).toContainText('It was 7.9.');
	await expectNoSidewaysScroll(page);
});
