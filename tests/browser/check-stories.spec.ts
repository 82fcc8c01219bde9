import { Check } from './check';
import { expect, expectNoBarriers, inTheme, test } from './house';

/**
 * Six situations of the trade (common practice, no source; all numbers invented), each typed and tapped
 * as a person would. What the page must come to is what whoever made the situation up knows.
 */
const KIT = 'House syringe kit';
const MORE_LIKELY_THAN_NOT = /^(about [5-9] in 10|about 19 in 20|more than 49 in 50)$/;
const inSeawater = { 'What it is made in': 'in seawater or sea salt' };
const holdsEight = { 'What it is said to hold': '8.0', 'The ± of what it holds': '0.15' };

async function verdict(check: Check, look: string): Promise<string> {
	await check.decide();
	await check.page.getByRole('radio', { name: look }).check();
	const words = check.page.locator('.verdict');
	await expect(words).toBeVisible();
	return words.innerText();
}

test('mixed filling: the reading falls by the air in the tip, and nothing is dosed', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '5,4');
	await expect(check.next).toContainText('What would tell most');
	expect((await check.bars()).map(({ title }) => title).join()).toContain(
		'Filled by the liquid, read by the seal'
	);
	await check.add('An earlier reading, and what was dosed', {
		blanks: { 'How many days ago': '7', 'What it read': '8,0' }
	});
	// Two humps: about eight if the filling was mixed, about what was read if the water has changed.
	await expect(check.trueValue).toHaveText(
		/^8\.\d\s±\s\d\.\d dKH if it is “filled by the liquid, read by the seal.*5\.\d\s±\s\d\.\d if the water has really changed/
	);
	await check.answer(/^Which mark did you set/, 'Filled by the liquid, read by the seal');
	const [first, second] = await check.bars();
	expect(first?.title).toBe('Filled by the liquid, read by the seal, this once');
	expect(first?.chance).toMatch(MORE_LIKELY_THAN_NOT);
	expect(first?.words).toContain('read the seal');
	expect(second?.title).toBe('Filled by the liquid, read by the seal, as a habit');
	await expect(check.trueValue).toHaveText(/^The water holds about 8\.0 dKH/);
	expect(await verdict(check, 'As always')).toBe('Leave it.');
});

test('acid strengthened by evaporation: repeats agree, a fresh bottle parts them', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '7.3');
	await check.add('A repeat', { blanks: { 'What it read': '7.4' } });
	expect((await check.bars())[0]?.title).toBe('No fault, only the usual spread');
	await check.add('A known solution', {
		blanks: { ...holdsEight, 'What it read': '7.3' },
		choices: inSeawater
	});
	await check.add('Another bottle of titrant', {
		blanks: { 'Lot of the other bottle': 'B', 'What it read': '8.0' }
	});
	// The old bottle is off; a fresh one cannot tell whether it grew strong or came so.
	const [group] = await check.bars();
	expect(group?.title).toBe(
		'Titrant grown stronger as water evaporated; or titrant of another strength from the start'
	);
	expect(group?.chance).toMatch(MORE_LIKELY_THAN_NOT);
	expect(group?.words).toContain('Nothing known so far tells these apart');
	await expect(check.explanations).toContainText('For it: 4 (Bottle B)');
	await check.answer(/^How is it with the bottle/, /^Old, nearly empty/);
	const [strong] = await check.bars();
	expect(strong?.title).toBe('Titrant grown stronger as water evaporated');
	expect(strong?.chance).toMatch(MORE_LIKELY_THAN_NOT);
	await expect(check.trueValue).toHaveText(/^The water holds about (7\.9|8\.0|8\.1) dKH/);
	expect(await verdict(check, 'As always')).toBe('Leave it.');
});

