import type { BrowserContext, Page } from '@playwright/test';
import { Bench, settle } from './bench';
import { expect, test as base } from './house';
import { SiteServer } from './site-server';
import { startClock, Tank } from './tank';

/** Each test has a server of its own, which can be switched off and updated. */
const test = base.extend<{ server: SiteServer; folder: string }>({
	folder: ['', { option: true }],
	server: async ({ folder }, use) => {
		const server = await SiteServer.open(folder);
		await use(server);
		await server.close();
	},
	baseURL: ({ server }, use) => use(`${server.address}${server.base}/`)
});
test.use({ serviceWorkers: 'allow' });

/** A first visit, until the whole site is kept. */
async function visit(page: Page): Promise<void> {
	await page.goto('./');
	await expect
		.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null))
		.toBe(true);
}

async function switchOff(context: BrowserContext, server: SiteServer): Promise<void> {
	server.switchOff();
	await context.setOffline(true);
	// The network is really off: what is not kept cannot be had.
	const page = await context.newPage();
	await page.goto('./');
	const answer = page.evaluate(() =>
		fetch('no-such-file').then(
			() => 'there',
			() => 'off'
		)
	);
	expect(await answer).toBe('off');
	await page.close();
}

for (const folder of ['', '/some/folder']) {
	test.describe(`a site in the folder "${folder}"`, () => {
		test.use({ folder });

		test('opens every page without a network after the first visit', async ({
			page,
			context,
			server
		}) => {
			await visit(page);
			await switchOff(context, server);
			await page.reload();
			await expect(page.getByRole('heading', { level: 1 })).toHaveText('Halfdrop');
			await page.getByRole('link', { name: 'Practise', exact: true }).first().click();
			await expect(page.getByRole('heading', { level: 1 })).toHaveText('Practise');
			for (const place of ['test', 'log', 'kits', 'settings', 'practise']) {
				// As typed by hand: without the stroke at its end, with something behind it.
				await page.goto(`./${place}?from=hand#there`);
				expect(page.url()).toBe(`${server.address}${folder}/${place}/?from=hand#there`);
				await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
			}
			await page.goto('./no-such-page');
			await expect(page.getByRole('heading', { level: 1 })).toHaveText('Halfdrop');
		});
	});
}

test('a practice run goes on without a network, reload and all', async ({
	page,
	context,
	server
}) => {
	await settle(page);
	await visit(page);
	await switchOff(context, server);
	const bench = await new Bench(page).open('sunday-evening');
	await bench.press('Fine, 10 mL');
	await bench.press('Next');
	const name = await bench.heading.innerText();
	await page.reload();
	await expect(bench.heading).toHaveText(name);
});

test('a test beside the tank goes from the kit to the log without a network', async ({
	page,
	context,
	server
}) => {
	await startClock(page);
	await visit(page);
	await switchOff(context, server);
	const tank = new Tank(page);
	await page.goto('./test/');
	await tank.chooseKit('House syringe kit');
	await tank.goToStep(7);
	await page.reload();
	await tank.press(/^Seal at 1\.00/);
	await tank.declareTheEnd();
	await tank.press('Read the mark');
	await page.getByLabel('Seal stands at').fill('0.52');
	await tank.press('That is my reading');
	await expect(tank.value).toHaveText(/^7\.4 ± /);
	await tank.press('Done');
	await page.getByRole('link', { name: 'See it in the log' }).click();
	await expect(page.getByText(/7\.4/).first()).toBeVisible();
});

test('a newer version is offered on the first page, and a test in progress survives taking it', async ({
	page,
	server
}) => {
	await visit(page);
	const tank = new Tank(page);
	await page.goto('./test/');
	await tank.chooseKit('House syringe kit');
	await tank.goToStep(4);
	server.update();
	await newVersionComes(page);
	// In the middle of a test nothing speaks of it.
	await expect(page.getByText(/newer version/)).toBeHidden();
	await page.goto('./');
	await expect(page.getByText(/newer version/)).toBeVisible();
	await page.getByRole('button', { name: 'Take it now' }).click();
	await expect.poll(() => build(page).catch(() => null)).toBe('next');
	await page
		.getByRole('link', { name: /^Go on: step 4/ })
		.first()
		.click();
	await expect(tank.heading).toHaveText('Step 4 of 9');
});

