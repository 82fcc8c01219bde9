import type { Page } from '@playwright/test';
import { Check } from './check';
import { KeyboardHand, TouchHand } from './hands';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { fileOf, wholeTest } from './tank-logs';

const KIT = 'House syringe kit';
const DAY = 86_400_000;
const NEWEST = Date.UTC(2026, 2, 28, 18);

async function expectSound(page: Page): Promise<void> {
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	const size = page.viewportSize();
	await page.setViewportSize({ width: 320, height: 640 });
	await expectNoSidewaysScroll(page);
	if (size) await page.setViewportSize(size);
}

test('a test of the log is checked with what came before it; a reload goes on at the very place', async ({
	page
}) => {
	const weeks = [0.5, 0.51, 0.5, 0.36].map((sealMl, i) =>
		wholeTest(`week-${i}`, NEWEST - (3 - i) * 7 * DAY, sealMl)
	);
	await page.goto('/settings/');
	await expect(page.getByText(/^Everything is kept in this browser/)).toBeVisible();
	await page.getByLabel('Take in a file').setInputFiles({
		name: 'copy.json',
		mimeType: 'application/json',
		buffer: Buffer.from(fileOf(weeks))
	});
	await expect(page.getByText('Added: 4 records.')).toBeVisible();
	await page.goto('/log/test/#test=week-3');
	await page.getByRole('link', { name: 'Check this reading' }).click();
	const check = new Check(page);
	await check.isWeighed();
	await expect(page).toHaveURL(/#check=/);
	const lines = check.known.getByRole('listitem');
	await expect(lines.filter({ hasText: 'in question' })).toHaveCount(1);
	await expect(lines.filter({ hasText: 'days before' })).toHaveCount(3);
	await expect(lines.getByRole('link', { name: 'from the log' }).first()).toHaveAttribute(
		'href',
		/\/log\/test\/?#test=week-3$/
	);
	await check.add('A repeat', { blanks: { 'What it read': '5,5' } });
	const before = await check.bars();
	const known = await lines.count();
	const address = page.url();

	await page.reload();
	await check.isWeighed();
	expect(page.url()).toBe(address);
	expect(await check.bars()).toEqual(before);
	await expect(lines.filter({ hasText: 'Repeat' })).toHaveCount(1);

	// The same test asked for again is the same check, and the first page offers it.
	await page.goto('/');
	const left = page.locator('p').filter({ hasText: 'A check left unfinished:' });
	await expect(left).toContainText(`${known} things known`);
	await page.goto('/check/#test=week-3');
	await check.isWeighed();
	expect(page.url()).toBe(address);
});

test('what is half typed survives a reload; what was said can be taken back and undone', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '7.0');
	await page.getByText('Add what else you know').click();
	await page.getByRole('button', { name: 'A known solution', exact: true }).click();
	const form = page.getByRole('form', { name: 'A known solution' });
	await form.getByLabel('What it is said to hold').fill('8,');
	await form.getByLabel('Name of the solution').fill('March');
	await page.reload();
	await expect(form.getByLabel('What it is said to hold')).toHaveValue('8,');
	await expect(form.getByLabel('Name of the solution')).toHaveValue('March');
	await form.getByLabel('What it read').fill('a lot');
	await form.getByLabel('What it read').press('Enter');
	await expect(form.getByLabel('What it read')).toHaveAccessibleDescription(/“a lot” is no number/);
	await expect(form.getByLabel('What it read')).toBeFocused();
	await form.getByLabel('What it read').fill('7,2');
	await form.getByLabel('What it read').press('Enter');
	await check.isWeighed();
	const lines = check.known.getByRole('listitem');
	await expect(lines).toHaveCount(2);
	await expect(lines.nth(1)).toContainText(
		'said to hold 8.0 ± 0.4 dKH (that ± taken as a twentieth), in purified water'
	);
	const held = await check.trueValue.innerText();

	await check.takeBack(/^Take back 2: March/);
	expect(await check.trueValue.innerText()).not.toBe(held);
	await page.getByRole('button', { name: 'Undo the last step' }).click();
	await expect(lines).toHaveCount(2);
	await check.isWeighed();
	expect(await check.trueValue.innerText()).toBe(held);
	await page.getByRole('button', { name: 'Undo the last step' }).click();
	await expect(lines).toHaveCount(1);

	await page.getByRole('button', { name: /^Take back 1/ }).click();
	await expect(page.getByText('Which reading is in question?').first()).toBeVisible();
});

