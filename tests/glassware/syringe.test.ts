import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	draw,
	drySyringe,
	fitTip,
	leak,
	lineMl,
	purge,
	push,
	removeTip,
	roomMl,
	slipOfSeal,
	tipFilling,
	type Syringe
} from '../../src/lib/glassware';

const shape = { barrelEndMl: 1.2, tipVolumeMl: 0.17, nozzleMl: 0.04, sealRimMl: 0.05 };
const withTip = (tipVolumeMl = 0.17) => fitTip(drySyringe({ ...shape, tipVolumeMl }), true);
const filled = (tipVolumeMl = 0.17) => draw(withTip(tipVolumeMl), 1, 'inTitrant');

describe('filling', () => {
	it.each([0.15, 0.17, 0.2])(
		'to the seal at 1.00 with a dry tip of %s mL shows the line between 0.80 and 0.85',
		(tipVolumeMl) => {
			// Common practice, no source.
			const line = lineMl(filled(tipVolumeMl));
			expect(line).toBeGreaterThanOrEqual(0.8 - 1e-12);
			expect(line).toBeLessThanOrEqual(0.85 + 1e-12);
		}
	);

	it('fills the tip before the barrel and shows no line until it is full', () => {
		const begun = draw(withTip(), 0.1, 'inTitrant');
		expect(lineMl(begun)).toBeNull();
		expect(tipFilling(begun)).toBeCloseTo(0.1 / 0.17, 10);
		expect(tipFilling(filled())).toBe(1);
	});

	it('purged tip-up leaves line and seal at the same mark', () => {
		const over = draw(withTip(), 1.2, 'inTitrant');
		const pure = purge(over, 1.03).syringe;
		expect(pure.cushionMl).toBeCloseTo(0, 12);
		expect(lineMl(pure)).toBeCloseTo(1.03, 12);
	});

	it('stops at the end of the barrel', () => {
		expect(draw(withTip(), 5, 'inTitrant').sealMl).toBe(1.2);
	});
});

describe('emptying', () => {
	it.each([0.02, 0.1, 0.45])(
		'gives as much liquid as the seal travels, whatever the cushion (%s mL)',
		(bubbleMl) => {
			// A bubble taken in and then covered with liquid floats up into the cushion.
			const bubble = draw(withTip(), bubbleMl, 'inAir');
			const full = draw(bubble, 1, 'inTitrant');
			expect(full.cushionMl).toBeCloseTo(0.17 + bubbleMl, 12);
			const pushed = push(full, 1 - 0.4);
			expect(pushed.liquidMl).toBeCloseTo(0.4, 12);
			expect(pushed.airMl).toBe(0);
		}
	);

	it('gives all its liquid before the seal is home, and then only air', () => {
		const pushed = push(filled(), 0);
		expect(pushed.liquidMl).toBeCloseTo(1, 12);
		expect(pushed.syringe.cushionMl).toBeCloseTo(0.17, 12);
	});

	it('gives no liquid for the air at its lower end', () => {
		const air = draw(draw(withTip(), 0.95, 'inTitrant'), 1, 'inAir');
		const pushed = push(air, 0.9);
		expect(pushed.airMl).toBeCloseTo(0.05, 12);
		expect(pushed.liquidMl).toBeCloseTo(0.05, 12);
	});

	it('with a tip fitted after filling gives nothing until the tip is full', () => {
		const late = fitTip(draw(drySyringe(shape), 1, 'inTitrant'), true);
		const tipMl = shape.tipVolumeMl - shape.nozzleMl;
		expect(push(late, 1 - tipMl).liquidMl).toBeCloseTo(0, 12);
		expect(push(late, 1 - tipMl - 0.02).liquidMl).toBeCloseTo(0.02, 12);
		// Drawing a little more instead brings that air up, where it costs nothing.
		const cured = draw(late, 1.02, 'inTitrant');
		expect(push(cured, 1).liquidMl).toBeCloseTo(0.02, 12);
	});

	it('drips from a loose tip without travel, and from no other', () => {
		const loose = draw(fitTip(drySyringe(shape), false), 1, 'inTitrant');
		const after = leak(loose, 0.1);
		expect(after.liquidMl).toBeCloseTo(0.1, 12);
		expect(after.syringe.sealMl).toBe(1);
		expect(after.syringe.cushionMl).toBeCloseTo(loose.cushionMl + 0.1, 12);
		expect(leak(filled(), 0.1).liquidMl).toBe(0);
	});

	it('loses what was in a tip that is taken off', () => {
		const off = removeTip(filled());
		expect(off.lostMl).toBeCloseTo(0.13, 12);
		expect(roomMl(off.syringe)).toBeCloseTo(1 + shape.nozzleMl, 12);
	});
});

