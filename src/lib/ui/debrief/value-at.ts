import { valueFromMark, type Kit } from '$lib/kits';

/**
 * What the leaflet would say of a clean test that stopped after so much titrant, in the kit's unit;
 * null off its scale, and where a leaflet that takes something off would come to less than nothing.
 */
export function leafletValueAt(kit: Kit, addedMl: number): number | null {
	const { delivery } = kit;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	try {
		const { value } = valueFromMark(
			kit,
			delivery.by === 'dropper'
				? { drops: addedMl / delivery.dropMl }
				: { markMl: isDown ? delivery.capacityMl - addedMl : addedMl }
		);
		return value < 0 ? null : value;
	} catch {
		return null;
	}
}