test('wrong second method: it reads the known solution wrong too', async ({ page }) => {
	const check = await new Check(page).begin(KIT, '8.0');
	const photometer = { 'Which method': 'a photometer' };
	await check.add('A second method', {
		choices: photometer,
		blanks: { 'Its name': 'Photometer', 'What it read': '9.6', 'Its ±': '0.5' }
	});
	// Nobody knows yet which of the two is off.
	await expect(check.trueValue).toHaveText(
		/^8\.\d\s±\s\d\.\d dKH if it is “the other method off by itself”.*9\.\d\s±\s\d\.\d if /
	);
	await check.add('A known solution', {
		blanks: { ...holdsEight, 'What it read': '8.0' },
		choices: inSeawater
	});
	await check.add('A known solution', {
		blanks: { ...holdsEight, 'What it read': '9.5', 'Its ±': '0.5' },
		choices: { ...inSeawater, 'Who read it': 'Photometer' }
	});
	const [first] = await check.bars();
	expect(first?.title).toBe('The other method off by itself');
	expect(first?.chance).toMatch(MORE_LIKELY_THAN_NOT);
	await expect(check.trueValue).toHaveText(/^The water holds about 8\.[01] dKH/);
	expect(await verdict(check, 'As always')).toBe('Leave it.');
});

test('a real drop: repeat, known solution and second method say so; the salinity comes before a plan', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '6.3');
	await check.add('An earlier reading, and what was dosed', {
		blanks: { 'How many days ago': '7', 'What it read': '8.2' }
	});
	await check.add('A repeat', { blanks: { 'What it read': '6.2' } });
	await expect(check.page.getByText('no known solution, no second method')).toBeVisible();
	await check.add('A known solution', {
		blanks: { ...holdsEight, 'What it read': '8.1' },
		choices: inSeawater
	});
	await check.add('A second method', {
		choices: { 'Which method': 'a photometer' },
		blanks: { 'Its name': 'Photometer', 'What it read': '6.4', 'Its ±': '0.4' }
	});
	await expect(check.page.getByText('no known solution, no second method')).toBeHidden();
	const [first] = await check.bars();
	expect(first?.title).toBe('A real change of the water');
	expect(first?.chance).toMatch(MORE_LIKELY_THAN_NOT);
	await expect(check.trueValue).toHaveText(/^The water holds about 6\.[234] dKH/);
	expect(await verdict(check, 'Some are troubled')).toBe('Check first.');
	await expect(check.page.getByRole('main')).toContainText('The salinity is not known.');
	await expect(check.page.getByRole('heading', { name: 'Day by day' })).toHaveCount(0);
	await check.hand.write(check.page.getByLabel(/^Salinity/).first(), '35');
	await check.page
		.getByLabel(/^Salinity/)
		.first()
		.blur();
	await expect(check.page.locator('.verdict')).toHaveText('Adjust, slowly.');
});

test('a plain-water reference that looks like a bad kit is no fault of the kit', async ({
	page
}) => {
	const check = await new Check(page).begin(KIT, '7.9');
	await check.add('A known solution', {
		blanks: {
			'What it is said to hold': '8.0',
			'The ± of what it holds': '0.1',
			'What it read': '7.8'
		}
	});
	const [first, ...others] = await check.bars();
	expect(first?.title).toBe('No fault, only the usual spread');
	expect(first?.chance).toMatch(/^about [4-9] in 10$/);
	for (const { chance } of others) expect(chance).toMatch(/^(about 1 in 20|less than 1 in 50)$/);
	await expect(check.trueValue).toHaveText(/^The water holds about (7\.9|8\.0) dKH/);
	expect(await verdict(check, 'As always')).toBe('Leave it.');
});

test('two methods that agree within their ± : nothing is hunted for', async ({ page }) => {
	const check = await new Check(page).begin(KIT, '7.6', { blanks: { 'Its ±': '0.5' } });
	await check.add('A second method', {
		blanks: { 'Its name': 'Other kit', 'What it read': '8.2', 'Its ±': '0.4' }
	});
	expect((await check.bars())[0]?.title).toBe('No fault, only the usual spread');
	// Between the two, nearer to the finer one: means of 7.6 and 8.2 weighted by 1/0.5² and 1/0.4² are 7.97.
	await expect(check.trueValue).toHaveText(/^The water holds about (7\.9|8\.0|8\.1) dKH/);
	expect(await check.page.getByRole('main').innerText()).not.toMatch(
		/both (are )?right|is correct/i
	);
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
	}
	expect(await verdict(check, 'As always')).toBe('Leave it.');
});
