import type { Seen, SeenSyringe } from '$lib/bench';
import { scaleInWords } from '$lib/glassware';
import { numeralAt, type Kit, type SyringeDelivery } from '$lib/kits';
import { plainScale } from './drawing/printed-scale';
import { apparentShiftMl } from './drawing/syringe-shape';

/** Less than this at the tip is a gleam, not a drop: a share of the kit's drop. */
const GLEAM = 0.12;

/**
 * Where seal, line or level stand among the printed lines, as an eye at its present height sees
 * them, in words that leave the number to the reader.
 */
export function placeInWords(kit: Kit, seen: Seen, what: 'seal' | 'line'): string {
	const { delivery } = kit;
	if (delivery.by === 'burette' && seen.delivery.by === 'burette') {
		if (seen.delivery.levelMl === null) return 'The burette is empty.';
		// Numerals grow downward here: what seems higher has a smaller one.
		const numeralMl = seen.delivery.levelMl - apparentShiftMl(seen.eyeDegrees);
		return `The level stands ${scaleInWords(numeralMl, { ...delivery, highestMl: delivery.capacityMl })}.`;
	}
	if (delivery.by !== 'syringe' || seen.delivery.by !== 'syringe')
		return 'There is no scale to read.';
	if (what === 'line') return `${lineInWords(delivery, seen.delivery, seen.eyeDegrees)}.`;
	return `${sealInWords(delivery, seen.delivery, seen.eyeDegrees)}.`;
}

function onScale(delivery: SyringeDelivery, ml: number, eyeDegrees: number): string {
	return scaleInWords(numeralAt(delivery, ml + apparentShiftMl(eyeDegrees)), {
		...delivery,
		highestMl: delivery.capacityMl
	});
}
const sealInWords = (delivery: SyringeDelivery, seen: SeenSyringe, eyeDegrees: number) =>
	`The leading edge of the seal stands ${onScale(delivery, seen.sealMl, eyeDegrees)}`;
const lineInWords = (delivery: SyringeDelivery, seen: SeenSyringe, eyeDegrees: number) =>
	seen.lineMl === null
		? 'No liquid stands in the barrel'
		: `The liquid line stands ${onScale(delivery, seen.lineMl, eyeDegrees)}`;

/** What hangs at the end of the titrant's glass, and whether it drips by itself; empty for nothing. */
export function tipInWords(kit: Kit, seen: Seen): string {
	const parts: string[] = [];
	if (seen.delivery.hangingMl > GLEAM * kit.delivery.dropMl)
		parts.push('something hangs at the tip');
	if (seen.delivery.by === 'syringe' && seen.delivery.dripping) parts.push('it drips by itself');
	return parts.join('; ');
}

/** The whole of a syringe or burette that is being filled. */
export function fillingInWords(kit: Kit, seen: Seen): string {
	const { delivery } = kit;
	const tip = tipInWords(kit, seen);
	const hanging = tip === '' ? '' : ` Also, ${tip}.`;
	if (delivery.by !== 'syringe' || seen.delivery.by !== 'syringe')
		return `${placeInWords(kit, seen, 'line')}${hanging}`;
	const seal = sealInWords(delivery, seen.delivery, seen.eyeDegrees);
	const line = lineInWords(delivery, seen.delivery, seen.eyeDegrees);
	return `${seal}. ${line}.${seen.delivery.tip === 'off' ? ' No tip is on.' : ''}${hanging}`;
}

/** The sample syringe, or the vial against the line printed on it. */
export function sampleInWords(kit: Kit, seen: Seen, sampleVolumeMl: number): string {
	if (kit.sample.measuredIn === 'vialLine') {
		const over = (seen.vial.levelMl - sampleVolumeMl) / sampleVolumeMl;
		// An eye places a surface against a line to about a hundredth of what is below it.
		if (Math.abs(over) < 0.01) return 'The surface touches the line.';
		const far = Math.abs(over) > 0.15 ? 'far' : Math.abs(over) > 0.04 ? 'clearly' : 'a little';
		return `The surface is ${far} ${over > 0 ? 'above' : 'below'} the line.`;
	}
	const highestMl = Math.ceil(sampleVolumeMl * 1.25);
	const { volumeMl, airMl } = seen.sampler;
	const seal = scaleInWords(volumeMl, { ...plainScale(highestMl), highestMl });
	return `The leading edge of the seal stands ${seal}.${airMl > 0.02 ? ' Air stands under it.' : ''}`;
}
