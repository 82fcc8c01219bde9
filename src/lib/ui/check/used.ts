import {
	convertValue,
	usedMlForValue,
	usedMlOf,
	type Analyte,
	type Kit,
	type Unit
} from '$lib/kits';
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

/**
 * Titrant that another test would take, mL, by what it will probably read. Where another value is taken off
 * what the kit reads, that is put back first. Null where nobody knows what is taken off.
 *
 * @param reads what it will probably read, in a unit of `analyte`
 * @param takenOff of the reading in question; a concentration of what the kit reads together with `analyte`
 */
export function usedMlOfNext(
	kit: Kit,
	analyte: Analyte,
	reads: { value: number; unit: Unit },
	takenOff: Reading['takenOff']
): number | null {
	if (kit.analyte === analyte)
		return usedMlForValue(kit, convertValue(reads.value, reads.unit, kit.unit, analyte));
	const less = kit.byDifference?.less;
	if (!less || !takenOff) return null;
	// Metals add up as amounts.
	const together =
		convertValue(reads.value, reads.unit, 'mmol/L', analyte) +
		convertValue(takenOff.value, takenOff.unit, 'mmol/L', less);
	return usedMlForValue(kit, convertValue(together, 'mmol/L', kit.unit, kit.analyte));
}
