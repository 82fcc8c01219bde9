import { usedMlForValue, usedMlOf, type Kit } from '$lib/kits';
import type { Reading } from '$lib/observation';

/**
 * Titrant that a reading in the kit's unit took, mL: by its marks; where the leaflet has it filled again on
 * the way, by its value, since the last mark leaves out the fillings before. Null when the marks are not on
 * this kit's scale.
 */
export function usedMlOfReading(
	kit: Kit,
	{ marks, value }: Pick<Reading, 'marks' | 'value'>
): number | null {
	if (kit.delivery.by !== 'dropper' && kit.delivery.refilled) return usedMlForValue(kit, value);
	if (!marks) return null;
	try {
		return usedMlOf(kit, {
			markMl: marks.sealMl ?? marks.lineMl ?? marks.levelMl,
			drops: marks.drops
		});
	} catch {
		return null;
	}
}
