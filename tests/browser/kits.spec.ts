import type { Locator, Page } from '@playwright/test';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { startClock, Tank } from './tank';

/** An invented kit, like none on sale: 5 mL of water, a 1 mL syringe, 1 mL worth 16 dKH. */
const leaflet = {
	name: 'Harbour kit',
	sampleMl: '5,0',
	largerSampleMl: '10',
	drops: '4',
	reagent: 'A',
	swirlSeconds: '20',
	capacityMl: '1',
	graduationMl: '0,02',
	tipMl: '0,18',
	rows: [
		['1', '0'],
		['0,8', '3,2'],
		['0,5', '8'],
		['0,2', '12,8'],
		['0', '16']
	] as const
};

const blank = (page: Page, label: string): Locator =>
	page.getByRole('textbox', { name: label, exact: true });

/** Hands on a keyboard: every move is a Tab, every figure a key. */
class Keyboard {
	constructor(private readonly page: Page) {}

	/** Tabs on to a control of this name; it must come, and come forwards. */
	async tabTo(control: Locator): Promise<void> {
		for (let i = 0; i < 12; i++) {
			await this.page.keyboard.press('Tab');
			if (await control.evaluate((element) => element === document.activeElement)) return;
		}
		throw new Error(`twelve tabs do not lead to ${String(control)}`);
	}
	async fill(label: string, text: string): Promise<void> {
		await this.tabTo(this.page.getByLabel(label, { exact: true }));
		await this.page.keyboard.type(text);
	}
}

/** The sentence up to the titrant. */
async function typeFirstHalf(page: Page, keys: Keyboard): Promise<void> {
	await blank(page, 'Name of the kit').focus();
	await page.keyboard.type(leaflet.name);
	await keys.fill('Sample, mL', leaflet.sampleMl);
	await keys.fill('Larger sample for a finer result, mL; empty if there is none', '1o');
	await keys.fill('Amount of reagent 1', leaflet.drops);
	await keys.fill('Name of reagent 1', leaflet.reagent);
	await keys.fill(`Swirl after ${leaflet.reagent}, seconds`, leaflet.swirlSeconds);
}

/** From the titrant to the last row of the table. */
async function typeSecondHalf(page: Page, keys: Keyboard): Promise<void> {
	await keys.fill('Capacity of the syringe, mL', leaflet.capacityMl);
	await keys.fill('From one line of the scale to the next, mL', leaflet.graduationMl);
	await keys.fill('Volume of tip and nozzle, mL; empty if it is not known', leaflet.tipMl);
	await keys.tabTo(page.getByRole('radio', { name: /0 at the tip/ }));
	await page.keyboard.press('Space');
	await keys.fill('Colour at the start', 'blue');
	await keys.fill('Colour at the end', 'pink');
	for (const [i, [at, value]] of leaflet.rows.entries()) {
		await keys.fill(`Row ${i + 1}, the mark at the seal`, at);
		await keys.fill(`Row ${i + 1}, dKH`, value);
	}
}

