import { Bench, settle } from './bench';
import { TouchHand } from './hands';
import { expect, expectNoBarriers, expectNoSidewaysScroll, inTheme, test } from './house';
import { numeralFromWords } from './scale-words';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

/** The calcium kit of the house: what its leaflet asks for. */
const kit = { sampleMl: 8, baseDrops: 14, waitS: 60, spoons: 2, fullTenths: 20, divisionMl: 0.05 };

/** Base by the drop, its wait, and the powder, each swirled in. */
async function dose(bench: Bench): Promise<void> {
	for (let fallen = 0; fallen < kit.baseDrops; fallen++) {
		await bench.press(/Let a drop fall/);
		await bench.passes(1);
	}
	await bench.press('Next');
	await swirlIn(bench);
	await expect(bench.heading).toHaveText('Wait');
	await bench.passes(kit.waitS);
	await bench.press('Look');
	await expect(bench.words).toHaveText('A white cloud.');
	await bench.press('Next');
	for (let spoon = 0; spoon < kit.spoons; spoon++) {
		await bench.press(/indicator powder/);
		await bench.passes(1);
	}
	await bench.press('Next');
	await swirlIn(bench);
}

async function swirlIn(bench: Bench): Promise<void> {
	await expect(bench.heading).toHaveText('Mix');
	await bench.hand.hold(bench.button(/Hold to swirl/), () => bench.passes(11));
	await bench.press('Next');
}

/** Fast while it is red, then drop by drop until the whole vial is blue and stays so. */
async function findBlue(bench: Bench): Promise<void> {
	// A stream takes it about three quarters of the way.
	await bench.add(6);
	for (let doses = 0; doses < 60; doses++) {
		const name = await bench.colourName();
		if (/blue/.test(name) && !/violet|purple/.test(name)) {
			await bench.passes(41);
			if ((await bench.colourName()) === name) return;
		}
		await bench.add(/red|wine|rose|pink/.test(name) ? 1.2 : 0.6);
	}
	throw new Error('the words never told blue');
}

test('a drill of base and its wait is done by touch, from opening to debrief', async ({ page }) => {
	await settle(page);
	const bench = new Bench(page, new TouchHand(page));
	await page.goto('/practise/');
	const drills = page.locator('#drills');
	await bench.hand.press(drills.locator('summary').filter({ hasText: 'Calcium' }));
	await bench.hand.press(drills.getByRole('link', { name: /^Drops of base/ }));
	await expect(page.getByText(/burns eyes and skin/)).toBeVisible();
	await bench.goToBench();
	await dose(bench);
	await expect(bench.heading).toHaveText('Debrief');
	await expect(page.getByText('This drill ends before a value.')).toBeVisible();
	await expect(page.getByText('No slip was seen. Try the same within a whole run.')).toBeVisible();
	await expectNoSidewaysScroll(page);

	await test.step('the debrief outlives a reload, and the opening leads back to it', async () => {
		await page.reload();
		await expect(bench.heading).toHaveText('Debrief');
		await expect(page.getByText('No slip was seen.')).toBeVisible();
		await page.goto('/practise/drops-of-base/');
		await expect(bench.button('To the bench')).toBeVisible();
		await page.getByRole('link', { name: /^See the debrief of \d+ \w+ \d{4}$/ }).tap();
		await expect(bench.heading).toHaveText('Debrief');
		await page.goBack();
		await expect(bench.button('To the bench')).toBeVisible();
	});
});

test('a group of drills opened before the page has woken stays open', async ({ page }) => {
	// The foot of the list tells of a run that was begun as soon as the page is awake.
	await settle(page);
	const begun = await new Bench(page, new TouchHand(page)).open('take-the-sample');
	await begun.press('Next');
	await expect(begun.heading).toHaveText('Rinse the syringe');
	let wake = () => {};
	const asked = new Promise<void>((done) => (wake = done));
	await page.route('**/_app/immutable/entry/*.js', async (route) => {
		await asked;
		await route.continue();
	});
	await page.goto('/practise/', { waitUntil: 'commit' });
	const drills = page.locator('#drills');
	const link = drills.getByRole('link', { name: /^Drops of base/ });
	const goOn = page.getByRole('link', { name: /^Go on:/ });
	await drills.locator('summary').filter({ hasText: 'Calcium' }).tap();
	await expect(link).toBeVisible();
	await expect(goOn).toBeHidden();
	wake();
	await expect(goOn).toBeVisible();
	await expect(link).toBeVisible();
});

