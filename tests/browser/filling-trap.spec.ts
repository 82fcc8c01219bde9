import { Bench, settle } from './bench';
import { expect, expectNoBarriers, test } from './house';

test.describe('a syringe filled by its liquid line', () => {
	test.beforeEach(async ({ page }) => {
		await settle(page);
		await new Bench(page).open('fill-to-the-seal');
	});

	test('is flagged at once with picture, cost and both ways out', async ({ page }) => {
		const bench = new Bench(page);
		const trap = page.getByRole('region', { name: /line stands at full, the seal does not/ });
		await bench.draw(11, 1);
		await expect(trap).toBeHidden();
		// Common practice, no source: with a tip of 0.17 mL the line then stands at 1.00, the seal 0.17 beyond.
		for (let i = 0; i < 6; i++) await bench.press('Draw a hair');
		await expect(trap).toBeVisible();
		await expect(trap.locator('svg')).toBeVisible();
		// The kit's own figures: 0.17 mL at 16 dKH for a full barrel of 1 mL.
		await expect(trap).toContainText('2.7 dKH too low');
		await expect(trap.getByRole('button')).toHaveText([
			'Push back to the seal',
			'Keep it, read the line at the end'
		]);
		await page.clock.resume();
		await expectNoBarriers(page);
	});

	test('is right again once the seal is pushed back to full', async ({ page }) => {
		const bench = new Bench(page);
		const trap = page.getByRole('region', { name: /line stands at full, the seal does not/ });
		await bench.draw(11, 7);
		await bench.press('Push back to the seal');
		await bench.press('Push a stretch');
		for (let i = 0; i < 7; i++) await bench.press('Push a hair');
		await expect(trap).toBeHidden();
		await bench.press(/^Say it/);
		await expect(bench.words).toContainText('seal stands on the long line marked 1.');
		await bench.press('It is filled');
		await expect(bench.heading).toHaveText('Titrate');
		await expect(page.getByText(/Read by the seal/)).toBeHidden();
	});

	test('and kept so, may be read by the line to the end', async ({ page }) => {
		const bench = new Bench(page);
		await bench.draw(11, 7);
		await bench.press('Keep it, read the line at the end');
		await expect(page.getByRole('region', { name: /line stands at full/ })).toBeHidden();
		await bench.press('It is filled');
		await expect(bench.heading).toHaveText('Titrate');
	});
});
