import type { Page } from '@playwright/test';
import { houseSyringeKit } from '../../src/lib/kits';
import type { KnownSolution } from '../../src/lib/observation';
import { Check } from './check';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { fileOf, wholeTest } from './tank-logs';
import flows from '../reference/data/bland-altman-1986.json' with { type: 'json' };

/** Without barriers in both themes, and no wider than a small phone. */
async function expectSound(page: Page): Promise<void> {
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	const before = page.viewportSize()!;
	await page.setViewportSize({ width: 320, height: 640 });
	await expectNoSidewaysScroll(page);
	await page.setViewportSize(before);
}
async function openAll(page: Page, words: RegExp): Promise<void> {
	for (const summary of await page.locator('summary').filter({ hasText: words }).all()) {
		const isOpen = await summary.evaluate((each) => each.closest('details')?.open ?? false);
		if (!isOpen && (await summary.isVisible())) await summary.click();
	}
}

// Source: Bland and Altman 1986 (Lancet i:307), first readings by two meters: bias −2.1, standard error
// 9.4, confidence limits −22.0 and 17.8. Limits at 1.96 s, −78.1 and 73.9, computed with another program.
test('a published comparison, pasted: the printed result is on the page and survives a reload', async ({
	page
}) => {
	const pasted = flows.large.map(([first], i) => `${first},0\t${flows.mini[i]?.[0]},0`).join('\n');
	await page.goto('/check/compare/');
	await expect(page.getByText(/^Nothing yet/)).toBeVisible();
	await expectSound(page);
	const list = page.getByLabel(/paste all of them/);
	await list.fill(`large\tmini\n${pasted}\nspilled`);
	await expect(page.getByText(/^Line 19, “spilled”/)).toBeVisible();
	const said = page.getByTestId('mean-difference');
	await expect(said).toHaveText(/^−2\s±\s20 dKH$/);
	await expect(page.getByText(/from 22 lower to 18 higher/)).toBeVisible();
	await expect(page.getByText(/between −78 and \+74/)).toBeVisible();
	await openAll(page, /^(The same as a table|Figures to work it out|If one scatters)/);
	await expect(page.getByRole('row', { name: /^Mean difference −2\.12 9\.40$/ })).toBeVisible();
	await page.getByLabel('Portions, one a line').fill('2 4,9\n4 8,9\n5 11,1\n8 17,0\n10 21,1');
	await page.getByLabel('drops', { exact: true }).check();
	await expect(page.getByTestId('blank')).toHaveText(/^0\.9\s±\s0\.3\s+drops$/);
	await page.getByLabel('All values of one sample').fill('8,1 8,3');
	await page.getByLabel('Usual scatter of one result').fill('0,1');
	await expect(page.getByTestId('of-repeats')).toHaveText('8.20 dKH');
	await openAll(page, /^(The same as a table|Figures to work it out)/);
	await expectSound(page);

	await page.reload();
	await expect(page.getByText('As you left it.')).toBeVisible();
	await expect(list).toHaveValue(`large\tmini\n${pasted}\nspilled`);
	await expect(said).toHaveText(/^−2\s±\s20 dKH$/);
	await page.getByRole('button', { name: 'Start over' }).click();
	await expect(said).toBeHidden();
	await page.getByRole('button', { name: 'Bring it back' }).click();
	await expect(said).toBeVisible();
});

test('samples by keyboard alone, one after the other', async ({ page }) => {
	await page.goto('/check/compare/');
	await page.getByLabel('Your kit', { exact: true }).focus();
	const type = async (texts: readonly string[]) => {
		for (const [i, text] of texts.entries()) {
			await page.keyboard.type(text);
			await page.keyboard.press(i === texts.length - 1 ? 'Enter' : 'Tab');
		}
	};
	await type(['7,4', '0,4', '7,9', '0,3']);
	await expect(page.getByLabel('Your kit', { exact: true })).toBeFocused();
	await expect(page.getByTestId('mean-difference')).toHaveText(/^−0\.5\s±\s0\.5 dKH$/);
	await type(['8.0', '0.4', '8.9', 'x']);
	await expect(page.getByText(/“x” is no number/)).toBeVisible();
	await expect(page.getByLabel('± of the other')).toHaveValue('x');
	await expect(page.getByLabel('± of the other')).toBeFocused();
	await page.keyboard.press('ControlOrMeta+a');
	await type(['0.3']);
	await expect(page.getByLabel(/paste all of them/)).toHaveValue(
		'7,4 ± 0,4; 7,9 ± 0,3\n8.0 ± 0.4; 8.9 ± 0.3'
	);
	// 0.5/0.5 and 0.9/0.5 (ISO 13528).
	await expect(page.getByText(/^On 1 of 2 samples/)).toBeVisible();
	await openAll(page, /^Sample by sample/);
	await expect(page.getByText(/zeta −3\.6/)).toBeVisible();
	await expectSound(page);
});