test('a syringe kit is typed in from its leaflet by keyboard, with commas', async ({ page }) => {
	const keys = new Keyboard(page);
	await page.goto('/kits/');
	await expect(page.getByText('No kit of yours is here yet')).toBeVisible();
	await page.getByRole('link', { name: 'Add a kit' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Add a kit');
	await expect(blank(page, 'Name of the kit')).toBeVisible();
	await typeFirstHalf(page, keys);

	const larger = blank(page, 'Larger sample for a finer result, mL; empty if there is none');
	await test.step('nonsense is answered beside its blank and stays as typed', async () => {
		await expect(larger).toHaveAttribute('aria-invalid', 'true');
		await expect(larger).toHaveValue('1o');
		await expect(larger).toHaveAccessibleDescription(/“1o” is no number/);
		await larger.focus();
		await page.keyboard.press('ControlOrMeta+A');
		await page.keyboard.type(leaflet.largerSampleMl);
		await expect(larger).not.toHaveAttribute('aria-invalid', 'true');
	});

	await test.step('a reload in the middle loses no letter', async () => {
		await page.reload();
		await expect(page.getByText('As you left it.')).toBeVisible();
		await expect(blank(page, 'Name of the kit')).toHaveValue(leaflet.name);
		await expect(blank(page, 'Sample, mL')).toHaveValue(leaflet.sampleMl);
		await expect(larger).toHaveValue(leaflet.largerSampleMl);
		await expect(blank(page, 'Amount of A')).toHaveValue(leaflet.drops);
		await expect(blank(page, 'Swirl after A, seconds')).toHaveValue(leaflet.swirlSeconds);
	});

	await page.getByLabel('How the titrant is given').focus();
	await typeSecondHalf(page, keys);
	await test.step('the margin says what it implies', async () => {
		// Worked by hand: 16 dKH per mL, drops of 0.03 mL, lines of 0.02 mL.
		await expect(page.getByText('A drop is worth about 0.48 dKH.')).toBeVisible();
		await expect(page.getByText('A line of the scale is worth about 0.32 dKH.')).toBeVisible();
		await expect(page.getByText('One filling shows up to 16.0 dKH.')).toBeVisible();
		await expect(page.getByText('Fine, 10 mL: one filling shows 8.0 dKH at most')).toBeVisible();
		// 16 · 0.35665 meq/L · 5 mL / 1 mL / 1000.
		await expect(page.getByText('implies an acid of about 0.029 mol/L')).toBeVisible();
		await expect(page.getByText('All 5 rows lie on one straight line.')).toBeVisible();
	});

	await page.getByRole('button', { name: 'Keep this kit' }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Kits');
	await expect(page.getByRole('status').filter({ hasText: 'Harbour kit is kept.' })).toBeVisible();
	await expect(page.getByRole('link', { name: 'Harbour kit', exact: true })).toBeVisible();
	await page.reload();
	await expect(page.getByRole('link', { name: 'Harbour kit', exact: true })).toBeVisible();
	await expect(page.getByText('alkalinity, dKH, from a 1 mL syringe').first()).toBeVisible();
	await expect(page.getByText('Left half typed')).toHaveCount(0);
});

/** A kit that is kept already, begun as a copy of a house kit. */
async function keepCopy(page: Page, name: string, of = 'House syringe kit'): Promise<void> {
	await page.goto('/kits/');
	await page.getByRole('link', { name: `Copy ${of} as a start` }).click();
	await blank(page, 'Name of the kit').fill(name);
	await page.getByRole('button', { name: 'Keep this kit' }).click();
	await expect(page.getByRole('link', { name, exact: true })).toBeVisible();
}

test('a kept kit is changed: one question, and the typing survives leaving', async ({ page }) => {
	await keepCopy(page, 'My copy');
	await page.getByRole('link', { name: 'My copy', exact: true }).click();
	await blank(page, 'Sample, mL').fill('5');
	await page.goto('/kits/');
	await expect(page.getByText('Changed, and not kept yet')).toBeVisible();
	await page.getByRole('link', { name: 'My copy', exact: true }).click();
	await expect(blank(page, 'Sample, mL')).toHaveValue('5');
	await page.getByRole('button', { name: 'Keep the changes' }).click();
	const dialog = page.getByRole('dialog', { name: 'Why is it different now?' });
	await expect(dialog).toBeVisible();
	await expectNoBarriers(page);
	await dialog.getByRole('button', { name: /typed in wrong before/ }).click();
	await expect(
		page.getByText('My copy is kept. No old test has another value by it.')
	).toBeVisible();
	await page.getByRole('link', { name: 'My copy', exact: true }).click();
	await expect(blank(page, 'Sample, mL')).toHaveValue('5');
	// Looked at, and not touched: nothing is left behind.
	await page.goto('/kits/');
	await expect(page.getByText('Changed, and not kept yet')).toHaveCount(0);
});

test('a kit that was typed in wrong: old tests are valued anew from their marks', async ({
	page
}) => {
	await startClock(page);
	await keepCopy(page, 'My drops', 'House dropper kit');
	const tank = await new Tank(page).begin('My drops');
	await tank.goToStep(5);
	await tank.declareTheEnd();
	await tank.press('To the count');
	await page.getByLabel('Drops it took').fill('14');
	await tank.press('That is my reading');
	// 14 drops at 0.6 dKH each, less 0.45, is 7.95.
	await expect(tank.value).toHaveText(/^(7\.9|8\.0) ± [01]\.\d dKH$/);
	await tank.press('Done');
	await expect(page.getByText('Kept in the log.')).toBeVisible();

	await page.goto('/kits/');
	await expect(page.getByText('last test 14 Mar 2026')).toBeVisible();
	await page.getByRole('link', { name: 'My drops', exact: true }).click();
	await blank(page, 'Each drop is worth, dKH').fill('0,7');
	await page.getByRole('button', { name: 'Keep the changes' }).click();
	await page.getByRole('button', { name: /typed in wrong before/ }).click();
	await expect(
		page.getByText('My drops is kept. One old test is valued anew.', { exact: true })
	).toBeVisible();
	// 14 drops at 0.7 dKH each, less 0.45, is 9.35.
	await page.goto('/log/');
	await expect(page.getByText(/(9\.3|9\.4) ± [01]\.\d/).first()).toBeVisible();
});

test('two windows change one kit: the second is told before it counts as the newer', async ({
	page,
	context
}) => {
	await keepCopy(page, 'My copy');
	const second = await context.newPage();
	await second.goto('/kits/');
	for (const window of [page, second]) {
		await window.getByRole('link', { name: 'My copy', exact: true }).click();
		await expect(blank(window, 'Sample, mL')).toHaveValue('6');
	}
	const keepAs = async (window: Page, sampleMl: string) => {
		await blank(window, 'Sample, mL').fill(sampleMl);
		await window.getByRole('button', { name: 'Keep the changes' }).click();
		await window.getByRole('button', { name: /typed in wrong before/ }).click();
	};
	await keepAs(page, '5');
	await expect(page.getByRole('status').filter({ hasText: 'My copy is kept.' })).toBeVisible();
	await keepAs(second, '7');
	await expect(second.getByRole('alert')).toContainText('Another window has kept this kit');
	await expect(blank(second, 'Sample, mL')).toHaveValue('7');
	await keepAs(second, '7');
	await expect(second.getByRole('heading', { level: 1 })).toHaveText('Kits');
	await expect(second.getByRole('status').filter({ hasText: 'My copy is kept.' })).toBeVisible();
});

test('a kit is put away, comes back by undo, and again later', async ({ page }) => {
	await keepCopy(page, 'My copy');
	const line = page.getByRole('link', { name: 'My copy', exact: true });
	await page.getByRole('button', { name: 'Put My copy away' }).click();
	await expect(line).toHaveCount(0);
	await page.getByRole('button', { name: 'Undo' }).click();
	await expect(line).toBeVisible();
	await page.getByRole('button', { name: 'Put My copy away' }).click();
	await expect(page.getByRole('button', { name: /^Undo|take it back/i })).toBeVisible();
	await page.reload();
	await page.getByText('Put away: 1').click();
	await page.getByRole('button', { name: 'Take My copy back' }).click();
	await expect(line).toBeVisible();
});

test('kits and their blanks have no barriers in both themes, and fit a narrow page', async ({
	page
}) => {
	await keepCopy(page, 'My copy');
	for (const path of ['/kits/', '/kits/edit/', '/kits/edit/#from=house-burette']) {
		await page.goto('/practise/');
		await page.goto(path);
		await page.setViewportSize({ width: 1280, height: 800 });
		if (path !== '/kits/') {
			await blank(page, 'Sample, mL').fill('nonsense');
			await page.getByText('What you know better').click();
			await page.getByRole('button', { name: 'Keep this kit' }).click();
			await expect(blank(page, 'Sample, mL')).toHaveAttribute('aria-invalid', 'true');
		}
		for (const theme of ['light', 'dark'] as const) {
			await inTheme(page, theme);
			await expectNoBarriers(page);
		}
		for (const height of [640, 256]) {
			await page.setViewportSize({ width: 320, height });
			await expectNoSidewaysScroll(page);
		}
	}
});
