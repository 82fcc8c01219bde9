import type { CarbonateGrowthConstants } from './carbonate-growth';

/**
 * Magnesium hydroxide as it forms in a vial made strongly alkaline, and carbonate that grows on it.
 * Equilibrium is textbook; the rest is a simple model of what hands meet, every number of it a parameter.
 */
export type PrecipitationConstants = CarbonateGrowthConstants & {
	/** log K of Mg(OH)2 + 2 H+ = Mg2+ + 2 H2O at ionic strength 0; 16.844, minteq.v4 (Ksp 7.1e-12). */
	logK: number;
	/**
	 * By how much salt moves the onset up at salinity 35, in pH; in proportion to salinity. 0.4: estimate,
	 * 0.3 to 0.5 from activity coefficients. Low confidence.
	 */
	seawaterOnsetShiftPh: number;
	/** Time constant of forming in plenty, s. 5: judgement. */
	formingSeconds: number;
	/**
	 * How far past its onset, in pH, the liquid must be before the solid forms at a fair rate. 1.5:
	 * judgement; it lets an ammonia buffer of pH 10 stay clear for minutes, as it does.
	 */
	nucleationWidthPh: number;
	/**
	 * Time constant of dissolving, s. 15: judgement, for a fresh floc; crystals take hours. It matters only
	 * where base is short and EDTA, as disodium salt, sets acid free: dissolving within seconds lets each mol
	 * of EDTA bring another mol of magnesium and the end run away; in minutes, the dye turns early for want of
	 * base and turns back.
	 */
	dissolvingSeconds: number;
	/**
	 * Calcium carried down: share of the uncomplexed calcium for each mol/L of solid that forms, L/mol.
	 * 0.4: judgement, 2 % of the calcium in undiluted seawater (textbooks: a low titre that grows with
	 * magnesium; common practice, no source: 1 to 3 %).
	 */
	occlusionLPerMol: number;
	/** Dye held by the solid, out of the light and without part in the change, L/mol. 1: judgement. */
	dyeAdsorptionLPerMol: number;
};

export const magnesiumHydroxide: PrecipitationConstants = {
	logK: 16.844,
	seawaterOnsetShiftPh: 0.4,
	formingSeconds: 5,
	nucleationWidthPh: 1.5,
	dissolvingSeconds: 15,
	occlusionLPerMol: 0.4,
	dyeAdsorptionLPerMol: 1,
	carbonateInductionMolSPerL: 15,
	carbonateGrowthMolSPerL: 50,
	carbonateMost: 0.035
};

/** Free magnesium beside its hydroxide at a pH, mol/L. */
export function saturatedMagnesiumMolPerL(
	ph: number,
	salinity: number,
	constants = magnesiumHydroxide
): number {
	const shift = constants.seawaterOnsetShiftPh * (salinity / 35);
	return 10 ** (constants.logK + 2 * (shift - ph));
}

/** pH from which magnesium hydroxide can form: 9.06 at 52.8 mmol/L without the effect of salt. */
export function hydroxideOnsetPh(
	magnesiumMolPerL: number,
	salinity: number,
	constants = magnesiumHydroxide
): number {
	return (
		(Math.log10(saturatedMagnesiumMolPerL(0, salinity, constants)) - Math.log10(magnesiumMolPerL)) /
		2
	);
}

/**
 * Rate at which the solid comes to its equilibrium amount, 1/s.
 *
 * Forming follows the shape of nucleation theory, exp(−(width/excess)²) with the excess in pH, that is
 * in half the logarithm of supersaturation: practically never close to the onset, fast well past it.
 *
 * @param excessPh how far past its onset the liquid is with all of the solid thought dissolved
 */
export function hydroxideRatePerS(
	isForming: boolean,
	excessPh: number,
	constants: PrecipitationConstants
): number {
	if (!isForming) return 1 / constants.dissolvingSeconds;
	if (excessPh <= 0) return 0;
	return Math.exp(-((constants.nucleationWidthPh / excessPh) ** 2)) / constants.formingSeconds;
}
