import { Check } from './check';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { houseCalciumKit, houseDropperKit } from '../../src/lib/kits';
import dickson from '../reference/data/dickson-1981-table-1.json' with { type: 'json' };

// Dickson 1981 (Deep-Sea Res. 28A:609), table 1: 200 g of seawater of 2450 µmol/kg, 0.3 mol/kg of acid.
// At 1.02334 kg/L (Millero and Poisson 1981, from memory) the water holds 2450 · 1.02334 / 1000 / 0.356650
// = 7.03 dKH.
const DENSITY = 1.02334;
const TRUE_DKH = (dickson.alkalinityMolPerKg * 1000 * DENSITY) / 0.35665;
/** With decimal commas, as a spreadsheet of another country copies them, and a line that is no reading. */
const pasted = [
	'mL\tpH',
	...dickson.phFreeByAcidG.map((pair) =>
		pair.map((each) => String(each).replace('.', ',')).join('\t')
	),
	'last one spilled'
].join('\n');

test('a published titration, pasted, gives a check its second method', async ({ page }) => {
	const check = await new Check(page).begin(null, '8.4', { blanks: { 'Its ±': '0.5' } });
	const id = new URL(page.url()).hash;
	await page.goto(`/check/curve/${id}`);
	await page.getByLabel(/paste all of them/).fill(pasted);
	await expect(page.getByText(/^Line 53, “last one spilled”/)).toBeVisible();
	await page.getByLabel('Sample', { exact: true }).fill((dickson.sampleG / DENSITY).toFixed(1));
	await page.getByLabel('Strength of the acid').fill('0,3');
	await page.getByLabel('closed, no air over it').check();
	await page.getByLabel('salt water', { exact: true }).check();

	const said = page.getByTestId('curve-value');
	const [value = Number.NaN, plusMinus = Number.NaN] = ((await said.textContent()) ?? '')
		.match(/[\d.]+/g)!
		.map(Number);
	expect(Math.abs(value - TRUE_DKH)).toBeLessThan(plusMinus);
	// And far closer than the ±, which is that of acid and ware: the readings have no error.
	expect(Math.abs(value - TRUE_DKH)).toBeLessThan(0.02);
	for (const name of ['The curve', 'The straight line', 'What is left over'])
		await expect(page.getByRole('heading', { name })).toBeVisible();

	for (const summary of await page.getByText('The same as a table').all()) await summary.click();
	await page.getByText('Three ways to read the same curve').click();
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	const before = page.viewportSize()!;
	await page.setViewportSize({ width: 320, height: 640 });
	await expectNoSidewaysScroll(page);
	await page.setViewportSize(before);

	await page.reload();
	await expect(page.getByText('As you left it.')).toBeVisible();
	await expect(said).toContainText(String(value));
	await expect(page.getByLabel(/paste all of them/)).toHaveValue(pasted);

	// A link to a part of the page does not lose the check.
	await page.evaluate(() => (location.hash = 'value'));
	await expect.poll(() => new URL(page.url()).hash).toBe(id);
	await page.getByRole('button', { name: 'Use in this check' }).click();
	await expect(page).toHaveURL(new RegExp(`/check/?${id}$`));
	await expect(check.known.getByRole('listitem')).toHaveCount(2);
	await expect(check.known).toContainText('pH probe');
	await expect(check.known).toContainText(String(Math.round(value * 10) / 10));
	// It is kept, and not only shown.
	await page.reload();
	await expect(check.known).toContainText('pH probe');
});

test('a known solution made for a check waits there for what the kit reads on it', async ({
	page
}) => {
	await new Check(page).begin(null, '8.4', { blanks: { 'Its ±': '0.5' } });
	const id = new URL(page.url()).hash;
	await page.goto(`/check/solution/${id}`);
	await page.getByLabel('Really weighed').first().fill('12,59');
	await page.getByRole('button', { name: 'Use this solution in the check' }).click();
	await expect(page).toHaveURL(new RegExp(`/check/?${id}$`));
	const form = page.getByRole('form', { name: 'A known solution' });
	// 12.59 g in place of the 11.99 g that make 8.00 dKH.
	expect(Number(await form.getByLabel('What it is said to hold').inputValue())).toBeCloseTo(
		(8 * 12.59) / 11.99,
		1
	);
	await expect(form.getByLabel('What it read')).toHaveValue('');
});

