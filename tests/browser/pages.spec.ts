import type { Page } from '@playwright/test';
import { Bench, settle } from './bench';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';

/** A small phone, and a desk of 1280 × 1024 at 400 % (WCAG 2.2, success criterion 1.4.10). */
const narrow = [
	{ width: 320, height: 640 },
	{ width: 320, height: 256 }
];
const desk = { width: 1280, height: 800 };

/** One page as it stands: without barriers in both themes, and never wider than its window. */
async function expectSound(page: Page, name: string): Promise<void> {
	await test.step(name, async () => {
		for (const theme of ['light', 'dark'] as const) {
			await inTheme(page, theme);
			await expectNoBarriers(page);
		}
		for (const size of narrow) {
			await page.setViewportSize(size);
			await expectNoSidewaysScroll(page);
		}
		// The foot stays in view and cuts through whatever is half scrolled under it.
		await expectNoBarriers(page, ['target-size']);
		await page.setViewportSize(desk);
	});
}

test('home and the practice list', async ({ page }) => {
	await page.goto('/');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Halfdrop');
	await expectSound(page, 'home');
	await page.goto('/practise/');
	await expect(page.getByText('not tried').first()).toBeVisible();
	await expectSound(page, 'practice list');
});

test('the bench at each of its stations', async ({ page }) => {
	await settle(page);
	const bench = new Bench(page);
	/** Looked at while time passes, as axe needs it. */
	const sound = async (name: string) => {
		await page.clock.resume();
		await expectSound(page, name);
		await bench.standStill();
	};
	await page.goto('/practise/sunday-evening/');
	await expect(bench.button('To the bench')).toBeVisible();
	await sound('opening');
	await bench.goToBench();
	await sound('sample');
	await bench.prepareSample();
	await bench.draw(10);
	await sound('fill');
	await bench.press('It is filled');
	await bench.look();
	await sound('drop');
	await bench.press('Settings');
	await expect(page.getByRole('dialog')).toBeVisible();
	await sound('settings');
	await bench.press('Close');
	await bench.add(2);
	await bench.declareTheEnd();
	await sound('read');
});

test('check stage and debrief', async ({ page }) => {
	await settle(page);
	const bench = new Bench(page);
	await page.goto('/practise/before-the-weekend/');
	await bench.press(/Go to the checks/);
	await expect(bench.heading).toHaveText('Check');
	await expectSound(page, 'check');
	await bench.press(/^Do it: Ask a second method/);
	await expect(page.getByText('Made once')).toBeVisible();
	await expectSound(page, 'check with results');
	await bench.conclude(/^Can’t tell yet/, /^Rather unsure/);
	await expectSound(page, 'debrief');
	await page.getByText('Go through it again, step by step').click();
	await expectSound(page, 'debrief with its replay');
});

test('what stands in the practice list tells nothing of what lies behind it', async ({ page }) => {
	await page.goto('/practise/');
	const cases = page.locator('section').filter({
		has: page.getByRole('heading', { name: 'Cases' })
	});
	for (const group of ['Calcium', 'Magnesium'])
		await cases.locator('summary').filter({ hasText: group }).click();
	const links = await cases.getByRole('link').all();
	expect(links.length).toBeGreaterThanOrEqual(20);
	// Words of causes, ware and verdicts; a title speaks of days, people and weather.
	const telling =
		/slip|error|wrong|technique|reagent|titrant|acid|indicator|dye|expired|old|weak|strong|evaporat|rins|dilut|air|bubble|tip|seal|line|\beye\b|parallax|overshot|count|drop|swirl|\blight\b|lamp|salt|reference|method|photometer|stands|changed|alkalin|high|low\b|false|faulty/i;
	for (const link of links) {
		const href = (await link.getAttribute('href')) ?? '';
		const id = href.replace(/\/$/, '').split('/').at(-1) ?? '';
		const title = await link.locator('.title').innerText();
		for (const words of [id.replaceAll('-', ' '), title]) expect(words).not.toMatch(telling);
	}
});

test('a page as it is sent holds no truth of its case', async ({ request }) => {
	const page = await (await request.get('/practise/two-answers/')).text();
	expect(page).toContain('Two answers');
	expect(page).not.toMatch(/verdict|reveal|alkalinityDkh|cuvette/);
});
