/**
 * Chance by address. A number belongs to a place ('drop 17 of titration 2 under this seed'), not to
 * a turn in a sequence, so undoing one deed does not deal other cards to the rest.
 */

/** 32-bit mix of a text (FNV-1a) with a finishing avalanche (the finalizer of MurmurHash3). */
function hash(text: string): number {
	let h = 0x811c9dc5;
	for (let i = 0; i < text.length; i++) {
		h ^= text.charCodeAt(i);
		h = Math.imul(h, 0x01000193);
	}
	h ^= h >>> 16;
	h = Math.imul(h, 0x85ebca6b);
	h ^= h >>> 13;
	h = Math.imul(h, 0xc2b2ae35);
	h ^= h >>> 16;
	return h >>> 0;
}

export type Address = readonly (string | number)[];

/** Even between 0 and 1, both left out. */
export function uniformAt(seed: number, ...address: Address): number {
	return (hash(`${seed}/${address.join('/')}`) + 0.5) / 4294967296;
}

/** Standard normal (Box & Muller 1958). */
export function normalAt(seed: number, ...address: Address): number {
	const u = uniformAt(seed, ...address, 'u');
	const v = uniformAt(seed, ...address, 'v');
	return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v);
}
