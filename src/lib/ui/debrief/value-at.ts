import { valueFromMark, type Kit } from '$lib/kits';

/**
 * What the leaflet would say of a clean test that stopped after so much titrant, in the kit's unit;
 * null off its scale.
 */
export function leafletValueAt(kit: Kit, addedMl: number): number | null {
	const { delivery } = kit;
	try {
		if (delivery.by === 'dropper')
			return valueFromMark(kit, { drops: addedMl / delivery.dropMl }).value;
		const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
		return valueFromMark(kit, { markMl: isDown ? delivery.capacityMl - addedMl : addedMl }).value;
	} catch {
		return null;
	}
}