test('what cannot be done is left out, also after a reload, and can come back', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '5.4');
	const cannot = check.next.getByRole('button', { name: /^I cannot/ });
	await check.untilSomethingToDo();
	const title = () => check.best.innerText();
	const first = await title();
	await cannot.click();
	await check.isWeighed();
	await expect.poll(title).not.toBe(first);
	await page.reload();
	await check.isWeighed();
	expect(await title()).not.toBe(first);
	await page.getByText('Something else', { exact: true }).click();
	await page.getByRole('button', { name: 'Put back what I cannot do' }).click();
	await check.isWeighed();
	await expect.poll(title).toBe(first);
});

test('another window that goes on with a check is told of in the first', async ({
	page,
	context
}) => {
	const check = await new Check(page).begin(KIT, '7.0');
	const other = await context.newPage();
	await other.goto(page.url());
	const there = new Check(other);
	await there.isWeighed();
	await there.add('A repeat', { blanks: { 'What it read': '7.1' } });
	await expect(page.getByText(/^Continued in another window/)).toBeVisible();
	await expect(check.known.getByRole('listitem')).toHaveCount(1);
});

test('a doubtful unit is shown in the others', async ({ page }) => {
	await page.goto('/check/');
	const form = page.getByRole('form', { name: 'The reading in question' });
	await form.getByLabel('What the test said').fill('132');
	// 132 mg/L of CaCO3 are 7.4 dKH: 17.85 mg/L each (10 mg of CaO is 17.85 mg of CaCO3).
	await expect(form).toContainText('132 in ppm CaCO₃ would be 7.4 dKH.');
	await form.getByLabel('Unit').selectOption({ label: 'ppm CaCO₃' });
	await page.getByRole('button', { name: 'Check this reading' }).click();
	await new Check(page).isWeighed();
	await page.getByRole('checkbox', { name: 'I am not sure of the unit' }).check();
	await expect(page.getByRole('row', { name: /^mg\/L HCO₃/ })).toBeVisible();
	await expect(page.getByText('nothing is advised that would change the tank')).toBeVisible();
	await expectSound(page);
});

test('an emergency needs no reading: one action from the first page of a check, and nothing is kept of it', async ({
	page
}) => {
	for (let press = 0; press < 2; press++) {
		await page.goto('/check/');
		await page.getByRole('button', { name: 'What to do at once' }).click();
		await expect(page.getByRole('main')).toContainText(/Stop all dosing/);
		await page.reload();
		await expect(page.getByRole('main')).toContainText(/Stop all dosing/);
	}
	await expectSound(page);
	await page.getByRole('button', { name: 'It is over, or it was nothing' }).click();
	await expect(page.getByLabel('Which kit read it?')).toBeVisible();
	await expect(page.getByText('Left unfinished')).toHaveCount(0);
});

test('a specific gravity is taken as the salinity that it means, and nonsense is said at its place', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '5.4');
	await check.add('A second method', { blanks: { 'What it read': '5.5', 'Its ±': '0.3' } });
	await page
		.getByRole('link', { name: /^See what to do/ })
		.first()
		.click();
	await page.getByRole('radio', { name: 'I have not looked' }).check();
	const salinity = page.getByLabel('Salinity');
	for (const nonsense of ['abc', '90', '3', '-35']) {
		await salinity.fill(nonsense);
		await salinity.blur();
		await expect(salinity).toHaveAttribute('aria-invalid', 'true');
		await expect(check.verdict).toHaveText('Check first.');
	}
	await salinity.fill('1.026');
	await salinity.blur();
	await expect(page.getByText('salinity of about 34.5, and is taken as that')).toBeVisible();
	await expect(check.verdict).toHaveText('Adjust, slowly.');
	await page.reload();
	await expect(salinity).toHaveValue('34.5');
	await expect(check.verdict).toHaveText('Adjust, slowly.');
	await expectSound(page);
});

