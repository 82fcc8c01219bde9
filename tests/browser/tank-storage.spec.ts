import { readFile } from 'node:fs/promises';
import { loadTestLog, replayTest, testResult } from '../../src/lib/procedure';
import { expect, test } from './house';
import { startClock, Tank } from './tank';

test('storage refused: said at once, the test works on, and is offered as a file', async ({
	page
}) => {
	await startClock(page);
	await page.addInitScript(() => {
		IDBFactory.prototype.open = () => {
			throw new DOMException('not here', 'SecurityError');
		};
	});
	await page.goto('/test/');
	await expect(page.getByText(/Save it as a file at the end/)).toBeVisible();
	const tank = await new Tank(page).begin('House syringe kit');
	await expect(page.getByText(/Save it as a file at the end/)).toBeVisible();
	await tank.goToStep(7);
	await tank.press(/^Seal at 1\.00/);
	await tank.declareTheEnd();
	await tank.press('Read the mark');
	await page.getByLabel('Seal stands at').fill('0.52');
	await tank.press('That is my reading');
	await expect(tank.value).toHaveText(/^7\.4 ± /);
	const download = page.waitForEvent('download');
	await tank.press('Save this test as a file');
	const file = JSON.parse(await readFile(await (await download).path(), 'utf8')) as {
		tests: { log: unknown }[];
	};
	const log = loadTestLog(file.tests[0]?.log);
	expect(testResult(replayTest(log))?.value).toBeCloseTo(7.38, 6);
});

test('storage that fills up in the middle: said at once, and the test works on', async ({
	page
}) => {
	await startClock(page);
	const tank = await new Tank(page).begin('House syringe kit');
	await tank.goToStep(4);
	await page.evaluate(() => {
		IDBObjectStore.prototype.add = () => {
			throw new DOMException('no room', 'QuotaExceededError');
		};
	});
	await tank.goToStep(5);
	await expect(page.getByText(/Save it as a file at the end/)).toBeVisible();
	await tank.goToStep(7);
});

test('two windows on one test: the one that comes second says so', async ({ page, context }) => {
	await page.addInitScript(() => {
		const Channel = BroadcastChannel;
		const opened: string[] = [];
		Object.assign(window, { opened });
		window.BroadcastChannel = class extends Channel {
			constructor(name: string) {
				super(name);
				opened.push(name);
			}
		};
	});
	const tank = await new Tank(page).begin('House syringe kit');
	await tank.goToStep(2);
	const channels = () =>
		page.evaluate(() => (window as unknown as { opened: string[] }).opened.length);
	const before = await channels();
	await tank.goToStep(3);
	// A tap is seen the later, the more is done for it.
	expect(await channels()).toBe(before);
	const other = await context.newPage();
	await other.goto(page.url());
	const second = new Tank(other);
	await expect(second.heading).toHaveText('Step 3 of 9');
	await second.goToStep(4);
	await expect(page.getByText(/Continued in another window/)).toBeVisible();
	await expect(other.getByText(/Continued in another window/)).toBeHidden();
	// What is done here all the same is not kept, and does no harm there.
	await tank.doStep();
	await other.reload();
	await expect(second.heading).toHaveText('Step 4 of 9');
});
