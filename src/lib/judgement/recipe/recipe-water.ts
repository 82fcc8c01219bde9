import { convertValue, type Unit } from '../../kits';
import type { MadeAnalyte } from './recipe-substance';

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

/** What water and salt may bring when nobody has measured it: any value from the first to the second. */
type Unmeasured = Record<'deionised' | 'unsure' | 'salt', readonly [low: number, high: number]>;

/** Metals in mmol/L, of calcium and of both together alike: it is mostly calcium. */
const metals = { deionised: [0, 0.007], unsure: [0, 0.2], salt: [0, 0.087] } as const;

/**
 * In the unit in which it is given here: dKH, and mmol/L of metals.
 *
 * - 'deionised' (distilled, or through a resin): purified water of the pharmacopoeia conducts at most
 *   1.3 µS/cm at 25 °C (USP 645, from memory). Were all of that sodium bicarbonate, at about
 *   95 µS/cm for 1 meq/L, it would be 0.014 meq/L, 0.04 dKH; were it calcium bicarbonate, at about
 *   100 µS/cm, 0.007 mmol/L of calcium.
 * - 'unsure' (a membrane alone, or nobody knows): a membrane lets through 2 to 5 % of what is in the
 *   tap, so anything up to 0.6 dKH, and of the hardness of 4 mmol/L up to 0.2 mmol/L (judgement).
 * - 'salt' of pharmacopoeia grade may bring 0.00125 meq per gram either way (Ph. Eur., test for acidity
 *   or alkalinity, from memory), 0.12 dKH in 35 g; and 0.01 % of magnesium and metals like calcium, as calcium
 *   (Ph. Eur., from memory), 3.5 mg or 0.087 mmol in 35 g.
 */
const unmeasured: Record<MadeAnalyte, { unit: Unit; brings: Unmeasured }> = {
	alkalinity: {
		unit: 'dKH',
		brings: { deionised: [0, 0.04], unsure: [0, 0.6], salt: [-0.12, 0.12] }
	},
	calcium: { unit: 'mmol/L', brings: metals },
	hardness: { unit: 'mmol/L', brings: metals }
};

/** What water holds of an analyte when nobody has measured it, and the salt that goes into it, in `unit`. */
export function unmeasuredWater(
	water: 'deionised' | 'unsure',
	matrix: RecipeMatrix,
	unit: Unit,
	analyte: MadeAnalyte = 'alkalinity'
): WaterHolds {
	const { unit: given, brings } = unmeasured[analyte];
	const own = between(...brings[water]);
	const salt = matrix === 'sodiumChloride' ? between(...brings.salt) : between(0, 0);
	const inUnit = (value: number) => convertValue(value, given, unit, analyte);
	return {
		value: inUnit(own.value + salt.value),
		standardUncertainty: inUnit(Math.hypot(own.standardUncertainty, salt.standardUncertainty))
	};
}

/**
 * What the water holds, from a test of the water alone. The first drop that turns it may be far more
 * than was needed, and the end itself takes a little titrant, so the content lies anywhere between
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
