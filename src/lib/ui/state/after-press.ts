/** Since when a pointer presses, until it lets go. */
let isPressing = false;
/** What waits for that. */
let waiting: (() => void)[] = [];

function settle(): void {
	isPressing = false;
	const due = waiting;
	waiting = [];
	for (const each of due) each();
}

if (typeof window !== 'undefined') {
	addEventListener('mousedown', () => (isPressing = true), { capture: true });
	// The click that ends a press comes right after the mouse is let go, and before this.
	addEventListener('mouseup', () => setTimeout(settle), { capture: true });
	addEventListener('dragend', settle, { capture: true });
	addEventListener('blur', settle);
}

/**
 * Does something at once or, while a pointer presses, when it has let go. A field is left by pressing
 * something else: a message that came up in between would move that away from under the finger, and
 * the press would be lost.
 */
export function afterPress(todo: () => void): void {
	if (isPressing) waiting.push(todo);
	else todo();
}
