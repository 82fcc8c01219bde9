import { fireEvent } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { afterPress } from '../../../src/lib/ui/state/after-press';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('does it at once while nothing is pressed', () => {
	const todo = vi.fn();
	afterPress(todo);
	expect(todo).toHaveBeenCalledOnce();
});

it('waits until a press has become a click', async () => {
	const order: string[] = [];
	await fireEvent.mouseDown(document.body);
	afterPress(() => order.push('message'));
	vi.advanceTimersByTime(800);
	expect(order).toEqual([]);
	document.body.addEventListener('click', () => order.push('click'), { once: true });
	void fireEvent.mouseUp(document.body);
	void fireEvent.click(document.body);
	vi.advanceTimersByTime(0);
	expect(order).toEqual(['click', 'message']);
	afterPress(() => order.push('later'));
	expect(order).toEqual(['click', 'message', 'later']);
});

it('does not wait for ever for a press that ends elsewhere', async () => {
	const todo = vi.fn();
	await fireEvent.mouseDown(document.body);
	afterPress(todo);
	await fireEvent.blur(window);
	expect(todo).toHaveBeenCalledOnce();
});
