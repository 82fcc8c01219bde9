import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';
import { untilKept } from './kept';

/** From here on a page's buttons answer; before that it can only be read. */
async function untilAwake(page: Page): Promise<void> {
	await page.locator('html[data-awake]').waitFor({ state: 'attached' });
}

/**
 * The test of this house: a page that fails when it asks anything of another host, or complains in
 * the console (a refused script of the Content-Security-Policy shows there).
 */
export const test = base.extend<{ quiet: void }>({
	// Keeping the whole site at each test's first visit would only cost time; `offline.spec.ts` allows it.
	serviceWorkers: 'block',
	page: async ({ page }, use) => {
		const goto = page.goto.bind(page);
		const reload = page.reload.bind(page);
		// Whoever asks for another moment of the page's coming wants to see it asleep.
		page.goto = async (url, options) => {
			if (page.url().startsWith('http')) await untilKept(page);
			const response = await goto(url, options);
			if (!options?.waitUntil) await untilAwake(page);
			return response;
		};
		page.reload = async (options) => {
			await untilKept(page);
			const response = await reload(options);
			if (!options?.waitUntil) await untilAwake(page);
			return response;
		};
		await use(page);
	},
	quiet: [
		async ({ page, baseURL }, use) => {
			const strangers: string[] = [];
			const complaints: string[] = [];
			const origin = new URL(baseURL ?? 'http://127.0.0.1').origin;
			page.on('request', (request) => {
				const url = request.url();
				if (!url.startsWith(origin) && !/^(data|blob):/.test(url)) strangers.push(url);
			});
			page.on('console', (message) => {
				if (message.type() === 'error') complaints.push(message.text());
			});
			page.on('pageerror', (error) => complaints.push(error.message));
			await use();
			expect(strangers, 'requests to other hosts').toEqual([]);
			expect(complaints, 'errors in the console').toEqual([]);
		},
		{ auto: true }
	]
});

export { expect };

/** On the way from one colour to another (of a theme, under the pointer) no contrast can be judged. */
async function untilAtRest(page: Page): Promise<void> {
	await page.waitForFunction(
		() => !document.getAnimations().some((each) => each instanceof CSSTransition)
	);
}

/**
 * Fails with axe's own words when a rule of WCAG 2.2 A or AA is broken on the page as it stands.
 *
 * @param but rules that cannot be judged as the page stands
 */
export async function expectNoBarriers(page: Page, but: readonly string[] = []): Promise<void> {
	await untilAtRest(page);
	const result = await new AxeBuilder({ page })
		.disableRules([...but])
		.withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
		.analyze();
	const found = result.violations.map(
		(violation) =>
			`${violation.id}: ${violation.nodes.map((node) => node.target.join(' ')).join(', ')}`
	);
	expect(found).toEqual([]);
}

/** Fails when the page can be scrolled sideways: something is wider than the window. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
	const width = await page.evaluate(() => ({
		content: document.documentElement.scrollWidth,
		window: document.documentElement.clientWidth
	}));
	expect(width.content).toBeLessThanOrEqual(width.window);
}

/** Puts the page into one of its two themes as the system would ask for it. */
export async function inTheme(page: Page, theme: 'light' | 'dark'): Promise<void> {
	await page.emulateMedia({ colorScheme: theme });
}
