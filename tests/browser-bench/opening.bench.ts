import { expect, test, type Browser, type Page } from '@playwright/test';
import { median, printTable } from './figures';
import { storeTests } from './many-tests';
import { slowDown } from './stopwatch';

const FEW = 20;
const MANY = 20_000;
const OPENINGS = 15;
const SLOWED = 4;

/** A page that is opened, and what must stand on it before it counts as opened. */
type Opened = { name: string; path: string; shown: readonly string[] };
const pages: Opened[] = [
	{ name: 'home', path: '/', shown: ['ul.readings li'] },
	{ name: 'log: list', path: '/log/', shown: ['#tests li'] },
	{ name: 'log: list and picture', path: '/log/', shown: ['#tests li', 'figure circle'] }
];

/** Since the navigation began, and since the page's own script began, until all is painted; ms. */
type Times = { fromNavigationMs: number; fromScriptMs: number };

declare global {
	interface Window {
		whenPainted(selectors: readonly string[]): Promise<Times>;
	}
}

/** Stands in the page before its own scripts. */
function watchOpening(): void {
	let scriptAt: number | null = null;
	const painted = new Map<string, number>();
	const watched = ['ul.readings li', '#tests li', 'figure circle'];
	let told = () => undefined as void;
	const look = () => {
		// The page's own script runs as soon as it has been read, right after this.
		if (document.querySelector('body script')) scriptAt ??= performance.now();
		for (const selector of watched.filter((each) => !painted.has(each))) {
			if (!document.querySelector(selector)) continue;
			painted.set(selector, Infinity);
			requestAnimationFrame(() => {
				const { port1, port2 } = new MessageChannel();
				port1.onmessage = () => {
					painted.set(selector, performance.now());
					told();
				};
				port2.postMessage(null);
			});
		}
	};
	new MutationObserver(look).observe(document, { childList: true, subtree: true });
	window.whenPainted = (selectors) =>
		new Promise((give) => {
			told = () => {
				const at = Math.max(...selectors.map((each) => painted.get(each) ?? Infinity));
				if (Number.isFinite(at) && scriptAt !== null)
					give({ fromNavigationMs: at, fromScriptMs: at - scriptAt });
			};
			told();
		});
}

/** A browser of its own with so many tests in it. */
async function browserWith(browser: Browser, count: number, baseURL: string): Promise<Page> {
	const context = await browser.newContext({ baseURL, serviceWorkers: 'block' });
	const page = await context.newPage();
	await page.goto('/log/');
	await expect(page.getByText('Nothing measured yet.')).toBeVisible();
	await storeTests(page, count);
	await page.addInitScript(watchOpening);
	return page;
}

async function openOnce(page: Page, { path, shown }: Opened): Promise<Times> {
	await page.goto(path, { waitUntil: 'commit' });
	return page.evaluate((selectors) => window.whenPainted(selectors), shown);
}

/** In turns, so that whatever else the machine does falls on both alike. */
async function openInTurns(few: Page, many: Page, opened: Opened) {
	const times: { few: Times[]; many: Times[] } = { few: [], many: [] };
	await openOnce(few, opened);
	await openOnce(many, opened);
	for (let i = 0; i < OPENINGS; i++) {
		times.few.push(await openOnce(few, opened));
		times.many.push(await openOnce(many, opened));
	}
	return times;
}

/** From the press to a picture of all that was ever measured. */
async function pictureOfAll(page: Page): Promise<number> {
	await page.goto('/log/');
	await expect(page.locator('figure circle').first()).toBeVisible();
	const ms = await page.evaluate(
		() =>
			new Promise<number>((give) => {
				const all = document.querySelectorAll<HTMLInputElement>('#picture input[type=radio]')[2];
				const began = performance.now();
				new MutationObserver((_, observer) => {
					if (!document.querySelector('figure rect')) return;
					observer.disconnect();
					requestAnimationFrame(() => setTimeout(() => give(performance.now() - began)));
				}).observe(document.body, { childList: true, subtree: true });
				all?.click();
			})
	);
	expect(await page.locator('figure rect').count()).toBeGreaterThan(50);
	return ms;
}

test(`opening with ${MANY} stored tests, against ${FEW}`, async ({ browser, baseURL }) => {
	const few = await browserWith(browser, FEW, baseURL ?? '');
	const many = await browserWith(browser, MANY, baseURL ?? '');
	const rows: string[][] = [];
	const lowest = (values: readonly number[]) => Math.min(...values);
	const figures = (values: readonly number[]) => [
		lowest(values).toFixed(0),
		median(values).toFixed(0)
	];
	for (const slowed of [1, SLOWED]) {
		await slowDown(few, slowed);
		await slowDown(many, slowed);
		for (const opened of pages) {
			const times = await openInTurns(few, many, opened);
			for (const [from, key] of [
				['navigation', 'fromNavigationMs'],
				['script', 'fromScriptMs']
			] as const) {
				const a = times.few.map((each) => each[key]);
				const b = times.many.map((each) => each[key]);
				rows.push([
					`${opened.name}, from ${from}${slowed > 1 ? `, slowed ${slowed} times` : ''}`,
					...figures(a),
					...figures(b),
					(lowest(b) / lowest(a)).toFixed(2),
					(median(b) / median(a)).toFixed(2),
					`${b.filter((ms) => ms > 300).length} of ${b.length}`
				]);
			}
		}
	}
	await slowDown(many, 1);
	const all: number[] = [];
	for (let i = 0; i < 5; i++) all.push(await pictureOfAll(many));
	await many.goto('/log/');
	await expect(many.locator('#tests li')).toHaveCount(100);
	await expect(many.getByText('unreadable')).toBeHidden();
	printTable(
		`Opened and painted, ms: ${OPENINGS} times each, the shortest and the median`,
		['', `${FEW}`, 'median', `${MANY}`, 'median', 'ratio', 'median', 'over 300 ms'],
		rows
	);
	console.log(
		`A picture of all ${MANY}, from the press: ${figures(all).join(' ms, median ')} ms\n`
	);
});
