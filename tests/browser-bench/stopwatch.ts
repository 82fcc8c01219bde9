import type { CDPSession, Locator, Page } from '@playwright/test';

/** One input and the frame that shows what it did, ms. */
export type Shown = {
	/** From the event, as the browser stamped it, until the frame that shows it is painted. */
	toScreenMs: number;
	/** Of these, what the page itself takes: handlers, then style, layout and paint of that frame. */
	workMs: number;
	/** The handlers alone, with what they leave to be done at once. */
	handlersMs: number;
};
/** The same with what the page's thread had of the processor for it: other programs do not lengthen it. */
export type Timed = Shown & { processorMs: number };

declare global {
	interface Window {
		/** Hands out the next measure that nobody has asked for yet. */
		nextShown(): Promise<Shown>;
	}
}

/** Stands in the page before its own scripts: measures every click, and every letter typed. */
function watchInputs(): void {
	const shown: Shown[] = [];
	const asked: ((next: Shown) => void)[] = [];
	let isMeasuring = false;
	/** A task of its own: after the handlers and what they left to be done at once, or after a paint. */
	const afterwards = (task: () => void) => {
		const { port1, port2 } = new MessageChannel();
		port1.onmessage = task;
		port2.postMessage(null);
	};
	const measure = (event: Event) => {
		if (!event.isTrusted || isMeasuring) return;
		isMeasuring = true;
		const begunAt = performance.now();
		let handledAt: number | null = null;
		afterwards(() => (handledAt ??= performance.now()));
		requestAnimationFrame(() => {
			const frameAt = performance.now();
			handledAt ??= frameAt;
			const handledMs = handledAt - begunAt;
			afterwards(() => {
				const paintedAt = performance.now();
				isMeasuring = false;
				const next = {
					toScreenMs: paintedAt - event.timeStamp,
					workMs: handledMs + (paintedAt - frameAt),
					handlersMs: handledMs
				};
				const give = asked.shift();
				if (give) give(next);
				else shown.push(next);
			});
		});
	};
	addEventListener('click', measure, { capture: true });
	addEventListener('input', measure, { capture: true });
	window.nextShown = () => {
		const next = shown.shift();
		return next ? Promise.resolve(next) : new Promise((give) => asked.push(give));
	};
}

/** Inputs on one page by their kind, each with the time that it took to be seen. */
export class Stopwatch {
	readonly byKind = new Map<string, Timed[]>();

	private constructor(
		private readonly page: Page,
		private readonly session: CDPSession
	) {}

	/** For pages opened from now on. */
	static async on(page: Page): Promise<Stopwatch> {
		await page.addInitScript(watchInputs);
		const session = await page.context().newCDPSession(page);
		await session.send('Performance.enable', { timeDomain: 'threadTicks' });
		return new Stopwatch(page, session);
	}

	/** A tap with a finger. Nothing is asked of the page between the finger and the frame. */
	async tap(kind: string, target: Locator): Promise<void> {
		await target.waitFor();
		await target.scrollIntoViewIfNeeded();
		const box = await target.boundingBox();
		if (!box) throw new Error(`${target.toString()} is not to be seen`);
		await this.note(kind, () =>
			this.page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2)
		);
	}
	/** Letter by letter into the field that has the focus. */
	async type(kind: string, text: string): Promise<void> {
		for (const letter of text) await this.note(kind, () => this.page.keyboard.press(letter));
	}

	private async note(kind: string, act: () => Promise<void>): Promise<void> {
		const before = await this.processorMs();
		await act();
		const shown = await this.page.evaluate(() => window.nextShown());
		const processorMs = (await this.processorMs()) - before;
		this.byKind.set(kind, [...(this.byKind.get(kind) ?? []), { ...shown, processorMs }]);
	}
	/** All that the page's thread has done so far. */
	private async processorMs(): Promise<number> {
		const { metrics } = await this.session.send('Performance.getMetrics');
		return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN);
	}
}

/** As on a phone of the lower sort, against the machine that this runs on. */
export async function slowDown(page: Page, rate: number): Promise<void> {
	const session = await page.context().newCDPSession(page);
	await session.send('Emulation.setCPUThrottlingRate', { rate });
}
