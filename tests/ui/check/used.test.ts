import { expect, test } from 'vitest';
import { houseKitOf } from '../../../src/lib/kits';
import { usedMlOfReading } from '../../../src/lib/ui/check/used';

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
