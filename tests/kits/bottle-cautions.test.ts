import { describe, expect, it } from 'vitest';
import {
	bottleCautions,
	houseCalciumKit,
	houseHardnessKit,
	houseKits,
	houseSyringeKit
} from '../../src/lib/kits';

describe('what to beware of in the bottles of some kits', () => {
	it('names the base of a calcium kit, and no acid where there is none', () => {
		const words = bottleCautions([houseCalciumKit]).join(' ');
		expect(words).toMatch(/sodium hydroxide/);
		expect(words).toMatch(/goggles/);
		expect(words).not.toMatch(/\bacid\b|ammonia/);
	});
	it('names the acid of an alkalinity kit and the ammonia of a magnesium kit', () => {
		expect(bottleCautions([houseSyringeKit]).join(' ')).toMatch(/\bacid\b/);
		expect(bottleCautions([houseSyringeKit]).join(' ')).not.toMatch(/hydroxide/);
		expect(bottleCautions([houseHardnessKit]).join(' ')).toMatch(/ammonia/);
	});
	it('says each once, however many kits have it', () => {
		const all = bottleCautions(houseKits);
		expect(all.length).toBe(4);
		expect(bottleCautions([...houseKits, ...houseKits])).toEqual(all);
		expect(bottleCautions([])).toEqual([]);
	});
});
