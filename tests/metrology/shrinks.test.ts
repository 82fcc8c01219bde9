import { describe, expect, it } from 'vitest';
import { houseKitOf, type Kit } from '../../src/lib/kits';
import { combineRepeats, readingBudget, shrinksOf } from '../../src/lib/metrology';

const syringeKit = houseKitOf('house-syringe');
const dropperKit = houseKitOf('house-dropper');
const buretteKit = houseKitOf('house-burette');
const at = { value: 9, valuePerMl: 16 };
const each = [
	{ kit: syringeKit, reading: at },
	{ kit: dropperKit, reading: { value: 8, valuePerMl: 0.6 / 0.043 } },
	{ kit: buretteKit, reading: { value: 8, valuePerMl: 2.3 } }
];
const byOf = (kit: Kit, reading = at) => shrinksOf(kit, reading).map(({ by }) => by);
const find = (kit: Kit, by: string, reading = at) =>
	shrinksOf(kit, reading).find((shrink) => shrink.by === by);

describe.each(each)('what would shrink the ± of $kit.name', ({ kit, reading }) => {
	const now = readingBudget(kit, reading).expandedUncertainty;
	it('is sorted, smaller than now by a twentieth at least, and never nothing', () => {
		const found = shrinksOf(kit, reading);
		const us = found.map(({ expandedUncertainty }) => expandedUncertainty);
		expect(us).toEqual([...us].sort((a, b) => a - b));
		for (const { expandedUncertainty, gain } of found) {
			expect(gain).toBeCloseTo(1 - expandedUncertainty / now, 12);
			expect(gain).toBeGreaterThanOrEqual(0.05);
			expect(gain).toBeLessThan(1);
		}
		expect(found.length).toBeGreaterThan(0);
	});
});

describe('each is worked out by the budget itself', () => {
	it('a larger sample: the fine one of the kit, with its own value per mL', () => {
		const { expandedUncertainty } = readingBudget(syringeKit, {
			value: 9,
			valuePerMl: 9.6,
			sampleVolumeMl: 10,
			usedMl: 9 / 9.6
		});
		expect(find(syringeKit, 'largerSample')).toMatchObject({
			expandedUncertainty,
			volumeId: 'fine',
			volumeMl: 10
		});
	});
	it('a larger sample that outruns the syringe pays for its refill', () => {
		// At 9.6 dKH per mL a value of 10 needs 1.04 mL.
		const high = { value: 10, valuePerMl: 16 };
		const larger = { value: 10, valuePerMl: 9.6, sampleVolumeMl: 10, usedMl: 10 / 9.6 };
		const once = readingBudget(syringeKit, larger).expandedUncertainty;
		const twice = readingBudget(syringeKit, { ...larger, refills: 1 }).expandedUncertainty;
		const now = readingBudget(syringeKit, high).expandedUncertainty;
		// A second filling brings two more marks, and a small volume from a large barrel.
		expect(twice).toBeGreaterThan(once);
		expect(twice).toBeGreaterThan(0.95 * now);
		expect(byOf(syringeKit, high)).not.toContain('largerSample');
	});
	it('the largest sample has no larger one', () => {
		const fine = { value: 8, valuePerMl: 9.6, sampleVolumeMl: 10 };
		expect(byOf(syringeKit, fine)).not.toContain('largerSample');
	});
	it('a repeat is what combineRepeats foretells, and two do more', () => {
		const { next } = combineRepeats(syringeKit, [at]);
		const repeat = find(syringeKit, 'repeat')?.expandedUncertainty;
		expect(repeat).toBe(next.expandedUncertainty);
		expect(find(syringeKit, 'twoRepeats')?.expandedUncertainty).toBeLessThan(repeat ?? 0);
	});
	it('after two that agree a third is not among them', () => {
		const shrinks = shrinksOf(syringeKit, [at, { ...at, value: 9.1 }]);
		expect(shrinks.map(({ by }) => by)).not.toContain('repeat');
		expect(shrinks.map(({ by }) => by)).toContain('weighedDelivery');
	});
	it('weighing helps until it was done', () => {
		expect(byOf(syringeKit)).toContain('weighedDelivery');
		const assumed = { sampleHalfWidth: 0.003, deliveryHalfWidth: 0.005 };
		const done = byOf({ ...syringeKit, assumed });
		expect(done).not.toContain('weighedDelivery');
		expect(done).not.toContain('weighedSample');
	});
	it('drops are weighed, not read, and never halved, where they are counted', () => {
		const found = byOf(dropperKit, { value: 8, valuePerMl: 0.6 / 0.043 });
		expect(found[0]).toBe('weighedDrops');
		for (const by of ['halfDrops', 'finerReading', 'weighedDelivery'])
			expect(found).not.toContain(by);
	});
	it('half-drops gain where large drops rule', () => {
		const assumed = { sampleHalfWidth: 0, deliveryHalfWidth: 0, titrantSd: 0, colourDrops: 0.05 };
		const coarse: Kit = { ...syringeKit, assumed };
		expect(byOf(coarse)).toContain('halfDrops');
	});
	it('finer reading gains where coarse divisions rule, and once only', () => {
		const assumed = { sampleHalfWidth: 0, deliveryHalfWidth: 0, titrantSd: 0, colourDrops: 0 };
		const delivery = { ...syringeKit.delivery, dropMl: 0.001 } as Kit['delivery'];
		const kit: Kit = { ...syringeKit, assumed, delivery };
		expect(byOf(kit)).toContain('finerReading');
		expect(byOf(kit, { ...at, readToDivisions: 0.2 } as typeof at)).not.toContain('finerReading');
	});
});
