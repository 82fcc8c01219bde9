import { gzipSync } from 'node:zlib';
import type { Page, Response } from '@playwright/test';
import { expect, test } from './house';

/** kB of 1000 bytes. */
const mostKb = 70;

/** The script that a page asks for until it rests, compressed, kB. */
async function scriptKb(page: Page, path: string): Promise<number> {
	const sizes = new Map<string, number>();
	const reading: Promise<void>[] = [];
	const weigh = async (response: Response) =>
		void sizes.set(response.url(), gzipSync(await response.body(), { level: 9 }).length);
	const note = (response: Response) => {
		if (response.request().resourceType() === 'script') reading.push(weigh(response));
	};
	page.on('response', note);
	await page.goto(path, { waitUntil: 'networkidle' });
	// Storage is read once the page is there: what that loads counts too.
	await page.waitForTimeout(500);
	page.off('response', note);
	await Promise.all(reading);
	// It starts, and reads its storage: with fewer it would not have been measured whole.
	expect(sizes.size).toBeGreaterThan(4);
	const inline = (await page.locator('script:not([src])').allInnerTexts()).join('\n');
	const bytes = [...sizes.values()].reduce((sum, size) => sum + size, gzipSync(inline).length);
	console.log(`${path}: ${(bytes / 1000).toFixed(1)} kB in ${sizes.size} scripts`);
	return bytes / 1000;
}

test(`the first page needs less than ${mostKb} kB of script, compressed`, async ({ page }) => {
	expect(await scriptKb(page, '/')).toBeLessThan(mostKb);
});

test('a drill of alkalinity needs less than 370 kB, with calcium and magnesium in the house', async ({
	page
}) => {
	expect(await scriptKb(page, '/practise/first-drops/')).toBeLessThan(370);
});

test('and no more when there are readings to show', async ({ page, context }) => {
	// A page that opens the records makes the database.
	await page.goto('/practise/', { waitUntil: 'networkidle' });
	await page.evaluate(async () => {
		const opened = indexedDB.open('halfdrop');
		await new Promise((done) => (opened.onsuccess = done));
		const writing = opened.result.transaction('tests', 'readwrite');
		writing.objectStore('tests').add({
			id: 'made-up',
			kitId: 'house-syringe',
			analyte: 'alkalinity',
			startedAtEpochMs: Date.now() - 86_400_000,
			changedAtEpochMs: Date.now(),
			state: 'kept',
			where: '',
			summary: {
				value: 7.4,
				unit: 'dKH',
				standardUncertainty: 0.2,
				expandedUncertainty: 0.4,
				repeatabilitySd: 0.1,
				values: [7.4],
				sampleVolumeMl: 6,
				isSuspect: false
			}
		});
		await new Promise((done) => (writing.oncomplete = done));
		opened.result.close();
	});
	await page.close();
	// A page of its own: nothing is in its memory from before.
	const home = await context.newPage();
	expect(await scriptKb(home, '/')).toBeLessThan(mostKb);
	await expect(home.getByText('7.4').first()).toBeVisible();
});
