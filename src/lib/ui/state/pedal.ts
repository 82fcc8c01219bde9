/**
 * Keys as pedals and remotes of keyboard type send them: whole keys without any modifier. Tab, Escape
 * and Backspace belong to the page.
 */
const goOnKeys = [
	'Space',
	'Enter',
	'NumpadEnter',
	'ArrowRight',
	'ArrowLeft',
	'ArrowDown',
	'ArrowUp',
	'PageDown',
	'PageUp'
];
const scrollKeys = ['ArrowDown', 'ArrowUp'];
const notForPedals =
	/^(Tab|Escape|Backspace|Delete|ContextMenu|CapsLock|NumLock|F\d+|(Shift|Control|Alt|Meta|OS|Audio|Volume|Media|Browser).*)$/;

/** What a press of a key asks for: on with it, nothing new (a held key), or nothing of ours. */
export type KeyAsks = 'goOn' | 'hold' | null;

const isWithModifier = (event: KeyboardEvent) =>
	event.ctrlKey || event.metaKey || event.altKey || event.isComposing;

/** Does the key belong to what has the focus: text being typed, a switch, a handle, another button? */
function isForFocus({ target, code }: KeyboardEvent): boolean {
	if (!(target instanceof Element)) return false;
	if (target.closest('dialog, input, textarea, select, [contenteditable], [role="slider"]'))
		return true;
	const isPress = code === 'Space' || code === 'Enter' || code === 'NumpadEnter';
	return isPress && target.closest('button:not([data-main]), a, summary') !== null;
}

/** A press of the main button itself is the browser's business; held down it must not count again. */
const isOnMain = ({ target }: KeyboardEvent) =>
	target instanceof Element && target.closest('[data-main]') !== null;

/**
 * Reads a press of a key on the walk.
 *
 * @param any every key counts, as with a pedal that counts drops
 * @param scrolls the page is longer than the window: the arrows move it
 */
export function keyAsks(
	event: KeyboardEvent,
	{ any = false, scrolls = false }: { any?: boolean; scrolls?: boolean } = {}
): KeyAsks {
	if (event.defaultPrevented || isWithModifier(event) || isForFocus(event)) return null;
	const { code } = event;
	if (scrolls && scrollKeys.includes(code)) return null;
	const isOurs = any ? code !== '' && !notForPedals.test(code) : goOnKeys.includes(code);
	if (!isOurs) return null;
	if (event.repeat) return 'hold';
	const isPress = code === 'Space' || code === 'Enter' || code === 'NumpadEnter';
	return isPress && isOnMain(event) ? null : 'goOn';
}
