import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { fileOf, wholeTest } from './tank-logs';

const DAY = 86_400_000;
const NEWEST = Date.UTC(2026, 2, 28, 18);
/** Six tests, a week apart, the newest last; less is used from week to week. */
const six = [0.3, 0.32, 0.34, 0.36, 0.38, 0.42].map((sealMl, week) =>
	wholeTest(`week-${week}`, NEWEST - (5 - week) * 7 * DAY, sealMl)
);

async function takeIn(page: Page, text: string): Promise<void> {
	await page.goto('/settings/');
	await expect(page.getByText(/^Everything is kept in this browser/)).toBeVisible();
	await page.getByLabel('Take in a file').setInputFiles({
		name: 'copy.json',
		mimeType: 'application/json',
		buffer: Buffer.from(text)
	});
}

/** Rows of the list, each as one line of text. */
async function rows(page: Page): Promise<string[]> {
	const list = page.locator('#tests');
	await expect(list.getByRole('link').first()).toBeVisible();
	const texts = await list.getByRole('link').allInnerTexts();
	return texts.map((text) => text.replace(/\s+/g, ' '));
}

async function expectSound(page: Page): Promise<void> {
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	await page.setViewportSize({ width: 320, height: 640 });
	await expectNoSidewaysScroll(page);
	await page.setViewportSize({ width: 1280, height: 800 });
}

test('nothing measured: the pages say so', async ({ page }) => {
	await page.goto('/log/');
	await expect(page.getByText('Nothing measured yet.')).toBeVisible();
	await expectSound(page);
	await page.goto('/');
	await expect(page.getByText('Nothing measured yet. Practise first')).toBeVisible();
	await expect(page.getByRole('link', { name: /, \d+ min$/ }).first()).toBeVisible();
});

test('list, picture, one test; a mark corrected, a test removed and put back', async ({ page }) => {
	await takeIn(page, fileOf(six));
	await expect(page.getByText('Added: 6 records.')).toBeVisible();
	await expectSound(page);

	await page.goto('/');
	await expect(page.getByRole('list', { name: 'Last readings' }).getByRole('link')).toHaveCount(3);
	await expect(page.getByRole('link', { name: 'Test', exact: true }).first()).toBeVisible();

	await page.goto('/log/');
	expect(await rows(page)).toHaveLength(6);
	await page.getByText('The same as a table').click();
	await expect(page.getByRole('table').getByRole('row')).toHaveCount(7);
	await expectSound(page);

	await page.locator('#tests').getByRole('link').first().click();
	const value = page.locator('p.value');
	const before = await value.innerText();
	await expect(page.getByText('You read: seal at 0.42.')).toBeVisible();
	await page.getByRole('button', { name: 'Correct a mark' }).click();
	await page.getByLabel('Seal stands at').fill('0,24');
	await page.getByRole('button', { name: 'Put these in their place' }).click();
	await expect(page.getByText('You read: seal at 0.24.')).toBeVisible();
	await expect(page.getByText('Before it was corrected: seal at 0.42.')).toBeVisible();
	const corrected = await value.innerText();
	expect(corrected).not.toBe(before);
	await page.getByText(/entries, from first to last/).click();
	await expect(page.getByText('Corrected to: Read: seal 0.24')).toBeVisible();
	await expectSound(page);

	await page.reload();
	await expect(value).toHaveText(corrected);
	await page.goto('/log/');
	const figures = corrected.replace(/\s+/g, ' ');
	expect((await rows(page))[0]).toContain(figures.slice(0, figures.indexOf('±')).trim());

	await page.locator('#tests').getByRole('link').first().click();
	await page.getByRole('button', { name: 'Remove it from the log' }).click();
	await expect(page.getByText('Removed from the log.')).toBeVisible();
	await page.getByRole('button', { name: 'Put it back into the log' }).click();
	await expect(page.getByText('Removed from the log.')).toBeHidden();
	await page.getByRole('button', { name: 'Remove it from the log' }).click();
	await page.getByRole('link', { name: 'Back to the log' }).click();
	await expect(page.getByText('Removed: 1')).toBeVisible();
	await page.getByText('Removed: 1').click();
	await page.locator('details').filter({ hasText: 'Removed: 1' }).getByRole('link').click();
	await page.getByRole('button', { name: 'Put it back', exact: true }).click();
	await page.getByRole('link', { name: 'Back to the log' }).click();
	await expect(page.getByText(/^Removed/)).toBeHidden();
	expect(await rows(page)).toHaveLength(6);
});

test('a note, and the unit chosen once for every page', async ({ page }) => {
	await takeIn(page, fileOf(six));
	await expect(page.getByText('Added: 6 records.')).toBeVisible();
	await page.getByRole('radio', { name: 'meq/L' }).check();
	await page.goto('/log/');
	expect((await rows(page))[0]).toContain('meq/L');
	await page.locator('#tests').getByRole('link').first().click();
	await page.getByLabel('What else you want to remember').fill('new salt the day before');
	await page.getByLabel('What else you want to remember').blur();
	await expect(page.getByText('Noted.')).toBeVisible();
	await page.reload();
	await expect(page.getByLabel('What else you want to remember')).toHaveValue(
		'new salt the day before'
	);
});

