import { describe, expect, it } from 'vitest';
import { normalAt, reduce, uniformAt, type BenchState } from '../../src/lib/bench';
import { benchWith, syringeKit } from './house';

const many = Array.from({ length: 20000 }, (_, i) => i);

describe('chance by address', () => {
	it('is the same whenever it is asked, and other at another address', () => {
		expect(normalAt(7, 'drop', 3)).toBe(normalAt(7, 'drop', 3));
		expect(normalAt(7, 'drop', 3)).not.toBe(normalAt(7, 'drop', 4));
		expect(normalAt(7, 'drop', 3)).not.toBe(normalAt(8, 'drop', 3));
		expect(normalAt(7, 1, 23)).not.toBe(normalAt(7, 12, 3));
	});

	it('is even between 0 and 1', () => {
		const tenths = new Array<number>(10).fill(0);
		for (const i of many) {
			const tenth = Math.floor(uniformAt(1, 'even', i) * 10);
			tenths[tenth] = (tenths[tenth] ?? 0) + 1;
		}
		// Chi-squared with 9 degrees of freedom: 27.9 is passed once in a thousand (Fisher & Yates table).
		const chiSquared = tenths.reduce((sum, n) => sum + (n - 2000) ** 2 / 2000, 0);
		expect(chiSquared).toBeLessThan(27.9);
	});

	it('is standard normal: mean, spread, and 5 % beyond 1.96', () => {
		const drawn = many.map((i) => normalAt(1, 'normal', i));
		const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
		const sd = Math.sqrt(drawn.reduce((sum, x) => sum + x * x, 0) / drawn.length - mean ** 2);
		const beyond = drawn.filter((x) => Math.abs(x) > 1.96).length / drawn.length;
		// Three standard errors each.
		expect(Math.abs(mean)).toBeLessThan(3 / Math.sqrt(drawn.length));
		expect(Math.abs(sd - 1)).toBeLessThan(3 / Math.sqrt(2 * drawn.length));
		expect(Math.abs(beyond - 0.05)).toBeLessThan(3 * Math.sqrt((0.05 * 0.95) / drawn.length));
	});

	it('does not follow its neighbours', () => {
		let product = 0;
		for (const i of many) product += normalAt(1, 'drop', i) * normalAt(1, 'drop', i + 1);
		expect(Math.abs(product / many.length)).toBeLessThan(3 / Math.sqrt(many.length));
	});
});

/** Whole drops given one by one, with a deed between the second and the third. */
function dropSizes(between: (state: BenchState) => BenchState): number[] {
	let state = benchWith(syringeKit);
	state = reduce(state, { type: 'tip.fit', firm: true }, 100);
	state = reduce(state, { type: 'titrant.draw', sealMl: 1, end: 'inTitrant' }, 200);
	state = reduce(state, { type: 'tip.wipe' }, 300);
	for (let i = 0; i < 5; i++) {
		if (i === 2) state = between(state);
		state = reduce(state, { type: 'flow.give', size: 'drop' }, state.at + 2000);
	}
	state = reduce(state, { type: 'vial.look' }, state.at + 2000);
	return state.drops.map((drop) => drop.volumeMl);
}

it('a deed in between deals no other cards to the drops that follow', () => {
	const plain = dropSizes((state) => state);
	const swirled = dropSizes((state) =>
		reduce(
			reduce(state, { type: 'swirl.start' }, state.at + 900),
			{ type: 'swirl.stop' },
			state.at + 1900
		)
	);
	expect(plain).toHaveLength(5);
	expect(new Set(plain.map((ml) => ml.toFixed(6))).size).toBe(5);
	for (const [i, ml] of swirled.entries()) expect(ml).toBeCloseTo(plain[i] ?? 0, 9);
});
