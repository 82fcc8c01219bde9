import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Seeded draws. The same address gives the same draws for ever, whatever else was drawn before. */
export type Chance = {
	/** Even, from `low` up to `high`. */
	between: (low: number, high: number) => number;
	/** Normal with this standard deviation, cut at three of them: no bench sees more. */
	normal: (sd: number) => number;
	/** A factor of which the logarithm is normal: median 1. */
	factor: (sdOfLog: number) => number;
	happens: (probability: number) => boolean;
	sign: () => 1 | -1;
	pick: <TItem>(items: readonly TItem[]) => TItem;
	weighted: <TItem>(items: readonly TItem[], weightOf: (item: TItem) => number) => TItem;
};

/** FNV-1a (Fowler, Noll and Vo 1991), 32 bits: turns an address into a seed. */
function hashOf(words: string): number {
	let hash = 0x811c9dc5;
	for (let at = 0; at < words.length; at++)
		hash = Math.imul(hash ^ words.charCodeAt(at), 0x01000193) >>> 0;
	// Last mixing of MurmurHash3 (Appleby, public domain): addresses that are alike must not draw alike.
	hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
	hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
	return (hash ^ (hash >>> 16)) >>> 0;
}

function lastOf<TItem>(items: readonly TItem[]): TItem {
	const last = items[items.length - 1];
	if (last === undefined) throw new RangeError('items must not be empty; found none');
	return last;
}

/** A stream of draws for one place: `chanceAt(seed, 7, 'repeatFull', 0)`. */
export function chanceAt(...address: readonly (string | number)[]): Chance {
	const generator = xoroshiro128plus(hashOf(address.join('/')) | 0);
	const uniform = () => uniformFloat64(generator);
	for (let warm = 0; warm < 20; warm++) uniform();
	const standard = (): number => {
		// Marsaglia and Bray 1964, polar form.
		for (;;) {
			const [x, y] = [2 * uniform() - 1, 2 * uniform() - 1];
			const square = x * x + y * y;
			if (square === 0 || square >= 1) continue;
			const drawn = x * Math.sqrt((-2 * Math.log(square)) / square);
			if (Math.abs(drawn) <= 3) return drawn;
		}
	};
	return {
		between: (low, high) => low + (high - low) * uniform(),
		normal: (sd) => sd * standard(),
		factor: (sdOfLog) => Math.exp(sdOfLog * standard()),
		happens: (probability) => uniform() < probability,
		sign: () => (uniform() < 0.5 ? -1 : 1),
		pick: (items) => items[Math.floor(uniform() * items.length)] ?? lastOf(items),
		weighted: (items, weightOf) => {
			let left = uniform() * items.reduce((sum, item) => sum + weightOf(item), 0);
			for (const item of items) {
				left -= weightOf(item);
				if (left < 0) return item;
			}
			return lastOf(items);
		}
	};
}
