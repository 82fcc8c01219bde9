import { afterEach, describe, expect, test, vi } from 'vitest';
import { BenchClock, Persisted } from '../../../src/lib/ui/state';

describe('the clock of the bench', () => {
	test('stands still while paused and goes on where it stopped', () => {
		let wall = 1000;
		const clock = new BenchClock(5000, () => wall);
		expect(clock.now()).toBe(5000);
		clock.resume();
		wall += 250;
		expect(clock.now()).toBe(5250);
		clock.pause();
		wall += 60_000;
		expect(clock.now()).toBe(5250);
		clock.resume();
		wall += 10.7;
		expect(clock.now()).toBe(5260);
	});
	test('pausing twice or resuming twice changes nothing', () => {
		let wall = 0;
		const clock = new BenchClock(0, () => wall);
		clock.resume();
		wall = 100;
		clock.resume();
		wall = 150;
		clock.pause();
		clock.pause();
		expect(clock.now()).toBe(150);
		expect(clock.isRunning).toBe(false);
	});
});

describe('a setting that is kept', () => {
	afterEach(() => {
		localStorage.clear();
		vi.restoreAllMocks();
	});
	const number = (stored: unknown) => {
		if (typeof stored !== 'number') throw new Error('no number');
		return stored;
	};
	test('comes back in the next page', () => {
		new Persisted('k', 1, number).current = 4;
		expect(new Persisted('k', 1, number).current).toBe(4);
	});
	test('damaged, it gives way to the default', () => {
		localStorage.setItem('k', '{"x":');
		expect(new Persisted('k', 1, number).current).toBe(1);
		localStorage.setItem('k', '"text"');
		expect(new Persisted('k', 1, number).current).toBe(1);
	});
	test('where storage is forbidden it lasts as long as the page', () => {
		vi.spyOn(Storage.prototype, 'getItem').mockImplementation(() => {
			throw new DOMException('forbidden', 'SecurityError');
		});
		vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
			throw new DOMException('full', 'QuotaExceededError');
		});
		const setting = new Persisted('k', 1, number);
		expect(setting.current).toBe(1);
		setting.current = 7;
		expect(setting.current).toBe(7);
	});
});