test('a sample that a kept check knows by two methods is put in once', async ({ page }) => {
	const check = await new Check(page).begin(houseSyringeKit.name, '7.4', {
		blanks: { 'Its ±': '0.4' }
	});
	await check.add('A second method', { blanks: { 'What it read': '7.9', 'Its ±': '0.3' } });
	await page.goto('/check/compare/');
	const line = page.getByText(/^One sample of your checks had/);
	await expect(line).toContainText(houseSyringeKit.name);
	await line.getByRole('button', { name: 'Put it in the list' }).click();
	await expect(page.getByLabel(/paste all of them/)).toHaveValue('7.4 ± 0.4; 7.9 ± 0.3');
	await expect(line).toContainText('In the list.');
	await expect(page.getByTestId('mean-difference')).toHaveText(/^−0\.5\s±\s0\.5 dKH$/);
	await page.getByRole('link', { name: 'Check a reading' }).click();
	await expect(page).toHaveURL(/\/check\/?$/);
});

const DAY = 86_400_000;
const solution: KnownSolution = {
	nominal: 9.6,
	expandedUncertainty: 0.1,
	unit: 'dKH',
	matrix: 'seawater',
	name: 'baking soda'
};
/** Of a solution of 9.6: where the seal stood, week by week, and with which bottle. */
const weeks = [
	...[0.36, 0.37, 0.35, 0.36, 0.37, 0.35].map((sealMl) => ({ sealMl, lot: 'A' })),
	...[0.47, 0.46, 0.48, 0.47].map((sealMl) => ({ sealMl, lot: 'B' }))
];
const checks = weeks.map(({ sealMl, lot }, week) =>
	wholeTest(`check-${week}`, Date.UTC(2026, 0, 4, 12) + week * 7 * DAY, sealMl, {
		water: 'reference',
		reference: solution,
		lot,
		tester: 'Ada'
	})
);

test('checks of a kit: running average and sum, bottle by bottle, and what an alarm means', async ({
	page
}) => {
	await page.goto('/settings/');
	await expect(page.getByText(/^Everything is kept in this browser/)).toBeVisible();
	await page.getByLabel('Take in a file').setInputFiles({
		name: 'copy.json',
		mimeType: 'application/json',
		buffer: Buffer.from(fileOf(checks))
	});
	await expect(page.getByText('Added: 10 records.')).toBeVisible();
	await page.goto(`/kits/checks/#kit=${houseSyringeKit.id}`);
	// Means of 0.36 and 0.47 on the scale, 16 dKH for each mL by the leaflet: 0.11 · 16 of 9.6, 18.3 % less. Both
	// ends of the interval have the same digits.
	const stands = page.getByTestId('stands-out');
	await expect(stands).toHaveText(/^Since lot B known solutions read about 18(\.\d)? % lower/);
	const [low = '', high = ''] = ((await stands.textContent()) ?? '')
		.match(/between ([\d.]+) and ([\d.]+) %/)!
		.slice(1);
	expect(low.split('.')[1]?.length).toBe(high.split('.')[1]?.length);
	expect(Number(low)).toBeLessThan(18.3);
	expect(Number(high)).toBeGreaterThan(18.3);
	await expect(page.getByTestId('looks')).toContainText(/running sum: beyond its limit since/);
	await expect(page.getByRole('region', { name: 'Bottle by bottle' })).toContainText(
		/B: 4 checks, 18(\.\d)?\s±\s\d+(\.\d)? % lower than lot A/
	);
	for (const kind of ['running average', 'running sum', 'each check by itself']) {
		await page.getByLabel(kind).check();
		if (kind !== 'each check by itself') await page.getByLabel('anew with each bottle').check();
		await openAll(page, /^The same as a table/);
		await expectSound(page);
	}
	await page.getByRole('link', { name: 'Work out a pH curve' }).click();
	await expect(page.getByRole('region', { name: 'What it needs' })).toContainText('a pH meter');
	await page.getByRole('link', { name: 'Two ways of measuring, side by side' }).click();
	await expect(page).toHaveURL(/\/check\/compare\/?$/);
});
