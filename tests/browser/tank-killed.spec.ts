import type { BrowserContext, Page } from '@playwright/test';
import { expect, test } from './house';
import { untilKept } from './kept';
import { Tank } from './tank';

/** The renderer is gone at once: nothing of the page gets to say goodbye. */
async function kill(page: Page): Promise<void> {
	const session = await page.context().newCDPSession(page);
	const isGone = new Promise<void>((done) => page.once('crash', () => done()));
	// A page that has crashed never answers.
	void session.send('Page.crash').catch(() => undefined);
	await isGone;
	await page.close();
}

/** A window opened after that, at the same address. */
async function reopen(context: BrowserContext, address: string): Promise<Tank> {
	const page = await context.newPage();
	await page.goto(address);
	return new Tank(page);
}

/** What a test says of where it stands: the step and, while titrating, the drops and the colour. */
async function standing(tank: Tank): Promise<string> {
	await expect(tank.heading).toHaveText(/^(Step \d+ of \d+|Result|Before the number)$/);
	const heading = await tank.heading.innerText();
	const drops = tank.page.locator('.count');
	if ((await drops.count()) === 0) return heading;
	const count = (await drops.innerText()).replace(/\s+/g, ' ').trim();
	const isTurned = await tank.button(/^It faded/).isVisible();
	return `${heading}, ${count}${isTurned ? ', turned' : ''}`;
}

/** One tap at each step of a syringe test; what stands after it. */
const taps: { tap: (tank: Tank) => Promise<void>; after: string }[] = [
	{ tap: (tank) => tank.press('Skip all this'), after: 'Step 1 of 9' },
	...[2, 3, 4, 5, 6, 7].map((n) => ({
		tap: (tank: Tank) => tank.main.click(),
		after: `Step ${n} of 9`
	})),
	{ tap: (tank) => tank.press(/^Seal at 1\.00/), after: 'Step 8 of 9, ' },
	{ tap: (tank) => tank.press('+5 drops'), after: 'Step 8 of 9, 5 drops' },
	{ tap: (tank) => tank.press(/^Flash/), after: 'Step 8 of 9, 5 drops, turned' },
	{ tap: (tank) => tank.press(/^It faded/), after: 'Step 8 of 9, 5 drops' },
	{ tap: (tank) => tank.press('+1 drop'), after: 'Step 8 of 9, 6 drops' },
	{ tap: (tank) => tank.press(/^Flash/), after: 'Step 8 of 9, 6 drops, turned' },
	{ tap: (tank) => tank.press(/^It stays/), after: 'Step 8 of 9' },
	{ tap: (tank) => tank.press('Read the mark'), after: 'Step 9 of 9' }
];

test('killed at any step, a test is found again where it was', async ({ page, context }) => {
	await page.goto('/test/');
	await page.getByRole('button', { name: /^House syringe kit/ }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Before the number');
	let tank = new Tank(page);
	for (const { tap, after } of taps) {
		await tap(tank);
		await expect.poll(() => standing(tank)).toBe(after);
		await untilKept(tank.page);
		const address = tank.page.url();
		await kill(tank.page);
		tank = await reopen(context, address);
		expect(await standing(tank)).toBe(after);
	}
	await tank.page.getByLabel('Seal stands at').fill('0.52');
	await tank.press('That is my reading');
	// The end was said to stay at once: that is asked about, and noted.
	const takeIt = tank.button('Take it so');
	await expect(takeIt.or(tank.value)).toBeVisible();
	await untilKept(tank.page);
	await kill(tank.page);
	tank = await reopen(context, tank.page.url());
	await expect(takeItIn(tank).or(tank.value)).toBeVisible();
	if (await takeItIn(tank).isVisible()) await takeItIn(tank).click();
	await expect(tank.value).toHaveText(/^7\.4 ± /);
});
const takeItIn = (tank: Tank) => tank.button('Take it so');

test('killed in the very moment of a tap, a test loses that tap at most', async ({
	page,
	context
}) => {
	await page.goto('/test/');
	await page.getByRole('button', { name: /^House syringe kit/ }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Before the number');
	let tank = new Tank(page);
	let before = 'Before the number';
	for (const { tap, after } of taps) {
		const address = tank.page.url();
		await tap(tank);
		await kill(tank.page);
		tank = await reopen(context, address);
		// The page says 'Test' while it looks, too: only then is it known what it found.
		const choice = tank.button(/^House syringe kit/);
		const goesOn = tank.heading.filter({ hasText: /^(Step|Before)/ });
		await expect(choice.or(goesOn)).toBeVisible();
		const found = await tank.heading.innerText();
		if (before === 'Before the number' && found === 'Test') {
			// Not a word of it was kept yet: there is nothing to come back to.
			await tank.press(/^House syringe kit/);
			await tank.press('Skip all this');
		}
		const now = await standing(tank);
		expect([before, after]).toContain(now);
		// The tap that was lost is made again.
		if (now !== after) {
			await tap(tank);
			await expect.poll(() => standing(tank)).toBe(after);
			await untilKept(tank.page);
		}
		before = after;
	}
});

test('the test that was left is offered on the first page, with its step', async ({ page }) => {
	const tank = await new Tank(page).begin('House syringe kit');
	await tank.goToStep(4);
	await page.goto('/');
	await page
		.getByRole('link', { name: /^Go on: step 4/ })
		.first()
		.click();
	await expect(tank.heading).toHaveText('Step 4 of 9');
});

test('left for now, it stands under the kits, and is gone on with from there', async ({ page }) => {
	const tank = await new Tank(page).begin('House syringe kit');
	await tank.goToStep(3);
	await tank.press('Pause');
	await page.getByRole('link', { name: 'Leave the test for now' }).click();
	await expect(tank.heading).toHaveText('Test');
	await page.getByRole('link', { name: /^House syringe kit.*step 3/ }).click();
	await expect(tank.heading).toHaveText('Step 3 of 9');
});

test('the wrong kit was taken: back to the choice, and nothing is left over', async ({ page }) => {
	await page.goto('/test/');
	const tank = new Tank(page);
	await tank.press(/^House dropper kit/);
	await expect(tank.heading).toHaveText('Before the number');
	await expect(page.getByText(/The titrant is dilute acid/)).toBeVisible();
	await page.getByRole('link', { name: 'Another kit' }).click();
	await expect(tank.heading).toHaveText('Test');
	await expect(page.getByRole('heading', { name: 'Left unfinished' })).toBeHidden();
	await tank.chooseKit('House syringe kit');
});

test('a wait goes on by the clock while the page is gone', async ({ page }) => {
	await page.clock.install({ time: new Date('2026-03-14T18:10:00Z') });
	const tank = await new Tank(page).begin('House syringe kit');
	await tank.goToStep(6);
	await expect(page.getByText(/^0:0[45]$/)).toBeVisible();
	await tank.passes(3);
	await page.reload();
	await expect(tank.heading).toHaveText('Step 6 of 9');
	await expect(page.getByText(/^0:0[12]$/)).toBeVisible();
});
