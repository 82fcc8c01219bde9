import { expect, test } from 'vitest';
import { houseKitOf } from '../../../src/lib/kits';
import { usedMlOfNext, usedMlOfReading } from '../../../src/lib/ui/check/used';

test('after a refill a test took more than its last mark shows', () => {
	// One filling of 1 mL and 0.64 of the next: (63.8 + 1.99) / 40 mL by the leaflet.
	const used = usedMlOfReading(houseKitOf('house-hardness'), {
		marks: { sealMl: 0.36 },
		value: 63.8
	});
	expect(used).toBeCloseTo(1.64, 2);
});
test('without one the mark tells, whatever value was made of it', () => {
	const kit = houseKitOf('house-syringe');
	expect(usedMlOfReading(kit, { marks: { sealMl: 0.36 }, value: 3 })).toBeCloseTo(0.64, 9);
	expect(usedMlOfReading(kit, { marks: { sealMl: 9 }, value: 3 })).toBeNull();
});

test('the next test takes what its water holds by the leaflet, fillings and what is taken off among it', () => {
	const kit = houseKitOf('house-hardness');
	const both = usedMlOfNext(kit, 'hardness', { value: 64, unit: 'mmol/L' }, undefined);
	// (64 + 1.99) / 40 mL by the leaflet.
	expect(both).toBeCloseTo(1.65, 2);
	// 1293.1 mg/L of magnesium are 53.2 mmol/L (24.305 g/mol), and 433 mg/L of calcium 10.8 (40.078 g/mol).
	const takenOff = { value: 433, expandedUncertainty: 15, unit: 'mg/L' as const };
	const rest = { value: 1293.1, unit: 'mg/L' as const };
	expect(usedMlOfNext(kit, 'magnesium', rest, takenOff)).toBeCloseTo(1.65, 2);
	expect(usedMlOfNext(kit, 'magnesium', rest, undefined)).toBeNull();
	// A kit of something else says nothing of it.
	expect(usedMlOfNext(houseKitOf('house-syringe'), 'magnesium', rest, takenOff)).toBeNull();
});
