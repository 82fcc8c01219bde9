import { TouchHand } from './hands';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { startClock, Tank } from './tank';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

test('a whole syringe test by touch on a phone, trap and repeat and all, kept in the log', async ({
	page
}) => {
	await startClock(page);
	const tank = new Tank(page, new TouchHand(page));
	await page.goto('/');
	await tank.hand.press(page.getByRole('link', { name: 'Test', exact: true }).first());
	await expect(tank.heading).toHaveText('Test');
	await tank.press(/^House syringe kit/);
	await tank.hand.press(page.getByText('tank', { exact: true }));
	await tank.press('Start the test');
	await tank.goToStep(7);

	// The step's big button is there without scrolling.
	await expect(tank.main).toBeInViewport({ ratio: 1 });
	// Filled until the line stands at full: caught while it can still be put right.
	await page.getByLabel('Seal stands at').fill('1,17');
	await page.getByLabel(/^Liquid line/).fill('1,0');
	await tank.press('That is where it stands');
	// 0.17 mL of tip at 16 dKH for each mL.
	await expect(page.getByText(/2\.7\sdKH/).first()).toBeVisible();
	await expectNoSidewaysScroll(page);
	await tank.press(/^Refill until the seal stands at 1\.00/);
	await page.getByLabel('Seal stands at').fill('1,00');
	await tank.press('That is where it stands');
	await expect(tank.heading).toHaveText('Step 8 of 9');

	await tank.declareTheEnd();
	await tank.press('Read the mark');
	await expect(tank.button('That is my reading')).toBeInViewport({ ratio: 1 });
	await page.getByLabel('Seal stands at').fill('0,52');
	await tank.press('That is my reading');

	// 0.48 mL at 16 dKH each, less 0.30.
	await expect(tank.value).toHaveText(/^7\.4 ± 0\.\d dKH$/);
	await expectNoSidewaysScroll(page);
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}

	await tank.press(/again with the same water/i);
	await expect(tank.heading).toHaveText('Step 1 of 9');
	await tank.goToStep(7);
	await tank.press(/^Seal at 1\.00/);
	await tank.declareTheEnd();
	await tank.press('Read the mark');
	await page.getByLabel('Seal stands at').fill('0.50');
	await tank.press('That is my reading');
	// 7.38 and 7.70.
	await expect(tank.value).toHaveText(/^7\.5 ± 0\.\d dKH$/);
	await expect(page.getByText('From 2 titrations.')).toBeVisible();
	await tank.press('Done');
	await tank.hand.press(page.getByRole('link', { name: 'See it in the log' }));
	await expect(tank.heading).toHaveText('Log');
	await expect(page.getByText(/7\.5/).first()).toBeVisible();
});
