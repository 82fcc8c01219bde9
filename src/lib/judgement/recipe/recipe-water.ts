import { convertValue, type Unit } from '../../kits';

/** What the water itself holds of the analyte, in a unit. */
export type WaterHolds = { value: number; standardUncertainty: number };

/** Water without sea salt, in which a known solution is made. */
export type RecipeMatrix = 'purified' | 'sodiumChloride';

/** Salt in water of ocean strength, g in a litre of solution. */
export const SALT_G_PER_L = 35;
/** By how much a gram of NaCl in a litre makes it denser, g/mL per g/mL (handbook tables, from memory). */
export const SALT_DENSITY_RISE = 0.69;

/** Any value between two alike. */
function between(low: number, high: number): WaterHolds {
	return { value: (low + high) / 2, standardUncertainty: (high - low) / Math.sqrt(12) };
}

/**
 * Alkalinity that water holds when nobody has measured it.
 *
 * - 'deionised' (distilled, or through a resin): purified water of the pharmacopoeia conducts at most
 *   1.3 µS/cm at 25 °C (USP 645, from memory). Were all of that sodium bicarbonate, at about
 *   95 µS/cm for 1 meq/L, it would be 0.014 meq/L, 0.04 dKH.
 * - 'unsure' (a membrane alone, or nobody knows): a membrane lets through 2 to 5 % of what is in the
 *   tap, so anything up to 0.6 dKH (judgement).
 *
 * Salt of pharmacopoeia grade may bring 0.00125 meq per gram either way (Ph. Eur., test for acidity
 * or alkalinity, from memory), 0.12 dKH in 35 g.
 */
export function unmeasuredWater(
	water: 'deionised' | 'unsure',
	matrix: RecipeMatrix,
	unit: Unit
): WaterHolds {
	const own = water === 'deionised' ? between(0, 0.04) : between(0, 0.6);
	const salt = matrix === 'sodiumChloride' ? between(-0.12, 0.12).standardUncertainty : 0;
	return {
		value: convertValue(own.value, 'dKH', unit),
		standardUncertainty: convertValue(Math.hypot(own.standardUncertainty, salt), 'dKH', unit)
	};
}

/**
 * What the water holds, from a test of the water alone. The first drop that turns it may be far more
 * than was needed, and the end itself takes a little acid, so the content lies anywhere between
 * nothing and the reading with its ± (judgement).
 *
 * @param reading of the blank, at least 0
 * @param expandedUncertainty of it, above 0
 */
export function waterByBlank(reading: number, expandedUncertainty: number): WaterHolds {
	if (!(reading >= 0 && Number.isFinite(reading)))
		throw new RangeError(`reading must be 0 or above; found ${reading}`);
	if (!(expandedUncertainty > 0 && Number.isFinite(expandedUncertainty)))
		throw new RangeError(`expandedUncertainty must be above 0; found ${expandedUncertainty}`);
	return between(0, reading + expandedUncertainty);
}
