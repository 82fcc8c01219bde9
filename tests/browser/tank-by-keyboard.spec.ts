import { KeyboardHand } from './hands';
import { expect, expectNoBarriers, test } from './house';
import { startClock, Tank } from './tank';

test('a whole dropper test with nothing but a keyboard, the drops by a pedal', async ({ page }) => {
	await startClock(page);
	const hand = new KeyboardHand(page);
	const tank = await new Tank(page, hand).begin('House dropper kit');
	// Any key goes on, as that of a pedal does.
	for (let n = 1; n < 5; n++) {
		await expect(tank.heading).toHaveText(`Step ${n} of 6`);
		await tank.passes(8);
		await page.keyboard.press(n % 2 ? 'Space' : 'PageDown');
	}
	await expect(tank.heading).toHaveText('Step 5 of 6');
	await hand.choose(page.getByRole('group', { name: 'Count drops' }), /by pedal/);
	await tank.hand.press(page.locator('[data-main]'));
	for (let drop = 2; drop <= 13; drop++) await page.keyboard.press('PageDown');
	await expect(page.getByText(/^13\s*drops$/)).toBeVisible();
	await tank.press(/^Flash/);
	await tank.passes(3);
	await tank.press(/^It faded/);
	await page.keyboard.press('PageDown');
	await expectNoBarriers(page);
	await tank.declareTheEnd();
	await tank.press('To the count');
	await expect(page.getByLabel('Drops it took')).toHaveValue('14');
	await tank.press('That is my reading');
	// 14 drops at 0.6 dKH each, less 0.45, is 7.95.
	await expect(tank.value).toHaveText(/^(7\.9|8\.0) ± [01]\.\d dKH$/);
	await tank.press('Done');
	await expect(page.getByText('Kept in the log.')).toBeVisible();
});