test('a report of ten pieces with a plan and a note prints on one page of A4, with nothing beside its edges', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '5.4', { blanks: { 'Its ±': '0.4' } });
	await check.add('A repeat', { blanks: { 'What it read': '5.5' } });
	await check.add('Somebody else’s test', {
		blanks: { 'Who tested': 'Ada', 'What it read': '5.3' }
	});
	await check.add('An earlier reading, and what was dosed', {
		blanks: { 'How many days ago': '7', 'What it read': '8,0' }
	});
	await check.add('A known solution', {
		blanks: {
			'What it is said to hold': '8.0',
			'The ± of what it holds': '0.15',
			'What it read': '8.1'
		},
		choices: { 'What it is made in': 'in seawater or sea salt' }
	});
	await check.add('A second method', { blanks: { 'What it read': '5.5', 'Its ±': '0.3' } });
	await check.add('A repeat', { blanks: { 'What it read': '5.4' } });
	await check.add('Another bottle of titrant', { blanks: { 'What it read': '5.5' } });
	await check.add('Water taken anew', { blanks: { 'What it read': '5.5' } });
	await check.add('An earlier reading, and what was dosed', {
		blanks: { 'How many days ago': '14', 'What it read': '8.1' }
	});
	await page
		.getByRole('link', { name: /^See what to do/ })
		.first()
		.click();
	await page.getByRole('radio', { name: 'Some are troubled' }).check();
	const write = async (label: string, text: string) => {
		await page.getByLabel(label, { exact: true }).fill(text);
		await page.getByLabel(label, { exact: true }).blur();
	};
	await write('Salinity', '35');
	await expect(check.verdict).toHaveText('Adjust, slowly.');
	await page.getByRole('radio', { name: 'Sodium bicarbonate' }).check();
	await write('Purity', '99');
	await write('Bring it to', '8.5');
	await write('Water in all', '200');
	await expect(page.getByRole('table')).toBeVisible();
	await page.getByRole('link', { name: 'Report on one page' }).click();
	// The page before has the same words.
	const report = page.locator('.report');
	await expect(report.getByText('The sum, to check by hand')).toBeVisible();
	await expect(report.getByText('If the water really fell')).toBeVisible();
	const note = page.getByLabel('A note for the report');
	await note.fill('The skimmer stood for two days; a new bag of salt since Tuesday. '.repeat(3));
	await note.blur();
	await expect(report.getByRole('heading', { name: 'Note' })).toBeVisible();
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		const printed = (await page.pdf({ format: 'A4' })).toString('latin1');
		expect(printed.match(/\/Type\s*\/Page(?!s)/g)).toHaveLength(1);
	}
	// A4 less two margins of 14 mm, at 96 pixels an inch: what is wider would be cut.
	await page.setViewportSize({ width: Math.floor(((210 - 28) / 25.4) * 96), height: 1000 });
	await page.emulateMedia({ media: 'print' });
	const isCut = await page.evaluate(() =>
		[...document.querySelectorAll('.report *')].some(
			(each) => each.getBoundingClientRect().right > document.documentElement.clientWidth + 1
		)
	);
	expect(isCut).toBe(false);
	// Nothing is set smaller than 9.5 pt (judgement: the smallest that books for adults are set in).
	const smallestPt = await page.evaluate(() => {
		const shown = [...document.querySelectorAll<HTMLElement>('.report :is(p, dt, dd, li, h2, h3)')];
		const sizes = shown
			.filter((each) => each.offsetParent !== null && each.innerText.trim() !== '')
			.map((each) => (Number.parseFloat(getComputedStyle(each).fontSize) * 72) / 96);
		return Math.min(...sizes);
	});
	expect(smallestPt).toBeGreaterThanOrEqual(9.49);
});

