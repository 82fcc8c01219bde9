import type { Page } from '@playwright/test';
import { Bench, settle } from './bench';
import { expect, test } from './house';

/** All that a screen reader can come by, and every tone that was asked of the loudspeaker. */
type Witnessed = { trees: string[]; sounds: string[] };

/** Hands the page another truth in place of the one that the scenario holds. */
async function withTruth(page: Page, changes: readonly [RegExp, string][]): Promise<void> {
	await page.route('**/*.js', async (route) => {
		const response = await route.fetch();
		let body = await response.text();
		if (body.includes('id:`two-answers`'))
			for (const [from, to] of changes) {
				expect(body, 'the truth to be exchanged').toMatch(from);
				body = body.replace(from, to);
			}
		await route.fulfill({ response, body });
	});
}

/** Writes down what is asked of the sound, in order. */
async function listen(page: Page): Promise<void> {
	await page.addInitScript(() => {
		const heard: string[] = [];
		Object.assign(window, { heard });
		const real = AudioParam.prototype.setTargetAtTime;
		AudioParam.prototype.setTargetAtTime = function (value, at, constant) {
			const last = heard.at(-1);
			if (last !== String(value)) heard.push(String(value));
			return real.call(this, value, at, constant);
		};
	});
}

async function witness(page: Page): Promise<Witnessed> {
	await settle(page);
	await listen(page);
	const bench = await new Bench(page).open('two-answers');
	const trees: string[] = [];
	const note = async () => {
		trees.push(await page.locator('body').ariaSnapshot());
		trees.push(await page.title());
	};
	await bench.press('Settings');
	await page.getByRole('checkbox', { name: /^Sound/ }).check();
	await bench.press('Close');
	await bench.prepareSample();
	await note();
	await bench.fillToTheSeal();
	for (const seconds of [2.5, 1, 1, 1]) {
		await bench.add(seconds);
		await bench.look();
		await note();
	}
	await bench.findTheEndByWords();
	await note();
	await bench.declareTheEnd();
	await note();
	await bench.readAndConvert();
	await expect(bench.heading).toHaveText('Check');
	await note();
	await bench.press(/^Do it: Quick repeat/);
	await expect(page.getByText('Made once')).toBeVisible();
	await note();
	const sounds = await page.evaluate(() => (window as unknown as { heard: string[] }).heard);
	await bench.conclude(/^My technique/, /^A guess/);
	return { trees, sounds };
}

test('two truths that nothing done so far could tell apart look and sound the same', async ({
	browser,
	baseURL
}) => {
	const one = await browser.newPage({ baseURL });
	const other = await browser.newPage({ baseURL });
	// The other method is right, so that the reading would be off; nobody has asked it.
	await withTruth(other, [
		[/offset:-1.2/, 'offset:0.9'],
		[/verdict:`cantTellYet`/, 'verdict:`technique`'],
		[/reveal:`The photometer was off/, 'reveal:`Another story']
	]);
	const [seen, twin] = [await witness(one), await witness(other)];
	expect(seen.trees.length).toBeGreaterThan(14);
	expect(twin.trees).toEqual(seen.trees);
	expect(seen.sounds.length).toBeGreaterThan(20);
	expect(twin.sounds).toEqual(seen.sounds);
	// After the conclusion each is told its own story: the exchange did take place.
	await expect(one.getByText('The photometer was off')).toBeVisible();
	await expect(other.getByText('Another story')).toBeVisible();
	await Promise.all([one.close(), other.close()]);
});

test('the tones follow the colour: another water sounds otherwise', async ({
	browser,
	baseURL
}) => {
	const one = await browser.newPage({ baseURL });
	const other = await browser.newPage({ baseURL });
	await withTruth(other, [[/alkalinityDkh:8\.3/, 'alkalinityDkh:6.3']]);
	const [seen, changed] = [await witness(one), await witness(other)];
	expect(changed.sounds).not.toEqual(seen.sounds);
	expect(changed.trees).not.toEqual(seen.trees);
	await Promise.all([one.close(), other.close()]);
});
