/**
 * Conversions between the units in which alkalinity is spoken of, and masses of a mol of what is counted.
 *
 * 1 dKH (German degree of carbonate hardness) is 10 mg of CaO per litre by definition, CaO counted
 * as two equivalents. Molar masses: IUPAC standard atomic weights, CaO 56.0774, CaCO3 100.0869 g/mol.
 */
const CAO_G_PER_MOL = 56.0774;
/** Calcium carbonate, g/mol. */
export const CACO3_G_PER_MOL = 100.0869;
/** Calcium and magnesium, g/mol: IUPAC standard atomic weights. */
export const CALCIUM_G_PER_MOL = 40.078;
export const MAGNESIUM_G_PER_MOL = 24.305;

/** meq per litre in one dKH: 2 · 10 mg / 56.0774 mg per mmol = 0.356650. */
export const MEQ_PER_L_PER_DKH = 20 / CAO_G_PER_MOL;

/** Alkalinity in meq/L from dKH. */
export function meqPerLFromDkh(alkalinityDkh: number): number {
	return alkalinityDkh * MEQ_PER_L_PER_DKH;
}

/** Alkalinity in dKH from meq/L; 2.80387 dKH in one meq/L. */
export function dkhFromMeqPerL(alkalinityMeqPerL: number): number {
	return alkalinityMeqPerL / MEQ_PER_L_PER_DKH;
}

/** Alkalinity as mg of CaCO3 per litre ('ppm CaCO3') from dKH; 17.848 in one dKH. */
export function ppmCaCO3FromDkh(alkalinityDkh: number): number {
	return (meqPerLFromDkh(alkalinityDkh) * CACO3_G_PER_MOL) / 2;
}

/** Alkalinity in dKH from mg of CaCO3 per litre. */
export function dkhFromPpmCaCO3(alkalinityPpmCaCO3: number): number {
	return dkhFromMeqPerL((alkalinityPpmCaCO3 * 2) / CACO3_G_PER_MOL);
}

/**
 * Alkalinity in dKH, which is per litre, from mol per kg of water.
 *
 * @param densityKgPerL density of that water; 1.02334 kg/L for salinity 35 at 25 °C
 */
export function dkhFromMolPerKg(alkalinityMolPerKg: number, densityKgPerL: number): number {
	requireDensity(densityKgPerL);
	return dkhFromMeqPerL(alkalinityMolPerKg * 1000 * densityKgPerL);
}

/** Alkalinity in mol per kg of water from dKH; the other way round of `dkhFromMolPerKg`. */
export function molPerKgFromDkh(alkalinityDkh: number, densityKgPerL: number): number {
	requireDensity(densityKgPerL);
	return meqPerLFromDkh(alkalinityDkh) / 1000 / densityKgPerL;
}

function requireDensity(densityKgPerL: number): void {
	if (!(densityKgPerL > 0.5 && densityKgPerL < 2))
		throw new RangeError(
			`densityKgPerL must be a density in kg per litre, about 1.0; found ${densityKgPerL}`
		);
}
