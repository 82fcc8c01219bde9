import { usedMlOf, type Kit } from '$lib/kits';
import type { Marks } from '$lib/observation';

/** Titrant that a reading's marks stand for, mL; null when they are not on this kit's scale. */
export function usedMlOfReading(kit: Kit, marks: Marks): number | null {
	try {
		return usedMlOf(kit, {
			markMl: marks.sealMl ?? marks.lineMl ?? marks.levelMl,
			drops: marks.drops
		});
	} catch {
		return null;
	}
}