test('a case of three values is done by touch, from opening to debrief', async ({ page }) => {
	await settle(page);
	const bench = new Bench(page, new TouchHand(page));
	await page.goto('/practise/the-third-week-of-october/');
	await expect(page.getByRole('heading', { name: 'Other values of this tank' })).toBeVisible();
	await bench.goToBench();
	for (const ware of ['Rinse the syringe', 'Rinse the vial']) {
		await expect(bench.heading).toHaveText(ware);
		await bench.press('tank water');
		await bench.press('Next');
	}
	await bench.measure(kit.sampleMl);
	await dose(bench);
	await bench.draw(kit.fullTenths);
	await bench.press('Wipe the tip');
	await bench.press('It is filled');
	await expect(bench.heading).toHaveText('Titrate');
	await findBlue(bench);
	await bench.passes(41);
	await bench.press(/^It stays/);
	await bench.press('Read it');
	await bench.levelTheEye();
	await bench.press('Say it in words');
	const mark = numeralFromWords(await bench.words.innerText(), kit.divisionMl);
	await bench.hand.write(page.getByLabel(/The seal stands at/), mark.toFixed(2));
	await bench.press('That is my reading');
	const leaflet = page.getByRole('main');
	await expect(leaflet.getByText('Each mL of titrant used stands for 300 mg/L.')).toBeVisible();
	await expect(leaflet.getByText('Take off 6.8 at the end, once.')).toBeVisible();
	const value = Math.round((kit.fullTenths / 10 - mark) * 300 - 6.8);
	await bench.hand.write(page.getByLabel(/Value, mg\/L/), String(value));
	await bench.press('That is my value');

	await expect(page.getByText(`Can you stand by ${value}?`)).toBeVisible();
	// What the scenario holds is 377; two drops are 14.
	expect(Math.abs(value - 377)).toBeLessThan(30);
	await bench.press(/^Do it: Measure the salinity/);
	await expect(page.locator('#beside')).toContainText(/Today, your hydrometer/);
	await expect(page.locator('#beside')).toContainText(/3[01]\.\d\s±\s1\.0/);
	await expectNoSidewaysScroll(page);
	await bench.conclude(/^The salinity/, /^Fairly sure/);
	await expect(page.locator('#verdict')).toContainText('It was 377.');
	await expect(page.locator('#concluded')).toContainText('So it was.');
	await expect(page.locator('#concluded')).toContainText('What you had collected carried it.');
	await expect(page.locator('#together')).toContainText('Put that right first');
	await expectNoSidewaysScroll(page);
});

test('a value measured beside a reading of both metals: sound in both themes, and judged', async ({
	page
}) => {
	const bench = new Bench(page, new TouchHand(page));
	await page.goto('/practise/the-new-keeper/');
	await bench.press(/Go to the checks/);
	await expect(page.getByText(/Can you stand by magnesium \d+\?/)).toBeVisible();
	// By hand: 24 mmol/L less 420 / 40.078 leave 13.5, times 24.305 g/mol.
	await expect(page.locator('p').filter({ hasText: 'Taken off,' })).toContainText(
		/2[34]\.\d\s−\s10\.5\s=\s1[34]\.\d\s+mmol\/L, which is magnesium\s+3[1-5]\d\s±\s\d\d\s+mg\/L/
	);
	await bench.press(/^Do it: Measure calcium anew/);
	await expect(page.locator('#beside')).toContainText('Today, you, with the calcium kit');
	for (const theme of ['light', 'dark'] as const) {
		await inTheme(page, theme);
		await expectNoBarriers(page);
		await expectNoSidewaysScroll(page);
	}
	await bench.conclude(/^What was taken off/, /^A guess/);
	await expect(page.locator('#concluded')).toContainText('It was technique.');
	await expect(page.locator('#concluded')).toContainText('is what was taken off.');
	await expectNoBarriers(page);
});
