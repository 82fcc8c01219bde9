import type { Locator, Page } from '@playwright/test';
import { TouchHand } from './hands';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { startClock, Tank } from './tank';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

/** Two invented kits, like none on sale: what stands in the blanks that differ. */
type Leaflet = {
	name: string;
	analyte: 'calcium' | 'hardness';
	first: { amount: string; unit: 'drop' | 'mL'; name: string; role: 'base' | 'buffer' };
	waitSeconds: string;
	perMl: [label: string, value: string];
};
const calciumLeaflet: Leaflet = {
	name: 'Harbour calcium',
	analyte: 'calcium',
	first: { amount: '6', unit: 'drop', name: 'base', role: 'base' },
	waitSeconds: '60',
	perMl: ['Each mL is worth, mg/L', '200']
};
const bothLeaflet: Leaflet = {
	name: 'Harbour both',
	analyte: 'hardness',
	first: { amount: '0,5', unit: 'mL', name: 'buffer', role: 'buffer' },
	waitSeconds: '0',
	perMl: ['Each mL is worth, mmol/L', '40']
};

const blank = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true });
const choice = blank;

/** Types a leaflet in by touch: its blanks in their order. */
async function typeIn(page: Page, leaflet: Leaflet): Promise<void> {
	const { first } = leaflet;
	await page.goto('/kits/edit/');
	await blank(page, 'Name of the kit').fill(leaflet.name);
	await choice(page, 'What the kit measures').selectOption(leaflet.analyte);
	await blank(page, 'Sample, mL').fill('5');
	await blank(page, 'Amount of reagent 1').fill(first.amount);
	await choice(page, 'Amount of reagent 1 counted in').selectOption(first.unit);
	await choice(page, 'What reagent 1 is').selectOption(first.role);
	await blank(page, 'Name of reagent 1').fill(first.name);
	await blank(page, `Swirl after ${first.name}, seconds`).fill('10');
	await blank(page, `Wait after ${first.name}, seconds`).fill(leaflet.waitSeconds);
	await page.getByRole('button', { name: 'Another reagent' }).tap();
	await blank(page, 'Amount of reagent 2').fill('1');
	await choice(page, 'Amount of reagent 2 counted in').selectOption('spoon');
	await blank(page, 'Name of reagent 2').fill('dye');
	await blank(page, 'Swirl after dye, seconds').fill('15');
	await blank(page, 'Capacity of the syringe, mL').fill('1');
	await blank(page, 'From one line of the scale to the next, mL').fill('0,02');
	await blank(page, 'Volume of tip and nozzle, mL; empty if it is not known').fill('0,17');
	await choice(page, 'If it runs empty before the end').selectOption('yes');
	await page.getByText('0 at the tip').tap();
	await blank(page, 'Colour at the start').fill('wine red');
	await blank(page, 'Colour at the end').fill('blue');
	await choice(page, 'How the leaflet gives the value').selectOption('perMl');
	await blank(page, leaflet.perMl[0]).fill(leaflet.perMl[1]);
}
async function keepKit(page: Page): Promise<void> {
	await page.getByRole('button', { name: 'Keep this kit' }).tap();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Kits');
}

/** Drops until the syringe is empty, so often, each filling read by its seal; then to the last mark. */
async function titrate(tank: Tank, refills: number, seal: string): Promise<void> {
	const { page } = tank;
	await tank.press(/^Seal at 1\.00/);
	for (let i = 0; i < refills; i++) {
		await tank.press('Refill');
		await tank.press('Not empty, but not enough');
		await page.getByLabel('Stood at, before refilling').fill('0,02');
		await tank.press('Refilled to 1.00');
		if (i === 0) await expectNoSidewaysScroll(page);
		await tank.press('Noted, back to the drops');
	}
	await tank.declareTheEnd(30);
	await tank.press('Read the mark');
	await page.getByLabel('Seal stands at').fill(seal);
	await tank.press('That is my reading');
}

