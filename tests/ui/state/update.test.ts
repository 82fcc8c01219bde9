import { afterEach, expect, test, vi } from 'vitest';

afterEach(() => {
	vi.unstubAllGlobals();
	vi.resetModules();
});

type Worker = EventTarget & { state: string; postMessage: (message: unknown) => void };
const workerIn = (state: string): Worker =>
	Object.assign(new EventTarget(), { state, postMessage: vi.fn() });

/** A browser's service workers as far as the page sees them. */
function container(controller: Worker | null) {
	const registration = Object.assign(new EventTarget(), {
		installing: null as Worker | null,
		waiting: null as Worker | null
	});
	const serviceWorker = Object.assign(new EventTarget(), {
		controller,
		ready: Promise.resolve(registration)
	});
	vi.stubGlobal('navigator', { serviceWorker });
	return { registration, serviceWorker };
}
const opened = async () => {
	const { siteUpdate } = await import('../../../src/lib/ui/state/update.svelte');
	siteUpdate.watch();
	await Promise.resolve();
	await Promise.resolve();
	return siteUpdate;
};

test('a version that lies ready when the page opens is seen', async () => {
	const { registration } = container(workerIn('activated'));
	registration.waiting = workerIn('installed');
	expect((await opened()).isReady).toBe(true);
});
test('a version that comes while the page is open is seen once it is whole', async () => {
	const { registration } = container(workerIn('activated'));
	const update = await opened();
	expect(update.isReady).toBe(false);
	const coming = workerIn('installing');
	registration.installing = coming;
	registration.dispatchEvent(new Event('updatefound'));
	expect(update.isReady).toBe(false);
	Object.assign(registration, { installing: null, waiting: coming });
	coming.dispatchEvent(new Event('statechange'));
	expect(update.isReady).toBe(true);
	// Taken by another window: nothing is left to be offered.
	registration.waiting = null;
	coming.dispatchEvent(new Event('statechange'));
	expect(update.isReady).toBe(false);
});
test('the first version of all is no news', async () => {
	const { registration } = container(null);
	registration.waiting = workerIn('installed');
	expect((await opened()).isReady).toBe(false);
});
test('taking it asks that version to take over, and only then loads the page anew', async () => {
	const { registration, serviceWorker } = container(workerIn('activated'));
	const waiting = workerIn('installed');
	registration.waiting = waiting;
	const reload = vi.fn();
	vi.stubGlobal('location', { reload });
	const update = await opened();
	update.take();
	expect(waiting.postMessage).toHaveBeenCalledWith('take');
	expect(reload).not.toHaveBeenCalled();
	serviceWorker.dispatchEvent(new Event('controllerchange'));
	expect(reload).toHaveBeenCalledTimes(1);
});
test('a window that did not ask is not loaded anew', async () => {
	const { serviceWorker } = container(workerIn('activated'));
	const reload = vi.fn();
	vi.stubGlobal('location', { reload });
	(await opened()).take();
	serviceWorker.dispatchEvent(new Event('controllerchange'));
	expect(reload).not.toHaveBeenCalled();
});
test('where there are no service workers there is nothing to see', async () => {
	vi.stubGlobal('navigator', {});
	expect((await opened()).isReady).toBe(false);
});
