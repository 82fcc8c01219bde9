import { expect, test, type Page } from '@playwright/test';
import { Tank } from '../browser/tank';
import { median, printTable, quantile } from './figures';
import { slowDown, Stopwatch, type Timed } from './stopwatch';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

const SLOWED = 4;
/** One frame of a screen that shows sixty a second, ms. */
const FRAME_MS = 1000 / 60;
const WALKS = Number(process.env.WALKS ?? 12);
const kinds = [
	'next step',
	'drop by tap',
	'flash',
	'stays',
	'letter of a mark',
	'− or + 0.01',
	'undo'
];

const measures = [
	['toScreenMs', 'from the event until the frame that shows it is painted'],
	['workMs', 'of these, handlers and the painting of that frame, without the wait for it'],
	['handlersMs', 'of these, the handlers'],
	['processorMs', "what the page's thread had of the processor for it, storing included"]
] as const;

/** A clock that can be moved on; everything else runs in its own time. */
async function movableClock(page: Page): Promise<(seconds: number) => Promise<void>> {
	await page.addInitScript(() => {
		const now = Date.now;
		let aheadMs = 0;
		Date.now = () => now() + aheadMs;
		addEventListener('ahead', (event) => (aheadMs += (event as CustomEvent<number>).detail));
	});
	return (seconds) =>
		page.evaluate(
			(ms) => void dispatchEvent(new CustomEvent('ahead', { detail: ms })),
			seconds * 1000
		);
}

/** A button that does nothing but change its own words. */
async function emptyPage(page: Page, stopwatch: Stopwatch): Promise<void> {
	await page.route('**/empty/', (route) =>
		route.fulfill({
			contentType: 'text/html',
			body: `<!doctype html><meta name="viewport" content="width=device-width">
				<button style="width:100%;height:8rem">0</button>
				<script>const b=document.querySelector('button');let n=0;b.onclick=()=>{b.textContent=++n}</script>`
		})
	);
	await page.goto('/empty/');
	for (let tap = 0; tap < 80; tap++) await stopwatch.tap('empty page', page.locator('button'));
}

async function wholeWalk(
	page: Page,
	stopwatch: Stopwatch,
	passes: (seconds: number) => Promise<void>
): Promise<void> {
	const tank = new Tank(page);
	await tank.begin('House syringe kit');
	const next = () => stopwatch.tap('next step', tank.main);
	const undo = () => stopwatch.tap('undo', tank.button(/^(Undo|Back)$/));
	const goOn = async () => {
		const asked = await page.getByRole('heading', { level: 2 }).first().innerText();
		await passes(Number(/(\d+) seconds/.exec(asked)?.[1] ?? 0) + 1);
		await next();
	};
	await goOn();
	await undo();
	for (let step = 1; step < 7; step++) {
		await expect(tank.heading).toHaveText(`Step ${step} of 9`);
		await goOn();
	}
	await expect(tank.heading).toHaveText('Step 7 of 9');
	await stopwatch.tap('filled', tank.button(/^Seal at 1\.00/));
	const count = page.locator('.count b');
	for (let drop = 1; drop <= 20; drop++) {
		await stopwatch.tap('drop by tap', tank.main);
		await expect(count).toHaveText(String(drop));
	}
	await undo();
	await expect(count).toHaveText('19');
	for (let flash = 0; flash < 5; flash++) {
		await stopwatch.tap('flash', tank.button(/^Flash/));
		await stopwatch.tap('faded', tank.button(/^It faded/));
	}
	for (let stays = 0; stays < 5; stays++) {
		if (stays > 0) await undo();
		// As long as the leaflet asks for, and nothing is doubted.
		await passes(30);
		await stopwatch.tap('stays', tank.button(/^It stays/));
	}
	await next();
	const field = page.getByLabel('Seal stands at');
	await field.fill('');
	await field.focus();
	// 19 drops of 0.021 mL went in, to 0.60: count and mark shall agree.
	await stopwatch.type('letter of a mark', '0.5800');
	await stopwatch.tap('− or + 0.01', tank.button('Seal: 0.01 less'));
	for (let more = 0; more < 4; more++)
		await stopwatch.tap('− or + 0.01', tank.button('Seal: 0.01 more'));
	await stopwatch.tap('− or + 0.01', tank.button('Seal: 0.01 less'));
	await expect(field).toHaveValue('0.60');
	await stopwatch.tap('reading given', tank.button('That is my reading'));
	await expect(page.locator('h1')).not.toHaveText(/^Step/);
}

test(`tap to screen beside the tank, processor slowed ${SLOWED} times`, async ({ page }) => {
	const stopwatch = await Stopwatch.on(page);
	const passes = await movableClock(page);
	await page.goto('/');
	await page.evaluate(() => localStorage.setItem('halfdrop.preferences', '{"counting":"tap"}'));
	await slowDown(page, SLOWED);
	await emptyPage(page, stopwatch);
	for (let walk = 0; walk < WALKS; walk++) await wholeWalk(page, stopwatch, passes);

	/** Of one measure of all taps of a kind: what stands in the table of it. */
	const figuresOf = (key: keyof Timed) => {
		const empty = stopwatch.byKind.get('empty page')?.map((each) => each[key]) ?? [];
		return (shown: readonly Timed[]): string[] => {
			const all = shown.map((each) => each[key]);
			const [best, middle, most] = [0.05, 0.5, 0.95].map((share) => quantile(all, share));
			return [
				...[best, middle, most].map((each) => each!.toFixed(1)),
				...[middle, most].map((each) => (each! / FRAME_MS).toFixed(2)),
				(quantile(all, 0.05) / quantile(empty, 0.05)).toFixed(2),
				(median(all) / median(empty)).toFixed(2),
				`${Math.round((100 * all.filter((each) => each > FRAME_MS).length) / all.length)} %`
			];
		};
	};
	const headings = '5 %,median,95 %,frames,95 %,to empty 5 %,median,over a frame'.split(',');
	for (const [key, title] of measures) {
		const figures = figuresOf(key);
		printTable(
			`Processor slowed ${SLOWED} times, ms, a frame being ${FRAME_MS.toFixed(1)} ms: ${title}`,
			['', 'taps', ...headings],
			[...stopwatch.byKind].map(([kind, shown]) => [kind, `${shown.length}`, ...figures(shown)])
		);
	}
	for (const kind of kinds)
		expect(stopwatch.byKind.get(kind)?.length ?? 0, kind).toBeGreaterThanOrEqual(60);
});