/** State of the version that waits. */
const lies = async () => (await navigator.serviceWorker.ready).waiting?.state ?? 'none';

/** Lets the browser look for a newer version, until it lies ready. */
async function newVersionComes(page: Page): Promise<void> {
	await page.evaluate(async () => {
		const registration = await navigator.serviceWorker.ready;
		await registration.update();
	});
	await expect.poll(() => page.evaluate(lies)).toBe('installed');
}
const build = (page: Page) => page.locator('html').getAttribute('data-build');

test('a newer version waits; the page in use goes on, and so does its run when it is taken', async ({
	page,
	context,
	server
}) => {
	await settle(page);
	await visit(page);
	const other = await context.newPage();
	await other.goto('./');
	await other.evaluate(() => (document.documentElement.dataset['sameDocument'] = 'yes'));
	const bench = await new Bench(page).open('sunday-evening');
	await bench.press('Fine, 10 mL');
	await bench.press('Next');
	const name = await bench.heading.innerText();

	server.update();
	await newVersionComes(page);
	// Nothing has changed under the run, nor after a reload: it is still the version it began in.
	await bench.press('tank water');
	await expect(bench.button('tank water')).toHaveAttribute('aria-pressed', 'true');
	await page.reload();
	await expect(bench.heading).toHaveText(name);
	await expect(bench.button('tank water')).toHaveAttribute('aria-pressed', 'true');
	expect(await build(page)).toBeNull();

	// It is asked for in one window, which is loaded anew; the run is where it was.
	await page.evaluate(async () => {
		const { waiting } = await navigator.serviceWorker.ready;
		const taken = new Promise((done) =>
			navigator.serviceWorker.addEventListener('controllerchange', done)
		);
		waiting?.postMessage('take');
		await taken;
	});
	await page.reload();
	expect(await build(page)).toBe('next');
	await expect(bench.heading).toHaveText(name);
	await expect(bench.button('tank water')).toHaveAttribute('aria-pressed', 'true');

	// (The clock of the tests stands still in all windows.)
	await context.clock.resume();
	// The other window goes on with the version before, parts it had not loaded yet included.
	expect(await build(other)).toBeNull();
	await other.getByRole('link', { name: 'Practise', exact: true }).first().click();
	await expect(other.getByRole('heading', { level: 1 })).toHaveText('Practise');
	expect(await build(other)).toBeNull();
	expect(await other.evaluate(() => document.documentElement.dataset['sameDocument'])).toBe('yes');
});

test('the site can be installed: name, icons and start are there', async ({ page, request }) => {
	await page.goto('./');
	const href = await page.locator('link[rel=manifest]').getAttribute('href');
	const address = new URL(href ?? '', page.url());
	const manifest = (await (await request.get(address.href)).json()) as {
		name: string;
		display: string;
		start_url: string;
		icons: { src: string; sizes: string; type: string; purpose?: string }[];
	};
	expect(manifest).toMatchObject({ name: 'Halfdrop', display: 'standalone' });
	expect(new URL(manifest.start_url, address).href).toBe(new URL('./', page.url()).href);
	for (const { src, sizes, type } of manifest.icons) {
		const answer = await request.get(new URL(src, address).href);
		expect(answer.headers()['content-type']).toBe(type);
		if (type !== 'image/png') continue;
		// Width and height stand at bytes 16 and 20 of a PNG (ISO/IEC 15948, header chunk).
		const bytes = await answer.body();
		expect(`${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`).toBe(sizes);
	}
	expect(manifest.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true);
});
