import { usedMlOf, valueFromMark, type Kit } from '../kits';

/** What was found at the moment the syringe was filled, for the warning and its picture. */
export type FillingTrap = {
	/** Numerals at which seal and line stand. */
	sealMl: number;
	lineMl: number;
	/** Air between them, mL. */
	cushionMl: number;
	/** What reading the other mark at the end would cost, in the kit's unit, and which way. */
	costValue: number;
	unit: string;
};

/** How near the line must stand to the full mark to have been what the hand stopped by, in graduations. */
const BY_THE_LINE_GRADUATIONS = 2.5;
/** A cushion smaller than this is no trap: line and seal stand together. */
const SMALLEST_CUSHION_ML = 0.05;

/**
 * The filling trap, at the moment it is set: the syringe was filled until the liquid line stood at
 * the full mark, so the seal stands beyond it. Nothing is wrong yet; it is when the seal is read at
 * the end. Null when it was filled by the seal, when seal and line stand together, or when one of
 * them was not looked at.
 */
export function fillingTrapIn(
	kit: Kit,
	drawn: { sealMl?: number; lineMl?: number }
): FillingTrap | null {
	const { delivery } = kit;
	const { sealMl, lineMl } = drawn;
	if (delivery.by !== 'syringe' || sealMl === undefined || lineMl === undefined) return null;
	const fullNumeral = delivery.scale === 'down' ? delivery.capacityMl : 0;
	const cushionMl = Math.abs(sealMl - lineMl);
	const isByLine =
		Math.abs(lineMl - fullNumeral) <= BY_THE_LINE_GRADUATIONS * delivery.graduationMl;
	if (!isByLine || cushionMl < SMALLEST_CUSHION_ML) return null;
	const middle = delivery.scale === 'down' ? delivery.capacityMl / 2 : delivery.capacityMl / 2;
	const { valuePerMl } = valueFromMark(kit, { markMl: middle });
	return { sealMl, lineMl, cushionMl, costValue: cushionMl * valuePerMl, unit: kit.unit };
}

/** Titrant used when read by the same mark as filled, mL: the way out that needs no refilling. */
export function usedByLine(kit: Kit, startLineMl: number, endLineMl: number): number {
	return usedMlOf(kit, { startMarkMl: startLineMl, markMl: endLineMl });
}