test('the checks of a kit that has none say so, and lead to a test', async ({ page }) => {
	await page.goto(`/kits/checks/#kit=${houseDropperKit.id}`);
	await expect(page.getByTestId('stands-out')).toHaveText(
		'No test of a known solution with this kit is kept.'
	);
	await expect(page.getByText(houseDropperKit.name)).toBeVisible();
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	await page.setViewportSize({ width: 320, height: 640 });
	await expectNoSidewaysScroll(page);
	await page.getByRole('link', { name: 'Test a known solution' }).click();
	await expect(page).toHaveURL(/\/test\/?#test=/);
	await expect(page.getByText(houseDropperKit.name)).toBeVisible();
	await expect(page.getByLabel('known solution', { exact: true })).toBeChecked();
});

test('the kit goes along from its checks to the recipe and on to the test', async ({ page }) => {
	await page.goto(`/kits/checks/#kit=${houseDropperKit.id}`);
	await page.getByRole('link', { name: 'How to make one' }).click();
	await expect(page).toHaveURL(new RegExp(`/check/solution/?#kit=${houseDropperKit.id}$`));
	await expect(page.getByLabel('Which kit will read it?')).toHaveValue(houseDropperKit.id);
	await page.getByRole('link', { name: 'Test it with your kit' }).click();
	await expect(page).toHaveURL(/\/test\/?#test=/);
	await expect(page.getByText(houseDropperKit.name)).toBeVisible();
});

test('a kit for calcium goes along to a recipe of calcium, and the test is of that solution', async ({
	page
}) => {
	await page.goto(`/kits/checks/#kit=${houseCalciumKit.id}`);
	await page.getByRole('link', { name: 'How to make one' }).click();
	await expect(page.getByLabel('Which kit will read it?')).toHaveValue(houseCalciumKit.id);
	await expect(page.getByRole('radio', { name: /calcium chloride dihydrate/ })).toBeChecked();
	await expect(page.getByTestId('powder-vague')).toContainText(/larger\s+than\s+±\s(3\.9|4\.0)\s%/);
	await expect(page.getByTestId('content')).toHaveText(/415\s±\s1[45] mg\/L/);
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	await page.setViewportSize({ width: 320, height: 640 });
	await expectNoSidewaysScroll(page);
	await page.getByRole('link', { name: 'Test it with your kit' }).click();
	await expect(page).toHaveURL(/\/test\/?#test=/);
	await expect(page.getByText(houseCalciumKit.name)).toBeVisible();
	await expect(page.getByLabel('known solution', { exact: true })).toBeChecked();
	// What the test takes it to hold is what the recipe came to.
	await expect(page.getByLabel('It holds')).toHaveValue('415');
});

test('a check of calcium takes the solution made for it, and none of alkalinity', async ({
	page
}) => {
	await new Check(page).begin(houseCalciumKit.name, '420');
	const id = new URL(page.url()).hash;
	await page.goto(`/check/solution/${id}`);
	const use = page.getByRole('button', { name: 'Use this solution in the check' });
	await page.getByLabel('Which kit will read it?').selectOption('');
	await page.getByLabel('alkalinity', { exact: true }).check();
	await expect(page.getByTestId('content')).toContainText('dKH');
	await expect(use).toHaveCount(0);
	await page.getByLabel('Which kit will read it?').selectOption(houseCalciumKit.id);
	await use.click();
	await expect(page).toHaveURL(new RegExp(`/check/?${id}$`));
	const form = page.getByRole('form', { name: 'A known solution' });
	await expect(form.getByLabel('What it is said to hold')).toHaveValue('415');
	await expect(form.getByLabel('What it read')).toHaveValue('');
});