test('a test begun from a known solution is of that solution', async ({ page }) => {
	await new Check(page).begin(KIT, '7.0');
	const id = new URL(page.url()).hash;
	await page.goto(`/check/solution/${id}`);
	await page.getByRole('link', { name: 'Test it with your kit' }).click();
	await page.getByRole('button', { name: KIT }).first().click();
	await expect(page.getByRole('radio', { name: 'known solution' })).toBeChecked();
});

test('without another thread the answer comes all the same', async ({ page }) => {
	await page.addInitScript(() => Reflect.deleteProperty(window, 'Worker'));
	const check = await new Check(page).begin(KIT, '7.0');
	expect((await check.bars()).at(-1)?.title).toBe('None of these');
});

test('every part free of barriers in both themes, and 320 px wide', async ({ page }) => {
	await page.goto('/check/');
	await expect(page.getByLabel('Which kit read it?')).toBeVisible();
	await expectSound(page);
	const check = await new Check(page).begin(KIT, '5.4');
	await page.getByText('All else together').click();
	await page.getByText('Something else', { exact: true }).click();
	await page.getByText('Add what else you know').click();
	for (const kind of [
		'A repeat',
		'An earlier reading, and what was dosed',
		'A second method',
		'A known solution',
		'Twice or half the water',
		'A known amount added',
		'Weighed water'
	]) {
		await page.getByRole('button', { name: kind, exact: true }).click();
		await page.setViewportSize({ width: 320, height: 640 });
		await expectNoSidewaysScroll(page);
		await page.setViewportSize({ width: 1280, height: 800 });
	}
	await expectSound(page);
	await page.getByRole('button', { name: 'Not now' }).click();
	await check.pick(/^Which mark did you set/);
	await expectSound(page);
});

test('by keyboard alone', async ({ page }) => {
	const hand = new KeyboardHand(page);
	await page.goto('/check/');
	await expect(page.getByLabel('Which kit read it?')).toBeVisible();
	await hand.goTo(page.getByLabel('Which kit read it?'));
	await page.keyboard.type('House syringe');
	await hand.write(page.getByLabel('What the test said'), '5.4');
	await page.keyboard.press('Enter');
	const check = new Check(page, hand);
	await check.isWeighed();
	await check.untilSomethingToDo();
	const known = check.known.getByRole('listitem');
	const before = await known.count();
	await hand.press(check.next.getByRole('button', { name: 'Say what it read' }));
	await hand.write(check.next.getByLabel('What it read'), '8.1');
	await page.keyboard.press('Enter');
	await expect(known).toHaveCount(before + 1);
	await check.isWeighed();
	await expect(page.locator('#next-check')).toBeFocused();
	await expect(page.locator('.opening [role="status"]')).toHaveText(/^Most likely now: /);
	await hand.press(page.getByRole('button', { name: new RegExp(`^Take back ${before + 1}`) }));
	await expect(known).toHaveCount(before);
	await expect(check.known).toBeFocused();
});

test.describe('on a phone', () => {
	test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

	test('the one button leads to the sentence and sends it', async ({ page }) => {
		const hand = new TouchHand(page);
		const check = await new Check(page, hand).begin(KIT, '5.4');
		const foot = page.locator('.foot');
		await expect(foot.locator('.primary')).toHaveCount(1);
		expect(await foot.locator('.text-action').count()).toBeLessThanOrEqual(2);
		const box = await foot.locator('.primary').boundingBox();
		expect(box?.height).toBeGreaterThanOrEqual(56);
		await check.untilSomethingToDo();
		const known = check.known.getByRole('listitem');
		const before = await known.count();
		await hand.press(foot.getByRole('button', { name: 'Say what the check read' }));
		await expect(check.next.getByLabel('What it read')).toBeInViewport();
		await hand.write(check.next.getByLabel('What it read'), '8.1');
		await hand.press(foot.getByRole('button', { name: 'Add it' }));
		await expect(known).toHaveCount(before + 1);
		await check.isWeighed();
		await expectNoSidewaysScroll(page);
	});
});
