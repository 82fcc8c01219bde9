const written = new WeakMap<Element, Map<string, string>>();

/**
 * Writes an attribute of a drawing when it differs from what was written last: in most frames
 * nothing does, and the browser then has nothing to do.
 */
export function put(element: Element | undefined, name: string, value: string | number): void {
	if (!element) return;
	const text = typeof value === 'number' ? String(Math.round(value * 100) / 100) : value;
	let attributes = written.get(element);
	if (!attributes) written.set(element, (attributes = new Map()));
	if (attributes.get(name) === text) return;
	attributes.set(name, text);
	element.setAttribute(name, text);
}

/** Shows or hides a part of a drawing. */
export function show(element: Element | undefined, isShown: boolean): void {
	put(element, 'visibility', isShown ? 'visible' : 'hidden');
}
