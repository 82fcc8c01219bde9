import type { Page } from '@playwright/test';
import { Bench, settle } from './bench';
import { expect, test } from './house';

/** A reload, and the bench as it is found again. */
async function reload(page: Page, bench: Bench): Promise<void> {
	await page.reload();
	await expect(bench.heading).not.toHaveText('Sunday evening');
	await bench.standStill();
}

test('a reload in mid-titration finds the same drops, the same seal, the same colour', async ({
	page
}) => {
	await settle(page);
	const bench = await new Bench(page).open('sunday-evening');
	await bench.prepareSample();
	await bench.fillToTheSeal();
	await bench.add(3);
	await bench.add(1);

	/** Colour and seal in words; the seal is told where the syringe can be refilled. */
	const told = async () => {
		const colour = await bench.colourName();
		await bench.press('Refill');
		await bench.levelTheEye();
		await bench.press(/^Say it/);
		const seal = await bench.words.innerText();
		await bench.press('Back to the vial');
		return { colour, seal };
	};
	const before = await told();
	expect(before.seal).toContain('marked 0.');
	await reload(page, bench);
	await expect(bench.heading).toHaveText('Titrate');
	const drops = /As you left it: titrate, (\d+) drops, swirled/;
	await expect(page.getByText(drops)).toBeVisible();
	const [, count] = drops.exec(await page.getByText(drops).innerText()) ?? [];
	expect(Number(count)).toBeGreaterThan(3);
	expect(await told()).toEqual(before);
	await reload(page, bench);
	await expect(page.getByText(`${count} drops`)).toBeVisible();

	// And the run goes on from there to its end.
	await bench.findTheEndByWords();
	await bench.declareTheEnd();
	await bench.readAndConvert();
	await expect(bench.heading).toHaveText('Check');
});

test('at no step of the walk does a reload lose anything', async ({ page }) => {
	await settle(page);
	const bench = await new Bench(page).open('sunday-evening');
	const staysAt = async (name: string) => {
		await expect(bench.heading).toHaveText(name);
		await reload(page, bench);
		await expect(bench.heading).toHaveText(name);
	};
	await bench.press('Fine, 10 mL');
	await expect(bench.button('Fine, 10 mL')).toHaveAttribute('aria-pressed', 'true');
	await staysAt('Sample size');
	await expect(bench.button('Fine, 10 mL')).toHaveAttribute('aria-pressed', 'true');
	await bench.press('Normal, 6 mL');
	await bench.press('Next');
	for (const ware of ['Rinse the syringe', 'Rinse the vial']) {
		await bench.press('tank water');
		await staysAt(ware);
		await expect(bench.button('tank water')).toHaveAttribute('aria-pressed', 'true');
		await bench.press('Next');
	}
	for (let i = 0; i < 6; i++) await bench.press('Draw a stretch');
	await staysAt('Measure');
	await bench.press(/^Say it/);
	await expect(bench.words).toContainText('seal stands on the long line marked 6.');
	await bench.press('Empty into the vial');
	await staysAt('Measure');
	await expect(bench.button('Next')).toBeEnabled();
	await bench.press('Next');

	await bench.press(/Let a drop fall/);
	await bench.passes(1);
	await staysAt('Indicator');
	await expect(page.getByText('indicator in (1)')).toBeVisible();
	await bench.doseIndicator(2);
	await staysAt('Mix');
	await bench.mix();

	await bench.draw(10);
	await staysAt('Fill');
	await bench.press(/^Say it/);
	await expect(bench.words).toContainText('seal stands on the long line marked 1.');
	await bench.press('Wipe the tip');
	await bench.press('It is filled');
	await staysAt('Titrate');

	await bench.add(3.4);
	await bench.passes(26);
	await bench.press(/^It stays/);
	await staysAt('Titrate');
	await expect(page.getByText('Noted.')).toBeVisible();
	await bench.press('Read it');
	await staysAt('Read');
	const mark = await bench.readTheSeal();
	await staysAt('Read');
	await bench.giveValue(await bench.valueByTheTable(mark));
	await staysAt('Check');
	await bench.press(/^Do it: Quick repeat/);
	await expect(page.getByText('Made once')).toBeVisible();
	await staysAt('Check');
	await expect(page.getByText('Made once')).toBeVisible();
});
