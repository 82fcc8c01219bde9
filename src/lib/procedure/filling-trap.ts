import { numeralAt, valueFromMark, type Kit, type SyringeDelivery } from '../kits';

/** What was found at the moment the syringe was filled, for the warning and its picture. */
export type FillingTrap = {
	/** Numerals at which seal and line stand. */
	sealMl: number;
	lineMl: number;
	/** Air between them, mL. */
	cushionMl: number;
	/** By how much a value read by the seal would come out too low, in the kit's unit. */
	costValue: number;
	unit: string;
	/** Both ways out, as numerals of the scale: set the seal back to full, or read the line again at the end. */
	waysOut: { refillSealToMl: number; readLineFromMl: number };
};

/** A mark is meant to stand at full when it is this near, in graduations. */
const NEAR_GRADUATIONS = 2.5;
/** A cushion smaller than this is no trap: line and seal stand together. */
const SMALLEST_CUSHION_ML = 0.05;

/** Numeral of a full syringe. */
export const fullNumeral = (delivery: SyringeDelivery): number =>
	numeralAt(delivery, delivery.capacityMl);

/** What counting from the full mark makes of a filling beside it, mL used too much; 0 where it stands there. */
export function besideFullMl(
	{ delivery }: Kit,
	stood: { sealMl?: number; levelMl?: number },
	by: 'seal' | 'level'
): number {
	const numeral = by === 'seal' ? stood.sealMl : stood.levelMl;
	if (delivery.by === 'dropper' || numeral === undefined) return 0;
	const isDown = delivery.by === 'syringe' && delivery.scale === 'down';
	const full = delivery.by === 'syringe' ? fullNumeral(delivery) : 0;
	const usedTooMuchMl = isDown ? full - numeral : numeral - full;
	return Math.abs(usedTooMuchMl) > 0.75 * delivery.graduationMl ? usedTooMuchMl : 0;
}

/**
 * Are the two marks the wrong way round? The liquid lies between nozzle and seal, so that its line
 * cannot stand beyond the seal. Half a division is the eye's doing.
 */
export function isLineBeyondSeal(
	delivery: SyringeDelivery,
	{ sealMl, lineMl }: { sealMl?: number; lineMl?: number }
): boolean {
	if (sealMl === undefined || lineMl === undefined) return false;
	const outward = delivery.scale === 'down' ? lineMl - sealMl : sealMl - lineMl;
	return outward > 0.5 * delivery.graduationMl + 1e-9;
}

/**
 * The filling trap, at the moment it is set: the syringe was filled until the liquid line stood at
 * the full mark, so the seal stands beyond it. Nothing is wrong yet; it will be when the seal is
 * read at the end. Null when it was filled by the seal, when seal and line stand together, or when
 * the line was not looked at. Where only the line was noted, the cushion is the kit's tip.
 *
 * @param drawn numerals of seal and line as they stood, or as far as they were noted
 * @param sampleVolumeMl of the sample in use; the kit's nominal one when left out
 */
export function fillingTrapIn(
	kit: Kit,
	drawn: { sealMl?: number; lineMl?: number },
	sampleVolumeMl?: number
): FillingTrap | null {
	const { delivery } = kit;
	if (delivery.by !== 'syringe' || drawn.lineMl === undefined) return null;
	const beyond = delivery.scale === 'down' ? 1 : -1;
	const { lineMl } = drawn;
	const sealMl = drawn.sealMl ?? lineMl + beyond * (delivery.tipVolumeMl ?? 0);
	const cushionMl = Math.abs(sealMl - lineMl);
	const full = fullNumeral(delivery);
	const lineOff = Math.abs(lineMl - full);
	const isByLine =
		lineOff <= NEAR_GRADUATIONS * delivery.graduationMl && lineOff < Math.abs(sealMl - full);
	if (!isByLine || cushionMl < SMALLEST_CUSHION_ML) return null;
	if (isLineBeyondSeal(delivery, { sealMl, lineMl })) return null;
	const middle = { markMl: delivery.capacityMl / 2, sampleVolumeMl };
	return {
		sealMl,
		lineMl,
		cushionMl,
		costValue: Math.abs(sealMl - full) * valueFromMark(kit, middle).valuePerMl,
		unit: kit.unit,
		waysOut: { refillSealToMl: full, readLineFromMl: lineMl }
	};
}
