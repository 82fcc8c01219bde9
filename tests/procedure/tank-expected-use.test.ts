import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
	houseBuretteKit,
	houseDropperKit,
	houseSyringeKit,
	valueFromMark,
	type Kit
} from '$lib/kits';
import { usedMlFor, useOfFilling, valuePerMlFor } from '$lib/procedure';
import { anyKit, upKit } from './tank-kits';

describe('titrant that a value would take', () => {
	it.each([
		// Solved by hand from the leaflets: (8 + 0.3) / 16; the same in 10 mL; (8 + 0.45) / 0.6 drops of
		// 0.043 mL; (8 + 0.19) / 2.3. The tables are printed to 0.01.
		['syringe', houseSyringeKit, 6, 0.5188],
		['syringe, larger sample', houseSyringeKit, 10, 0.8521],
		['syringe with 0 at full', upKit, 6, 0.5188],
		['dropper', houseDropperKit, 7, 0.6056],
		['burette', houseBuretteKit, 22, 3.5609]
	])('%s', (_name, kit, sampleVolumeMl, usedMl) => {
		expect(usedMlFor(kit, 8, sampleVolumeMl)).toBeCloseTo(usedMl, 3);
	});

	it('is the leaflet turned round, for any kit and value within its reach', () => {
		fc.assert(
			fc.property(anyKit, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (kit, share) => {
				const { delivery } = kit;
				const wholeMl = delivery.by === 'dropper' ? 2 : delivery.capacityMl;
				const usedMl = share * wholeMl;
				const volume = kit.sample.volumes.at(-1)!.volumeMl;
				const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
				const { value } = valueFromMark(kit, {
					markMl: isDown ? wholeMl - usedMl : usedMl,
					drops: usedMl / delivery.dropMl,
					sampleVolumeMl: volume
				});
				expect(usedMlFor(kit, value, volume)).toBeCloseTo(usedMl, 6);
			})
		);
	});

	it('goes on straight beyond a table that bends, and never below 0', () => {
		const bent: Kit = {
			...houseSyringeKit,
			conversion: {
				kind: 'rows',
				column: 'usedMl',
				rows: [
					{ at: 0.1, value: 1 },
					{ at: 0.5, value: 5 },
					{ at: 0.9, value: 15 }
				]
			}
		};
		// Last slope 25 a mL: 5 more are 0.2 mL more. First slope 10: down to 0 at 0.
		expect(usedMlFor(bent, 20, 6)).toBeCloseTo(1.1, 6);
		expect(usedMlFor(bent, 3, 6)).toBeCloseTo(0.3, 6);
		expect(usedMlFor(bent, -4, 6)).toBe(0);
	});

	it('names what cannot be', () => {
		expect(() => usedMlFor(houseSyringeKit, Number.NaN, 6)).toThrow(
			/value must be a number; found NaN/
		);
		expect(() => usedMlFor(houseSyringeKit, 8, 0)).toThrow(
			/sampleVolumeMl must be above 0; found 0/
		);
	});
});

test('what 1 mL is worth goes with the sample', () => {
	expect(valuePerMlFor(houseSyringeKit, 6)).toBeCloseTo(16, 1);
	expect(valuePerMlFor(houseSyringeKit, 10)).toBeCloseTo(9.6, 1);
	expect(valuePerMlFor(houseSyringeKit, Number.NaN)).toBeNull();
});

describe('titrant enough for the last value', () => {
	it('leaves room for a tenth more and two drops', () => {
		// 8 dKH: 0.519 · 1.1 + 0.042 = 0.613 mL are asked for.
		expect(useOfFilling(houseSyringeKit, 8, 6, 0.62)).toMatchObject({ isEnough: true });
		expect(useOfFilling(houseSyringeKit, 8, 6, 0.6)).toMatchObject({
			isEnough: false,
			isFullEnough: true,
			availableMl: 0.6
		});
	});
	it('counts from where it stands, on either scale; from full where nobody said', () => {
		expect(useOfFilling(upKit, 8, 6, 0.4)?.availableMl).toBeCloseTo(0.6, 10);
		expect(useOfFilling(houseBuretteKit, 8, 22, 7)?.availableMl).toBeCloseTo(3, 10);
		expect(useOfFilling(houseSyringeKit, 8, 6)?.availableMl).toBe(1);
		expect(useOfFilling(houseSyringeKit, 15, 6)).toMatchObject({ isFullEnough: false });
	});
	it('is no question for a bottle', () => {
		expect(useOfFilling(houseDropperKit, 8, 7)).toBeNull();
	});
});
