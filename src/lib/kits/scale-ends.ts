import type { BuretteDelivery, SyringeDelivery } from './kit';
import { numeralAt } from './steps';

/**
 * So many times its capacity a mark on a syringe is believed, whatever is known of the barrel's end:
 * hardly a leaflet tells it, and people write down what they see. What lies beyond is a slip of the
 * pen. This project's choice.
 */
const BELIEVED = 1.25;

/** How far from its nozzle end a mark on this syringe can stand, mL. */
export function reachMl({ barrelEndMl, capacityMl }: SyringeDelivery): number {
	return Math.max(barrelEndMl, BELIEVED * capacityMl);
}

/**
 * Numerals between which a mark can stand, the lower first: past the full mark too, where a syringe
 * is drawn back further.
 */
export function scaleEndsOf(delivery: SyringeDelivery | BuretteDelivery): [number, number] {
	if (delivery.by === 'burette') return [0, delivery.capacityMl];
	const ends = [numeralAt(delivery, 0), numeralAt(delivery, reachMl(delivery))];
	// Sums of decimals leave a trace in the last place, which would be read out.
	const [low, high] = [Math.min(...ends), Math.max(...ends)];
	return [Number(low.toFixed(6)), Number(high.toFixed(6))];
}
