/** What single keys can do while drops are added. */
export const benchDeeds = ['flow', 'swirl', 'touchOff', 'look', 'compare', 'stays'] as const;
export type BenchDeed = (typeof benchDeeds)[number];

/** By physical key, so that a layout does not move them. */
export const defaultKeys: Record<BenchDeed, string> = {
	flow: 'Space',
	swirl: 'KeyS',
	touchOff: 'KeyT',
	look: 'KeyL',
	compare: 'KeyC',
	stays: 'Enter'
};

export const deedNames: Record<BenchDeed, string> = {
	flow: 'Let a drop form',
	swirl: 'Swirl',
	touchOff: 'Touch off',
	look: 'Look',
	compare: 'Comparison vial',
	stays: 'It stays'
};

/** A key's name as it is printed under a control. */
export function keyName(code: string): string {
	return code.replace(/^Key|^Digit/, '').replace('Numpad', 'Pad ');
}

/** The deed that a key stands for, or null. */
export function deedOf(code: string, keys: Record<BenchDeed, string>): BenchDeed | null {
	return benchDeeds.find((deed) => keys[deed] === code) ?? null;
}

/** Keys that the page or a screen reader needs for itself. */
const reserved = ['Tab', 'Escape', 'ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'];

/** The keys with one changed; a key that another deed had goes over in exchange. */
export function remapped(
	keys: Record<BenchDeed, string>,
	deed: BenchDeed,
	code: string
): Record<BenchDeed, string> {
	if (reserved.includes(code) || !/^[A-Za-z0-9]+$/.test(code)) return keys;
	const other = deedOf(code, keys);
	const changed = { ...keys, [deed]: code };
	if (other && other !== deed) changed[other] = keys[deed];
	return changed;
}

/**
 * Whether a key press belongs to what has the focus rather than to the bench: typing into a field,
 * Space and Enter on another control.
 */
export function isForFocus(target: EventTarget | null, code: string): boolean {
	if (!(target instanceof Element)) return false;
	if (target.closest('dialog, input, textarea, select, [contenteditable]')) return true;
	if (code !== 'Space' && code !== 'Enter') return false;
	return target.closest('button:not([data-pad]), a, summary') !== null;
}
