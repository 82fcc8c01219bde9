import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	houseKitOf,
	impliedTitrantStrength,
	leafletEndOf,
	scaleEndsOf,
	usedMlForValue,
	usedMlOf,
	valueFromMark,
	type Kit,
	type SyringeDelivery
} from '../../src/lib/kits';
import { plainKit } from './house';

const syringeKit = houseKitOf('house-syringe');
const dropperKit = houseKitOf('house-dropper');
const buretteKit = houseKitOf('house-burette');

/** A made-up table that bends, in whatever column and order. */
const tableKit = (rows: { at: number; value: number }[], scale: 'down' | 'up' = 'down'): Kit => ({
	...plainKit(5, 1, scale),
	conversion: { kind: 'rows', column: 'mark', rows }
});
const bent = [
	{ at: 1, value: 0 },
	{ at: 0.5, value: 6 },
	{ at: 0, value: 16 }
];

describe('titrant used', () => {
	it('on a scale that runs down is start less end; on one that runs up, end less start', () => {
		expect(usedMlOf(plainKit(5, 1, 'down'), { markMl: 0.38 })).toBeCloseTo(0.62, 12);
		expect(usedMlOf(plainKit(5, 1, 'up'), { markMl: 0.62 })).toBeCloseTo(0.62, 12);
		const fromAbove = { startMarkMl: 1.17, markMl: 0.55 };
		expect(usedMlOf(plainKit(5, 1, 'down'), fromAbove)).toBeCloseTo(0.62, 12);
		const fromBelow = { startMarkMl: -0.17, markMl: 0.45 };
		expect(usedMlOf(plainKit(5, 1, 'up'), fromBelow)).toBeCloseTo(0.62, 12);
	});
	it('counts what was drawn in again on the way', () => {
		expect(usedMlOf(plainKit(5, 1), { markMl: 0.7, refilledMl: 0.8 })).toBeCloseTo(1.1, 12);
	});
	it('of a dropper is drops times its drop', () => {
		expect(usedMlOf(dropperKit, { drops: 14 })).toBeCloseTo(14 * 0.043, 12);
	});
	it('of a burette is level less start', () => {
		expect(usedMlOf(buretteKit, { startMarkMl: 0.35, markMl: 4.1 })).toBeCloseTo(3.75, 12);
	});
});

describe('the value of a mark', () => {
	it('at a row of the table is that row', () => {
		for (const { at, value } of bent)
			expect(valueFromMark(tableKit(bent), { markMl: at }).value).toBeCloseTo(value, 12);
	});
	it('between two rows goes the same share of the way, by hand', () => {
		// A fifth of the way from 0.5 to 0: 6 + 10/5.
		expect(valueFromMark(tableKit(bent), { markMl: 0.4 }).value).toBeCloseTo(8, 12);
		// Three tenths of the way from 1 to 0.5.
		expect(valueFromMark(tableKit(bent), { markMl: 0.85 }).value).toBeCloseTo(1.8, 12);
	});
	it('tells what one mL is worth on either side of a bend', () => {
		expect(valueFromMark(tableKit(bent), { markMl: 0.8 }).valuePerMl).toBeCloseTo(12, 4);
		expect(valueFromMark(tableKit(bent), { markMl: 0.1 }).valuePerMl).toBeCloseTo(20, 4);
		expect(valueFromMark(tableKit(bent), { markMl: 0 }).valuePerMl).toBeCloseTo(20, 4);
	});
	it('does not depend on the order in which the rows stand', () => {
		const mark = fc.integer({ min: 0, max: 100 }).map((n) => n / 100);
		fc.assert(
			fc.property(mark, fc.shuffledSubarray(bent, { minLength: 3 }), (markMl, rows) => {
				expect(valueFromMark(tableKit(rows), { markMl }).value).toBe(
					valueFromMark(tableKit(bent), { markMl }).value
				);
			})
		);
	});
	it('never falls as more titrant is used', () => {
		const mark = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
		fc.assert(
			fc.property(mark, mark, (a, b) => {
				const value = (markMl: number) => valueFromMark(syringeKit, { markMl }).value;
				expect(value(Math.min(a, b))).toBeGreaterThanOrEqual(value(Math.max(a, b)));
			})
		);
	});
	it('is the same for the same travel on a scale printed the other way round', () => {
		const mirrored = tableKit(
			bent.map(({ at, value }) => ({ at: 1 - at, value })),
			'up'
		);
		for (const usedMl of [0, 0.13, 0.5, 0.77, 1])
			expect(valueFromMark(mirrored, { markMl: usedMl }).value).toBeCloseTo(
				valueFromMark(tableKit(bent), { markMl: 1 - usedMl }).value,
				12
			);
	});
	it('of another sample volume is scaled by nominal over taken, and so is one mL', () => {
		const normal = valueFromMark(syringeKit, { markMl: 0.42 });
		const fine = valueFromMark(syringeKit, { markMl: 0.42, sampleVolumeMl: 10 });
		expect(fine.value).toBeCloseTo(normal.value * 0.6, 12);
		expect(fine.valuePerMl).toBeCloseTo(normal.valuePerMl * 0.6, 12);
	});
	it('by drops is so much a drop, with what the leaflet takes off once', () => {
		// 14 × 0.6 − 0.45 by hand.
		expect(valueFromMark(dropperKit, { drops: 14 }).value).toBeCloseTo(7.95, 12);
	});
});

