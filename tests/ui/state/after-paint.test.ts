import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { afterPaint } from '../../../src/lib/ui/state/after-paint';

let draw: (() => void) | null = null;
beforeEach(() => {
	vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
	vi.stubGlobal('requestAnimationFrame', (callback: () => void) => {
		draw = callback;
		return 1;
	});
	vi.stubGlobal('cancelAnimationFrame', () => (draw = null));
});
afterEach(() => {
	draw = null;
	vi.unstubAllGlobals();
	vi.useRealTimers();
	vi.restoreAllMocks();
});
/** Messages of a channel come in a task of their own. */
const message = () =>
	new Promise<void>((done) => {
		const { port1, port2 } = new MessageChannel();
		port1.onmessage = () => {
			port1.close();
			done();
		};
		port2.postMessage(null);
	});

it('comes after the frame, not before it is drawn', async () => {
	const task = vi.fn();
	afterPaint(task);
	await message();
	expect(task).not.toHaveBeenCalled();
	draw?.();
	expect(task).not.toHaveBeenCalled();
	await message();
	await message();
	expect(task).toHaveBeenCalledOnce();
	vi.advanceTimersByTime(1000);
	expect(task).toHaveBeenCalledOnce();
});

it('does not wait for a frame that never comes', () => {
	const task = vi.fn();
	afterPaint(task);
	vi.advanceTimersByTime(1000);
	expect(task).toHaveBeenCalledOnce();
});

it('can be left undone', () => {
	const task = vi.fn();
	afterPaint(task)();
	expect(draw).toBeNull();
	vi.advanceTimersByTime(1000);
	expect(task).not.toHaveBeenCalled();
});
