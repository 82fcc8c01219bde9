import { addAcid, colourOf, type Vessel } from '../chemistry';
import { VIAL_PATH_CM } from './observe';

/**
 * How far the colour has come on its way, as a hue angle that only grows: teal 197, blue, violet,
 * mauve 340, rose beyond 360.
 */
export function hueOnTheWay(vessel: Vessel): number {
	const hue = colourOf(vessel, VIAL_PATH_CM, 'white').lab.hueDegrees;
	return hue < 120 ? hue + 360 : hue;
}

/** A vessel without its dye has no end to see. */
export const hasDye = (vessel: Vessel): boolean => vessel.dyes.some((dye) => dye.mol > 0);

/**
 * Titrant at which a sample, all mixed, comes to a hue, mL; null when it never does: no dye, or not
 * within ten times what its alkalinity needs.
 *
 * @param sample what is in the vial before any titrant, indicator included
 * @param carbonKept share of the sample's inorganic carbon that is still there at the end
 */
export function endVolumeMl(
	sample: Vessel,
	carbonKept: number,
	acidMolPerL: number,
	hueDegrees: number
): number | null {
	if (!hasDye(sample)) return null;
	const kept = { ...sample, dicMol: sample.dicMol * carbonKept };
	const isPast = (volumeMl: number) =>
		hueOnTheWay(addAcid(kept, { volumeMl, molPerL: acidMolPerL })) >= hueDegrees;
	if (isPast(0)) return 0;
	let low = 0;
	let high = ((Math.abs(sample.alkalinityMol) + 1e-6) / acidMolPerL) * 1000;
	for (let i = 0; !isPast(high); i++) {
		if (i > 4) return null;
		low = high;
		high *= 2;
	}
	// To a thousandth of the smallest drop.
	for (let i = 0; i < 40 && high - low > 1e-5; i++) {
		const middle = (low + high) / 2;
		if (isPast(middle)) high = middle;
		else low = middle;
	}
	return (low + high) / 2;
}