test('a copy goes out whole and comes in once', async ({ page, browser, baseURL }) => {
	await takeIn(page, fileOf(six));
	await expect(page.getByText('Added: 6 records.')).toBeVisible();
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('button', { name: 'Save everything as a file' }).click()
	]);
	expect(download.suggestedFilename()).toMatch(/^halfdrop-\d{4}-\d\d-\d\d\.json$/);
	const text = await readFile(await download.path(), 'utf8');
	await page.goto('/log/');
	const here = await rows(page);

	const elsewhere = await browser.newContext({ baseURL });
	const there = await elsewhere.newPage();
	await takeIn(there, text);
	await expect(there.getByText('Added: 6 records.')).toBeVisible();
	await takeIn(there, text);
	await expect(there.getByText('Already here: 6 records')).toBeVisible();
	await there.goto('/log/');
	expect(await rows(there)).toEqual(here);
	await elsewhere.close();
});

test('a file that is none is refused beside its field, and a torn one is saved in part', async ({
	page
}) => {
	await takeIn(page, '{"recipe":"bread"}');
	await expect(page.getByRole('alert')).toBeVisible();
	await expect(page.getByLabel('Take in a file')).toHaveAttribute('aria-invalid', 'true');
	const whole = fileOf(six);
	const torn = whole.replace('"sealMl":0.36', '"sealMl":"about a third"');
	expect(torn).not.toBe(whole);
	await takeIn(page, torn);
	await expect(page.getByText(/^Damaged at .*tests\.3/)).toBeVisible();
	await page.goto('/log/');
	expect((await rows(page)).length).toBeGreaterThanOrEqual(5);
});

test('a damaged record is named, shown and can be saved; none is dropped', async ({ page }) => {
	await takeIn(page, fileOf(six));
	await expect(page.getByText('Added: 6 records.')).toBeVisible();
	await page.evaluate(
		() =>
			new Promise<void>((done, fail) => {
				const opening = indexedDB.open('halfdrop');
				opening.onerror = () => fail(opening.error);
				opening.onsuccess = () => {
					const database = opening.result;
					const change = database.transaction('testEntries', 'readwrite');
					change
						.objectStore('testEntries')
						.put({ testId: 'week-2', seq: 3, entry: { id: 'e3', at: 'never' } });
					change.oncomplete = () => (database.close(), done());
					change.onerror = () => fail(change.error);
				};
			})
	);
	await page.goto('/log/');
	await expect(page.getByText('1 of 6 unreadable')).toBeVisible();
	expect(await rows(page)).toHaveLength(6);
	await page.getByRole('link', { name: 'see it' }).click();
	await expect(page.getByText(/damaged at entries\.3/)).toBeVisible();
	await page.getByText('What is stored').click();
	await expect(page.getByRole('region', { name: 'What is stored' })).toContainText('never');
	await expectSound(page);
	const [download] = await Promise.all([
		page.waitForEvent('download'),
		page.getByRole('button', { name: 'Save it as a file' }).click()
	]);
	expect(await readFile(await download.path(), 'utf8')).toContain('"never"');
});

test('twenty thousand tests: the newest page and a picture of a few hundred marks', async ({
	page
}) => {
	await page.goto('/log/');
	await expect(page.getByText('Nothing measured yet.')).toBeVisible();
	await page.evaluate(
		({ newest, day }) =>
			new Promise<void>((done, fail) => {
				const opening = indexedDB.open('halfdrop');
				opening.onerror = () => fail(opening.error);
				opening.onsuccess = () => {
					const database = opening.result;
					const change = database.transaction('tests', 'readwrite');
					const tests = change.objectStore('tests');
					for (let i = 0; i < 20_000; i++) {
						const value = 8 + Math.sin(i / 50) / 2;
						tests.add({
							id: `many-${i}`,
							kitId: 'house-syringe',
							analyte: 'alkalinity',
							startedAtEpochMs: newest - i * (day / 2),
							changedAtEpochMs: newest - i * (day / 2),
							state: 'kept',
							where: 'done',
							summary: {
								value,
								unit: 'dKH',
								standardUncertainty: 0.2,
								expandedUncertainty: 0.4,
								repeatabilitySd: 0.1,
								values: [value],
								sampleVolumeMl: 4,
								isSuspect: false
							}
						});
					}
					change.oncomplete = () => (database.close(), done());
					change.onerror = () => fail(change.error);
				};
			}),
		{ newest: NEWEST, day: DAY }
	);
	await page.addInitScript(() => {
		const watch = new MutationObserver(() => {
			if (!document.querySelector('#tests li') || !document.querySelector('figure circle')) return;
			watch.disconnect();
			performance.mark('log-shown');
		});
		watch.observe(document, { childList: true, subtree: true });
	});
	await page.goto('/log/');
	expect(await rows(page)).toHaveLength(100);
	await expect(page.locator('figure circle').first()).toBeVisible();
	const shownAfterMs = await page.evaluate(() => {
		const [navigation] = performance.getEntriesByType(
			'navigation'
		) as PerformanceNavigationTiming[];
		const [shown] = performance.getEntriesByName('log-shown');
		return Math.round((shown?.startTime ?? NaN) - (navigation?.domInteractive ?? NaN));
	});
	test.info().annotations.push({
		type: 'log shown, ms after its page was read',
		description: `${shownAfterMs}`
	});
	console.log(`log of 20 000 tests shown ${shownAfterMs} ms after its page was read`);

	await page.getByRole('button', { name: /^Show 100 more of 19900$/ }).click();
	await expect(page.locator('#tests li')).toHaveCount(200);
	await page.getByRole('radio', { name: 'all' }).check();
	await expect(page.getByText(/one column stands for thirteen weeks/)).toBeVisible();
	expect(await page.locator('figure circle').count()).toBeLessThanOrEqual(150);
	expect(await page.locator('figure rect').count()).toBeLessThanOrEqual(151);
});
