import { lookWords, type Seen } from '$lib/bench';
import type { Kit } from '$lib/kits';
import { tipInWords } from './place-in-words';

function dropsSince(now: Seen, before: Seen): string {
	const fallen = now.dropsFallen - before.dropsFallen;
	if (fallen === 0) return 'no drop has fallen since the last look';
	return fallen === 1 ? 'one drop has fallen' : 'drops have fallen';
}

/**
 * What a helper would say at a look: the colour, what hangs at the tip, whether drops fell. Only at
 * a look and only what can be seen, so that it can be heard or read in braille without the picture.
 *
 * @param before what was seen at the last look, or null at the first
 */
export function toldAtLook(kit: Kit, now: Seen, before: Seen | null, seed: number): string {
	const parts = [lookWords(now, before, seed)];
	if (before && before.dropsFallen <= now.dropsFallen) parts.push(dropsSince(now, before));
	const tip = tipInWords(kit, now);
	if (tip !== '') parts.push(tip);
	const words = parts.join('; ');
	return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