describe('a table read beyond its rows', () => {
	const short = tableKit([
		{ at: 0.9, value: 1.4 },
		{ at: 0.6, value: 5.9 },
		{ at: 0.3, value: 10.4 }
	]);
	it('goes on as straight as it was, and says so', () => {
		// 15 per mL, by hand: 10.4 + 15 · 0.1, and 1.4 − 15 · 0.05.
		expect(valueFromMark(short, { markMl: 0.2 }).value).toBeCloseTo(11.9, 9);
		expect(valueFromMark(short, { markMl: 0.95 }).value).toBeCloseTo(0.65, 9);
		expect(valueFromMark(short, { markMl: 0.2 }).isBeyondTable).toBe(true);
		expect(valueFromMark(short, { markMl: 0.3 }).isBeyondTable).toBe(false);
	});
	it('values a test that was refilled: a filling and a half is a value and a half', () => {
		// Used 1 + 0.5 mL: 16 · 1.5 − 0.3, by hand.
		const refilled = valueFromMark(syringeKit, { markMl: 0.5, refilledMl: 1 });
		expect(refilled.usedMl).toBeCloseTo(1.5, 12);
		expect(refilled.value).toBeCloseTo(23.7, 9);
		// 2.3 · 11 − 0.19.
		expect(valueFromMark(buretteKit, { markMl: 6, refilledMl: 5 }).value).toBeCloseTo(25.11, 9);
	});
	it('takes a mark a graduation before the start for the eye, and no more than that', () => {
		expect(valueFromMark(syringeKit, { markMl: 1.02 }).value).toBeCloseTo(-0.62, 9);
		expect(() => valueFromMark(syringeKit, { markMl: 1.03 })).toThrow('before the start');
	});
	it('joins the table without a jump at its last row', () => {
		const step = 1e-7;
		for (const at of [0.9, 0.3]) {
			const inside = valueFromMark(short, { markMl: at }).value;
			for (const markMl of [at - step, at + step])
				expect(Math.abs(valueFromMark(short, { markMl }).value - inside)).toBeLessThan(1e-5);
		}
	});
});

describe('what one mL is worth', () => {
	it('does not jump with the rounding of a finely printed table', () => {
		// A row at every 0.01 mL and one decimal: between neighbours the print shows 0.1 or 0.2.
		const fine = tableKit(
			Array.from({ length: 101 }, (_, i) => ({
				at: i / 100,
				value: Number((15 * (1 - i / 100)).toFixed(1))
			}))
		);
		for (const markMl of [0, 0.005, 0.333, 0.5, 0.995])
			expect(valueFromMark(fine, { markMl }).valuePerMl).toBeCloseTo(15, 1);
	});
	it('of a finely printed table that bends is taken over rows far enough apart', () => {
		const fine = tableKit(
			Array.from({ length: 101 }, (_, i) => ({
				at: i / 100,
				value: Number((10 * (1 - i / 100) + 5 * (1 - i / 100) ** 2).toFixed(1))
			}))
		);
		// Slope of 10 u + 5 u² is 10 + 10 u; five last digits are a fifth of the rise at most.
		for (const usedMl of [0.2, 0.5, 0.8]) {
			const { valuePerMl } = valueFromMark(fine, { markMl: 1 - usedMl });
			expect(Math.abs(valuePerMl / (10 + 10 * usedMl) - 1)).toBeLessThan(0.2);
		}
	});
});

describe('a mark that cannot be is named', () => {
	it.each([
		['none', () => valueFromMark(syringeKit, {}), 'markMl must be a numeral of the scale'],
		[
			'past the barrel',
			() => valueFromMark(syringeKit, { markMl: 1.3 }),
			'markMl must lie on the scale, 0 to 1.25; found 1.3'
		],
		[
			'below the nozzle',
			() => valueFromMark(syringeKit, { markMl: -0.05 }),
			'markMl must lie on the scale, 0 to 1.25; found -0.05'
		],
		[
			'past the end of a scale that runs up',
			() => valueFromMark(plainKit(5, 1, 'up'), { markMl: 1.1 }),
			'markMl must lie on the scale, -0.25 to 1; found 1.1'
		],
		[
			'before the start',
			() => valueFromMark(syringeKit, { markMl: 1.1 }),
			'markMl must not lie before the start, 1; found 1.1'
		],
		[
			'used up and more, off a table that bends',
			() => valueFromMark(tableKit(bent), { markMl: 0.6, refilledMl: 1 }),
			"the mark must lie in the leaflet's table, 0 to 1, which bends and tells nothing beyond; found -0.4"
		],
		['no drops', () => valueFromMark(dropperKit, {}), 'drops must be a count of 0 or more'],
		[
			'fewer than none',
			() => valueFromMark(dropperKit, { drops: -1 }),
			'drops must be a count of 0 or more; found -1'
		],
		[
			'before the start of a burette',
			() => valueFromMark(buretteKit, { startMarkMl: 3, markMl: 2.5 }),
			'markMl must not lie before the start, 3; found 2.5'
		],
		[
			'a start that is no number',
			() => valueFromMark(buretteKit, { startMarkMl: Number.NaN, markMl: 2.5 }),
			'startMarkMl must be a numeral of the scale; found NaN'
		],
		[
			'a refill that gave back',
			() => valueFromMark(buretteKit, { markMl: 2.5, refilledMl: -1 }),
			'refilledMl must be 0 or more; found -1'
		],
		[
			'no sample',
			() => valueFromMark(syringeKit, { markMl: 0.5, sampleVolumeMl: 0 }),
			'sampleVolumeMl must be above 0; found 0'
		]
	])('%s', (_name, value, message) => {
		expect(value).toThrow(RangeError);
		expect(value).toThrow(message);
	});
});

