import { describe, expect, test } from 'vitest';
import { houseCalciumKit, houseDropperKit } from '../../../src/lib/kits';
import { leafletValueAt } from '../../../src/lib/ui/debrief/value-at';

describe('what the leaflet would say of a stop', () => {
	test('by its sum, where it says anything', () => {
		// 300 mg/L for each mL, less 6.8, as its leaflet has it.
		expect(leafletValueAt(houseCalciumKit, 1.4)).toBeCloseTo(300 * 1.4 - 6.8, 9);
		expect(leafletValueAt(houseDropperKit, 10 * houseDropperKit.delivery.dropMl)).toBeGreaterThan(
			0
		);
	});
	test('never less than nothing', () => {
		expect(leafletValueAt(houseCalciumKit, 0)).toBeNull();
		expect(leafletValueAt(houseCalciumKit, 0.02)).toBeNull();
		expect(leafletValueAt(houseCalciumKit, 0.03)).toBeCloseTo(2.2, 9);
	});
});
