import type { Seen } from '$lib/bench';
import { scaleInWords } from '$lib/glassware';
import { numeralAt, type Kit } from '$lib/kits';
import { apparentShiftMl } from './drawing/syringe-shape';

/**
 * Where seal, line or level stand among the printed lines, as an eye at its present height sees
 * them, in words that leave the number to the reader.
 */
export function placeInWords(kit: Kit, seen: Seen, what: 'seal' | 'line'): string {
	const { delivery } = kit;
	if (delivery.by === 'burette' && seen.delivery.by === 'burette') {
		if (seen.delivery.levelMl === null) return 'The burette is empty.';
		const shiftMl = apparentShiftMl(seen.eyeDegrees) * 1.7;
		return `The level stands ${scaleInWords(seen.delivery.levelMl - shiftMl, { ...delivery, highestMl: delivery.capacityMl })}.`;
	}
	if (delivery.by !== 'syringe' || seen.delivery.by !== 'syringe')
		return 'There is no scale to read.';
	const { sealMl, lineMl } = seen.delivery;
	if (what === 'line' && lineMl === null) return 'No liquid stands in the barrel.';
	const at = (what === 'line' ? (lineMl ?? 0) : sealMl) + apparentShiftMl(seen.eyeDegrees);
	const place = scaleInWords(numeralAt(delivery, at), {
		...delivery,
		highestMl: delivery.capacityMl
	});
	return `The ${what === 'line' ? 'liquid line' : 'leading edge of the seal'} stands ${place}.`;
}