it('a sticking seal gives nothing and then a whole jump, and loses no travel', () => {
	expect(slipOfSeal(0.07, 0)).toEqual({ travelMl: 0.07, stuckMl: 0 });
	expect(slipOfSeal(0.07, 0.1)).toEqual({ travelMl: 0, stuckMl: 0.07 });
	const jump = slipOfSeal(0.25, 0.1);
	expect(jump.travelMl).toBeCloseTo(0.2, 12);
	expect(jump.travelMl + jump.stuckMl).toBeCloseTo(0.25, 12);
});

/** One deed on a syringe, and what it did to the liquid inside. */
type Deed = { does: 'draw' | 'drawAir' | 'push' | 'purge' | 'fit' | 'remove' | 'leak'; to: number };
function deedOn(syringe: Syringe, { does, to }: Deed): { syringe: Syringe; gainedMl: number } {
	if (does === 'draw' || does === 'drawAir') {
		const drawn = draw(syringe, to, does === 'draw' ? 'inTitrant' : 'inAir');
		const takenMl = drawn.sealMl - syringe.sealMl;
		return { syringe: drawn, gainedMl: does === 'draw' ? takenMl : 0 };
	}
	if (does === 'push' || does === 'purge') {
		const pushed = (does === 'push' ? push : purge)(syringe, to);
		return { syringe: pushed.syringe, gainedMl: -pushed.liquidMl };
	}
	if (does === 'leak') {
		const leaked = leak(syringe, to / 10);
		return { syringe: leaked.syringe, gainedMl: -leaked.liquidMl };
	}
	if (does === 'fit') return { syringe: fitTip(syringe, to > 0.5), gainedMl: 0 };
	const off = removeTip(syringe);
	return { syringe: off.syringe, gainedMl: -off.lostMl };
}

it('whatever is done, liquid is neither made nor lost, and air and liquid fill the room', () => {
	const deed = fc.record({
		does: fc.constantFrom('draw', 'drawAir', 'push', 'purge', 'fit', 'remove', 'leak'),
		to: fc.double({ min: -0.2, max: 1.5, noNaN: true })
	}) as fc.Arbitrary<Deed>;
	fc.assert(
		fc.property(fc.array(deed, { maxLength: 30 }), (deeds) => {
			let syringe = drySyringe(shape);
			let expectedMl = 0;
			for (const each of deeds) {
				const done = deedOn(syringe, {
					...each,
					to: each.does === 'leak' ? Math.abs(each.to) : each.to
				});
				syringe = done.syringe;
				expectedMl += done.gainedMl;
				expect(syringe.liquidMl).toBeCloseTo(expectedMl, 10);
				expect(syringe.liquidMl + syringe.tipAirMl + syringe.cushionMl).toBeCloseTo(
					roomMl(syringe),
					10
				);
				for (const part of [syringe.liquidMl, syringe.tipAirMl, syringe.cushionMl])
					expect(part).toBeGreaterThanOrEqual(-1e-10);
				expect(syringe.sealMl).toBeGreaterThanOrEqual(0);
				expect(syringe.sealMl).toBeLessThanOrEqual(shape.barrelEndMl);
			}
		}),
		{ numRuns: 300 }
	);
});