test('calcium and then magnesium by difference, by touch on a phone, with kits typed in', async ({
	page
}) => {
	await startClock(page);
	const tank = new Tank(page, new TouchHand(page));
	await test.step('a leaflet for calcium, its syringe filled again on the way', async () => {
		await typeIn(page, calciumLeaflet);
		// By hand: 200 mg/L are 4.99 mmol/L (40.078 g/mol), times 5 mL over 1 mL.
		await expect(page.getByText('implies EDTA of about 0.025 mol/L')).toBeVisible();
		// Tanks have 250 to 600 mg/L (common practice).
		await expect(page.getByText(/200 mg\/L at most; 2 to 3 fillings are needed/)).toBeVisible();
		await expect(page.getByRole('checkbox', { name: /strong alkali/ })).toBeChecked();
		await expect(page.getByText('dKH')).toHaveCount(0);
		await expectNoSidewaysScroll(page);
		await expectNoBarriers(page);
		await keepKit(page);
	});

	await test.step('calcium with two refills', async () => {
		await tank.begin(calciumLeaflet.name);
		await tank.goToStep(4);
		await expect(page.getByText(/Strong base: keep it off eyes and skin/)).toBeVisible();
		await tank.goToStep(7);
		await expect(page.getByRole('heading', { level: 2 })).toHaveText(
			'Add one level spoon of dye to the vial.'
		);
		await tank.goToStep(9);
		// 0.98 mL twice and 0.10: 2.06 mL at 200 mg/L each.
		await titrate(tank, 2, '0,90');
		await expect(tank.value).toHaveText(/^41[0-4]\s±\s\d\d\smg\/L$/);
		await expect(page.getByText(/with 2 refills/)).toBeVisible();
		await expectNoSidewaysScroll(page);
		for (const theme of ['light', 'dark'] as const) {
			await inTheme(page, theme);
			await expectNoBarriers(page);
		}
		await tank.press('Done');
		await expect(page.getByText('Kept in the log.')).toBeVisible();
	});

	await test.step('both together, and magnesium once calcium is taken off', async () => {
		await typeIn(page, bothLeaflet);
		await expect(page.getByLabel('This value less calcium')).toHaveValue('yes');
		await keepKit(page);
		await tank.begin(bothLeaflet.name);
		await tank.goToStep(4);
		await expect(page.getByText(/Ammonia: do not breathe over it/)).toBeVisible();
		await tank.goToStep(8);
		// 0.98 and 0.61: 1.59 mL at 40 mmol/L each, 63.6.
		await titrate(tank, 1, '0,39');
		await expect(tank.value).toHaveText(/^6[34](\.\d)?\s±\s\d(\.\d)?\smmol\/L$/);
		const magnesium = page.getByRole('region', { name: 'Magnesium', exact: true });
		await expect(magnesium.getByRole('radio', { name: /41[0-4] ± \d\d mg\/L/ })).toBeChecked();
		await tank.hand.press(magnesium.getByRole('checkbox', { name: 'The sample syringe' }));
		await tank.press('Take it off');
		// 63.6 − 412 / 40.078 is 53.3 mmol/L, 1296 mg/L: told to the tens that its ± allows.
		await expect(magnesium.locator('.left')).toHaveText(/about 1300\s±\s\d0\smg\/L/);
		await expect(magnesium.getByRole('row', { name: /leaves magnesium/ })).toContainText('53.3');
		await expect(magnesium).toContainText('In both tests: the sample syringe, the same eyes.');
		await expectNoSidewaysScroll(page);
		for (const theme of ['light', 'dark'] as const) {
			await inTheme(page, theme);
			await expectNoBarriers(page);
		}
		await tank.press('Done');
	});

	await test.step('it stands in the log, in its picture and on the first page', async () => {
		await page.goto('/log/');
		await expect(page.getByRole('heading', { name: 'Magnesium', exact: true })).toBeVisible();
		await expect(page.getByRole('heading', { name: 'Calcium', exact: true })).toBeVisible();
		const row = page.getByRole('link', { name: /1300.*Harbour both/ });
		await expect(row).toContainText(/calcium and magnesium together 64 ± 4 mmol/);
		await expectNoSidewaysScroll(page);
		await expectNoBarriers(page);
		await row.tap();
		const magnesium = page.getByRole('region', { name: 'Magnesium', exact: true });
		await expect(magnesium).toContainText('about 1300');
		await tank.hand.press(magnesium.getByRole('button', { name: 'Change the calcium' }));
		await tank.hand.press(magnesium.getByText('Another, which I type'));
		await blank(page, 'Calcium, mg/L').fill('420');
		await tank.hand.press(magnesium.getByText('assumed', { exact: true }));
		await tank.press('Take it off');
		await expect(magnesium).toContainText('Calcium is an assumption here, not a measurement');
		await page.reload();
		await expect(magnesium).toContainText('420 ± 40 mg/L of calcium taken off, assumed');
		await expectNoBarriers(page);
		await tank.press('Take it back');
		await expect(magnesium).not.toContainText('assumption');
		await page.goto('/');
		await expect(page.getByRole('list', { name: 'Last readings' })).toContainText(
			/1300\s*± \d0 mg\/L\s*Magnesium/
		);
	});
});
