import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keyAsks, type KeyAsks } from '../../../../src/lib/ui/state/pedal';
import { everyBeat, whileLooking } from '../../../../src/lib/ui/state/ticker';

function asked(
	code: string,
	at: { inside?: string; repeat?: boolean; ctrlKey?: boolean } = {},
	options: Parameters<typeof keyAsks>[1] = {}
): KeyAsks {
	document.body.innerHTML = at.inside ?? '';
	const target = document.querySelector('[data-here]') ?? document.body;
	let found: KeyAsks = null;
	const listen = (event: KeyboardEvent) => (found = keyAsks(event, options));
	window.addEventListener('keydown', listen, { once: true });
	const { repeat = false, ctrlKey = false } = at;
	target.dispatchEvent(new KeyboardEvent('keydown', { code, repeat, ctrlKey, bubbles: true }));
	return found;
}

describe('a key on the walk', () => {
	it.each(['Space', 'Enter', 'NumpadEnter', 'ArrowRight', 'ArrowLeft', 'ArrowDown', 'PageDown'])(
		'%s goes on',
		(code) => {
			expect(asked(code)).toBe('goOn');
			expect(asked(code, { repeat: true })).toBe('hold');
			expect(asked(code, { ctrlKey: true })).toBeNull();
		}
	);
	it.each(['Backspace', 'Escape', 'Tab', 'Delete', 'F5', 'ShiftLeft', 'AudioVolumeUp'])(
		'%s does nothing, not even as a pedal',
		(code) => {
			expect(asked(code)).toBeNull();
			expect(asked(code, {}, { any: true })).toBeNull();
		}
	);
	it('letters count as a pedal only', () => {
		expect(asked('KeyB')).toBeNull();
		expect(asked('KeyB', {}, { any: true })).toBe('goOn');
	});
	it('belongs to a field that is typed in, to a dialog, to a switch', () => {
		for (const inside of [
			'<input data-here>',
			'<dialog open><button data-here></button></dialog>',
			'<textarea data-here></textarea>'
		])
			expect(asked('Enter', { inside })).toBeNull();
	});
	it('is a press of another button where that has the focus', () => {
		const inside = '<button data-here>Back</button>';
		expect(asked('Enter', { inside })).toBeNull();
		expect(asked('Space', { inside })).toBeNull();
		expect(asked('PageDown', { inside })).toBe('goOn');
	});
	it('on the main button is its own press, once', () => {
		const inside = '<button data-main data-here>Rinsed</button>';
		expect(asked('Enter', { inside })).toBeNull();
		expect(asked('Enter', { inside, repeat: true })).toBe('hold');
		expect(asked('ArrowRight', { inside })).toBe('goOn');
	});
	it('leaves up and down to a page that has to be scrolled', () => {
		expect(asked('ArrowDown', {}, { scrolls: true })).toBeNull();
		expect(asked('ArrowRight', {}, { scrolls: true })).toBe('goOn');
	});
});

describe('a beat', () => {
	beforeEach(() => void vi.useFakeTimers());
	afterEach(() => void vi.useRealTimers());

	it('comes after one period, then at each, without drift', () => {
		const at: number[] = [];
		const from = performance.now();
		const stop = everyBeat(
			1500,
			() => performance.now(),
			() => at.push(performance.now() - from)
		);
		vi.advanceTimersByTime(6100);
		expect(at).toEqual([1500, 3000, 4500, 6000]);
		stop();
		vi.advanceTimersByTime(9000);
		expect(at).toHaveLength(4);
	});
	it('that was slept through is left out, not made good in a burst', () => {
		let clock = 0;
		let beats = 0;
		everyBeat(
			1000,
			() => clock,
			() => beats++
		);
		// The page is frozen for a minute; then its timer fires.
		clock = 60_000;
		vi.advanceTimersByTime(1000);
		expect(beats).toBe(1);
		clock = 61_000;
		vi.advanceTimersByTime(1000);
		expect(beats).toBe(2);
	});
	it('looking goes on until it is stopped, and at once when the page is seen', () => {
		const look = vi.fn();
		const stop = whileLooking(look, 200);
		vi.advanceTimersByTime(1000);
		expect(look).toHaveBeenCalledTimes(5);
		document.dispatchEvent(new Event('visibilitychange'));
		expect(look).toHaveBeenCalledTimes(6);
		stop();
		vi.advanceTimersByTime(1000);
		document.dispatchEvent(new Event('visibilitychange'));
		expect(look).toHaveBeenCalledTimes(6);
	});
});