it('the strength that a conversion implies is the same whatever the syringe is printed like', () => {
	expect(impliedTitrantStrength(plainKit(5, 14, 'up'))).toBeCloseTo(
		impliedTitrantStrength(plainKit(5, 14, 'down')),
		12
	);
	expect(impliedTitrantStrength(plainKit(10, 14))).toBeCloseTo(
		2 * impliedTitrantStrength(plainKit(5, 14)),
		12
	);
});

describe('the highest value that one filling can show', () => {
	it('is what the whole capacity stands for, scaled to the sample', () => {
		// 16 dKH per mL less 0.30, by hand; a sample of 10 mL instead of 6 takes six tenths of it.
		expect(leafletEndOf(syringeKit)).toBeCloseTo(15.7, 6);
		expect(leafletEndOf(syringeKit, 'fine')).toBeCloseTo(15.7 * 0.6, 6);
	});
	it('has no end for a dropper', () => {
		expect(leafletEndOf(dropperKit)).toBe(Number.POSITIVE_INFINITY);
	});
});

describe('a mark past the full one', () => {
	const shortBarrel: Kit = {
		...syringeKit,
		delivery: { ...syringeKit.delivery, barrelEndMl: 1.1 } as Kit['delivery']
	};
	it('is believed up to a quarter over, where the barrel was taken to end sooner', () => {
		expect(scaleEndsOf(shortBarrel.delivery as SyringeDelivery)).toEqual([0, 1.25]);
		const { usedMl } = valueFromMark(shortBarrel, { startMarkMl: 1.17, markMl: 0.69 });
		expect(usedMl).toBeCloseTo(0.48, 10);
		expect(() => valueFromMark(shortBarrel, { markMl: 1.26 })).toThrow('0 to 1.25; found 1.26');
	});
	it('is believed as far as a longer barrel goes', () => {
		const long = { ...syringeKit.delivery, barrelEndMl: 1.4 } as SyringeDelivery;
		expect(scaleEndsOf(long)).toEqual([0, 1.4]);
		expect(scaleEndsOf({ ...long, scale: 'up' })).toEqual([-0.4, 1]);
	});
});

describe('a syringe that is filled again on the way', () => {
	// 40 mmol/L per mL less 1.99: one filling of 1 mL ends at 38.01, two at 78.01.
	const hardnessKit = houseKitOf('house-hardness');
	it('reaches on by a whole filling each time', () => {
		expect(leafletEndOf(hardnessKit)).toBeCloseTo(38.01, 9);
		expect(leafletEndOf(hardnessKit, 'normal', 1)).toBeCloseTo(78.01, 9);
		expect(leafletEndOf(syringeKit, 'normal', 1)).toBeCloseTo(leafletEndOf(syringeKit) + 16, 6);
	});
	it('reaches no further where the table bends', () => {
		const bent = tableKit([
			{ at: 0, value: 20 },
			{ at: 0.5, value: 7 },
			{ at: 1, value: 0 }
		]);
		expect(leafletEndOf(bent, 'normal', 1)).toBe(20);
	});
	it('a count of fillings is a whole number', () => {
		for (const refills of [-1, 0.5, Number.NaN])
			expect(() => leafletEndOf(hardnessKit, 'normal', refills)).toThrow(/refills.*found/);
	});
	it('what a value took has all fillings in it: (63.8 + 1.99) / 40 mL', () => {
		expect(usedMlForValue(hardnessKit, 63.8)).toBeCloseTo(1.64475, 6);
	});
	it.each(['house-syringe', 'house-dropper', 'house-burette', 'house-calcium', 'house-hardness'])(
		'%s: a value is made of what it took',
		(id) => {
			const kit = houseKitOf(id);
			const { capacityMl } = { capacityMl: 1, ...kit.delivery };
			const usedMl = 0.4 * capacityMl;
			const isDown = kit.delivery.by === 'syringe' && kit.delivery.scale === 'down';
			const end = {
				markMl: isDown ? capacityMl - usedMl : usedMl,
				drops: usedMl / kit.delivery.dropMl
			};
			expect(usedMlForValue(kit, valueFromMark(kit, end).value)).toBeCloseTo(usedMl, 6);
		}
	);
});
